namespace Compat.Deciding;

/// <summary>What must accompany a use inside a box.</summary>
internal static class BoxDuties
{
    /// <summary>Of variants that differ, the one that stands the least: what it stands serves for all.</summary>
    public static PartVariant Driest(IReadOnlyList<PartVariant> variants)
    {
        var driest = variants[0];
        foreach (var variant in variants)
            if (variant.Wettest < driest.Wettest) driest = variant;
        return driest;
    }

    /// <summary>The duties of the agent, the part and the rules that speak in a box, and of ending its exposure time.</summary>
    public static IReadOnlyList<Duty> Of(
        Substance substance, PartVariant driest, Interval exposureTime, IEnumerable<Piece> pieces, IEnumerable<Duty>? further = null)
    {
        var all = new List<Duty>();
        foreach (var piece in pieces)
        {
            var decision = piece.Decision;
            all.AddRange(piece.Component!.Duties);
            foreach (var variant in decision.Variants.Count > 0 ? decision.Variants : [decision.Variant]) all.AddRange(variant.Duties);
            foreach (var rule in decision.Deciding.Concat(decision.Accompanying)) all.AddRange(rule.Rule.Duties);
        }

        if (further is not null) all.AddRange(further);
        var ways = driest.EndingWays(substance.LeavesNothing);
        if (exposureTime.Upper is { } upper && upper != Interval.WithoutEnd && ways.Count > 0)
        {
            var kind = substance.LeavesNothing && ways.Contains(DutyWay.Air) ? DutyKind.WipeDry : DutyKind.TakeOff;
            all.Add(new Duty { Kind = kind, Ways = ways, Within = upper });
        }

        return DutyJoin.Join(all, driest);
    }
}

/// <summary>Joins duties: ways that satisfy all, the strictest figure, each duty once.</summary>
internal static class DutyJoin
{
    public static IReadOnlyList<Duty> Join(IEnumerable<Duty> duties, PartVariant variant)
    {
        var joined = new List<Duty>();
        foreach (var duty in duties)
        {
            var at = joined.FindIndex(other => SameSubject(other, duty));
            if (at < 0) joined.Add(duty with { Ways = duty.Ways.Where(variant.Stands).ToArray() });
            else joined[at] = Merge(joined[at], duty, variant);
        }

        return joined.OrderBy(duty => duty, ByKind.Instance).ToArray();
    }

    private sealed class ByKind : IComparer<Duty>
    {
        public static ByKind Instance { get; } = new();

        public int Compare(Duty? x, Duty? y) => x!.Kind - y!.Kind;
    }

    private static bool SameSubject(Duty a, Duty b)
    {
        if (a.Kind != b.Kind) return false;
        return a.Kind switch
        {
            DutyKind.TakeOff or DutyKind.KeepOff => true,
            DutyKind.WipeDry or DutyKind.Dry => a.Ways.Count == b.Ways.Count && a.Ways.All(b.Ways.Contains),
            _ => a.Note == b.Note,
        };
    }

    private static Duty Merge(Duty a, Duty b, PartVariant variant) => a with
    {
        Ways = a.Kind == DutyKind.TakeOff ? MergeWays(a.Ways, b.Ways.Where(variant.Stands).ToArray()) : a.Ways,
        Within = Least(a.Within, b.Within),
        Parts = a.Parts.Concat(b.Parts).Distinct().ToArray(),
        AfterUses = a.AfterUses is { } x && b.AfterUses is { } y ? Math.Min(x, y) : a.AfterUses ?? b.AfterUses,
        Note = a.Note == b.Note || b.Note is null ? a.Note : a.Note is null ? b.Note : a.Note + "; " + b.Note,
    };

    /// <summary>Every pair of ways, the wetter method and the higher grade and figure of both; a way that another makes needless is dropped.</summary>
    private static DutyWay[] MergeWays(IReadOnlyList<DutyWay> a, IReadOnlyList<DutyWay> b)
    {
        if (a.Count == 0 || b.Count == 0) return [.. a, .. b];
        var pairs = a.SelectMany(x => b.Select(y => new DutyWay
        {
            Method = Most(x.Method, y.Method),
            Act = x.Act ?? y.Act,
            Water = Most(x.Water, y.Water),
            Times = Most(x.Times, y.Times),
            Seconds = Most(x.Seconds, y.Seconds),
            Litres = Most(x.Litres, y.Litres),
        })).Distinct().ToArray();
        return pairs.Where(way => !pairs.Any(other => other != way && Serves(other, way))).ToArray();
    }

    /// <summary>Whether doing <paramref name="easier"/> already meets what <paramref name="way"/> was merged for.</summary>
    private static bool Serves(DutyWay easier, DutyWay way) =>
        easier.Act == way.Act && !(easier.Method > way.Method) && !(easier.Water > way.Water) && (easier.Times ?? 0) <= (way.Times ?? 0)
        && (easier.Seconds ?? 0) <= (way.Seconds ?? 0) && (easier.Litres ?? 0) <= (way.Litres ?? 0);

    private static decimal? Least(decimal? a, decimal? b) => a is { } x && b is { } y ? Math.Min(x, y) : a ?? b;

    private static T? Most<T>(T? a, T? b) where T : struct => a is { } x && b is { } y ? (Comparer<T>.Default.Compare(x, y) >= 0 ? x : y) : a ?? b;
}
