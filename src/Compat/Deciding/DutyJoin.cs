namespace Compat.Deciding;

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
