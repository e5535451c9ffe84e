namespace Compat.Space;

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
