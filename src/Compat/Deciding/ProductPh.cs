namespace Compat.Deciding;

/// <summary>The pH of a product over its dilution: the stated values, and between two of them the hull of both.</summary>
internal static class ProductPh
{
    private static readonly Interval Unknown = Interval.Closed(-1m, 15m);

    public static IReadOnlyList<PhSegment> Segments(Product product, Interval water)
    {
        var known = product.Ph
            .Where(ph => !product.NeedsActivation || ph.Of is PhState.Activated or PhState.InUse)
            .Select(ph => (At: Where(ph.Of, product), ph.Value)).ToList();
        if (known.Count == 0) return [new PhSegment(Stretch.Whole, Unknown)];

        var ends = known.SelectMany(k => new[] { Stretch.Of(k.At).From!, Stretch.Of(k.At).To! }).ToList();
        ends.Sort();
        var segments = new List<PhSegment>();
        var from = Cut.Start;
        foreach (var end in ends.Append(Cut.End))
        {
            var span = new Stretch(from, end);
            if (!span.IsEmpty) segments.Add(new PhSegment(span, At(span, known, water)));
            from = end;
        }

        return segments;
    }

    private static Interval Where(PhState state, Product product) => state switch
    {
        PhState.OnePercent => Interval.Exactly(0.01m),
        PhState.InUse => product.Dilution ?? Interval.Exactly(1m),
        _ => Interval.Exactly(1m),
    };

    private static Interval At(Stretch span, List<(Interval At, Interval Value)> known, Interval water)
    {
        var here = known.Where(k => span.Meets(Stretch.Of(k.At))).Select(k => k.Value).ToArray();
        if (here.Length > 0) return here.Aggregate((a, b) => a.Hull(b));
        var below = known.Where(k => span.From is { } from && Stretch.Of(k.At).To!.CompareTo(from) <= 0).ToArray();
        var above = known.Where(k => span.To is { } to && Stretch.Of(k.At).From!.CompareTo(to) >= 0).ToArray();
        if (above.Length == 0) return Unknown;
        var nearestAbove = above.Min(k => k.At.Lower!.Value);
        var hull = above.Where(k => k.At.Lower == nearestAbove).Select(k => k.Value).Aggregate((a, b) => a.Hull(b));
        if (below.Length == 0) return hull.Hull(water);
        var nearestBelow = below.Max(k => k.At.Upper!.Value);
        return below.Where(k => k.At.Upper == nearestBelow).Select(k => k.Value).Aggregate(hull, (a, b) => a.Hull(b));
    }
}
