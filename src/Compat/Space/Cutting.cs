namespace Compat.Space;

/// <summary>What is to be done with a box that was looked at.</summary>
internal enum Next
{
    /// <summary>Nothing more is to be looked at, in it or elsewhere.</summary>
    Stop,

    /// <summary>All is known of this box.</summary>
    Done,

    /// <summary>Something lies in a part of it only: its halves are to be looked at.</summary>
    Halve,
}

/// <summary>Looks at boxes until all is known of each.</summary>
/// <typeparam name="T">What a box is on one axis.</typeparam>
/// <typeparam name="TKnown">What is known of a box, and so of its halves.</typeparam>
internal interface ICutVisitor<T, TKnown> where T : struct, IExtent<T>
{
    /// <param name="box">The box.</param>
    /// <param name="known">What is known of the box that it is a half of.</param>
    /// <param name="inside">Of <see cref="Next.Halve"/>: what is known now.</param>
    /// <param name="crossing">Of <see cref="Next.Halve"/>: what meets the box and does not hold it, along which it is cut.</param>
    Next Look(in Box<T> box, TKnown known, out TKnown inside, out Box<T> crossing);
}

/// <summary>Cuts a box in halves along what crosses it, and only along this, until a visitor knows all of every piece.</summary>
internal static class Cutter
{
    /// <summary>Cuts a box; false where the visitor stopped it.</summary>
    public static bool Cut<T, TKnown, TVisitor>(ref TVisitor visitor, in Box<T> box, TKnown known)
        where T : struct, IExtent<T>
        where TVisitor : ICutVisitor<T, TKnown>
    {
        var next = visitor.Look(box, known, out var inside, out var crossing);
        if (next != Next.Halve) return next == Next.Done;
        Halve(box, crossing, out var below, out var above);
        return Cut(ref visitor, below, inside) && Cut(ref visitor, above, inside);
    }

    /// <summary>Cuts a box where what crosses it ends first, by the order of <see cref="Axis"/>.</summary>
    public static void Halve<T>(in Box<T> box, in Box<T> crossing, out Box<T> below, out Box<T> above) where T : struct, IExtent<T>
    {
        for (var axis = Axis.Strength; axis <= Axes.ContactTime; axis++)
        {
            var (own, other) = (box[axis], crossing[axis]);
            var before = own.Before(other);
            if (before.IsEmpty)
            {
                var after = own.After(other);
                if (after.IsEmpty) continue;
                before = own.Before(after);
            }

            (below, above) = (box.With(axis, before), box.With(axis, own.After(before)));
            return;
        }

        throw new InvalidOperationException("what crosses a box ends inside it");
    }
}

/// <summary>What is left of a box when others are taken out of it.</summary>
internal static class Subtraction
{
    /// <summary>More boxes than this for one question or pair is refused.</summary>
    public const int MostBoxes = 100_000;

    /// <summary>So often is one box held against another before it is given up.</summary>
    private const long MostLooks = 20_000_000;

    /// <summary>The axes in the order in which boxes are found: what is chosen comes first.</summary>
    private static readonly Axis[] Order = [Axes.ContactTime, Axis.ExposureTime, Axis.Dilution, Axis.Uses, Axis.Strength, Axis.Temperature, Axis.Ph];

    /// <summary>
    /// All boxes inside <paramref name="domain"/> that meet none of <paramref name="holes"/> and cannot be made larger. A hole by another method takes
    /// nothing away. A box that must hold the start of an axis (<paramref name="anchored"/>) is cut from above only.
    /// </summary>
    /// <exception cref="TooManyBoxesException">There are more than <see cref="MostBoxes"/>, or it takes too long to find them.</exception>
    public static List<Box<T>> MaximalBoxes<T>(in Box<T> domain, IEnumerable<Box<T>> holes, Axis? anchored = null) where T : struct, IExtent<T>
    {
        var boxes = new List<Box<T>>();
        if (domain.IsEmpty) return boxes;
        boxes.Add(domain);
        var looks = 0L;
        foreach (var hole in holes)
        {
            var pieces = new List<Box<T>>();
            var kept = new List<Box<T>>();
            foreach (var box in boxes)
            {
                if (!box.Meets(hole))
                {
                    kept.Add(box);
                    continue;
                }

                foreach (var axis in Order)
                {
                    var own = box[axis];
                    if (own.Before(hole[axis]) is { IsEmpty: false } before) pieces.Add(box.With(axis, before));
                    if (axis != anchored && own.After(hole[axis]) is { IsEmpty: false } after) pieces.Add(box.With(axis, after));
                }
            }

            looks += boxes.Count + ((long)pieces.Count * (kept.Count + pieces.Count));
            if (looks > MostLooks) throw new TooManyBoxesException();
            foreach (var piece in pieces) KeepMaximal(kept, piece);
            if (kept.Count > MostBoxes) throw new TooManyBoxesException();
            boxes = kept;
            if (boxes.Count == 0) break;
        }

        return boxes;
    }

    private static void KeepMaximal<T>(List<Box<T>> kept, Box<T> piece) where T : struct, IExtent<T>
    {
        foreach (var box in kept)
            if (piece.LiesIn(box)) return;
        kept.RemoveAll(box => box.LiesIn(piece));
        kept.Add(piece);
    }
}

/// <summary>Joins boxes that touch along an axis, one axis after the other, until nothing joins.</summary>
internal static class Joining
{
    /// <summary>The boxes, joined where they say the same and share what they are on every other axis.</summary>
    /// <param name="boxes">What has a box. Boxes do not overlap where they say the same.</param>
    /// <param name="says">What it says: only what says the same is joined.</param>
    /// <param name="boxOf">Its box.</param>
    /// <param name="join">Joins two in the box of both.</param>
    public static List<TItem> Of<T, TItem>(List<TItem> boxes, Func<TItem, string> says, Func<TItem, Box<T>> boxOf, Func<TItem, TItem, Box<T>, TItem> join)
        where T : struct, IExtent<T>
    {
        for (var before = int.MaxValue; boxes.Count < before;)
        {
            before = boxes.Count;
            for (var axis = Axis.Strength; axis <= Axes.ContactTime; axis++)
            {
                var along = axis;
                boxes = boxes.GroupBy(one => (says(one), boxOf(one).With(along, default)))
                    .SelectMany(line => Along(along, line.OrderBy(one => boxOf(one)[along]), boxOf, join)).ToList();
            }
        }

        return boxes;
    }

    private static List<TItem> Along<T, TItem>(Axis axis, IEnumerable<TItem> line, Func<TItem, Box<T>> boxOf, Func<TItem, TItem, Box<T>, TItem> join)
        where T : struct, IExtent<T>
    {
        var joined = new List<TItem>();
        foreach (var next in line)
        {
            if (joined.Count > 0 && joined[joined.Count - 1] is var last && boxOf(last)[axis].EndsAt(boxOf(next)[axis]))
                joined[joined.Count - 1] = join(last, next, boxOf(last).With(axis, boxOf(last)[axis].Through(boxOf(next)[axis])));
            else joined.Add(next);
        }

        return joined;
    }
}
