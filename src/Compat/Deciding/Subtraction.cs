namespace Compat.Deciding;

/// <summary>Maximal boxes outside a union of boxes.</summary>
internal static class Subtraction
{
    /// <summary>More boxes than this for one question or pair is refused.</summary>
    public const int MostBoxes = 100_000;

    /// <summary>So often is one box held against another before it is given up.</summary>
    private const long MostLooks = 20_000_000;

    /// <summary>
    /// All boxes inside <paramref name="domain"/> that meet none of <paramref name="holes"/> and cannot be made larger.
    /// A box that must hold the start of an axis (<paramref name="anchored"/>) is cut from above only.
    /// </summary>
    /// <exception cref="TooManyBoxesException">There are more than <see cref="MostBoxes"/>, or it takes too long to find them.</exception>
    public static List<Span[]> MaximalBoxes(Span[] domain, IEnumerable<Span[]> holes, int anchored)
    {
        var boxes = new List<Span[]>();
        foreach (var span in domain)
            if (span.IsEmpty) return boxes;
        boxes.Add(domain);
        var looks = 0L;
        foreach (var hole in holes)
        {
            var pieces = new List<Span[]>();
            var kept = new List<Span[]>();
            foreach (var box in boxes)
            {
                if (!Meet(box, hole))
                {
                    kept.Add(box);
                    continue;
                }

                for (var axis = 0; axis < box.Length; axis++)
                {
                    if (hole[axis].From is { } from) AddPiece(pieces, box, axis, new Span(box[axis].From, from));
                    if (axis != anchored && hole[axis].To is { } to) AddPiece(pieces, box, axis, new Span(to, box[axis].To));
                }
            }

            looks += boxes.Count + ((long)pieces.Count * (kept.Count + pieces.Count));
            if (looks > MostLooks) throw new TooManyBoxesException();
            foreach (var piece in pieces)
                if (!kept.Any(box => LiesIn(piece, box))) Keep(kept, piece);
            if (kept.Count > MostBoxes) throw new TooManyBoxesException();
            boxes = kept;
            if (boxes.Count == 0) break;
        }

        return boxes;
    }

    public static bool Meet(Span[] a, Span[] b)
    {
        for (var i = 0; i < a.Length; i++)
            if (!a[i].Meets(b[i])) return false;
        return true;
    }

    private static bool LiesIn(Span[] a, Span[] b)
    {
        for (var i = 0; i < a.Length; i++)
            if (!a[i].LiesIn(b[i])) return false;
        return true;
    }

    private static void Keep(List<Span[]> kept, Span[] piece)
    {
        kept.RemoveAll(box => LiesIn(box, piece));
        kept.Add(piece);
    }

    private static void AddPiece(List<Span[]> pieces, Span[] box, int axis, Span part)
    {
        var cut = part.Intersect(box[axis]);
        if (cut.IsEmpty) return;
        var piece = (Span[])box.Clone();
        piece[axis] = cut;
        pieces.Add(piece);
    }
}
