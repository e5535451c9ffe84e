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
