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
    public static IReadOnlyList<Duty> Of(Substance substance, PartVariant driest, Interval exposureTime, IEnumerable<Piece> pieces, IEnumerable<Duty>? further = null)
    {
        var all = pieces.SelectMany(p => p.Component!.Duties.Concat((p.Decision.Variants.Count > 0 ? p.Decision.Variants : [p.Decision.Variant]).SelectMany(v => v.Duties)).Concat(p.Decision.Deciding.Concat(p.Decision.Accompanying).SelectMany(r => r.Rule.Duties))).ToList();
        if (further is not null) all.AddRange(further);
        return Of(substance, driest, exposureTime, all);
    }

    /// <summary>Some duties joined with that of ending the exposure time.</summary>
    public static IReadOnlyList<Duty> Of(Substance substance, PartVariant driest, Interval exposureTime, List<Duty> all)
    {
        var ways = driest.EndingWays(substance.LeavesNothing);
        if (exposureTime.Upper is { } upper && upper != Interval.WithoutEnd && ways.Count > 0)
            all.Add(new Duty { Kind = substance.LeavesNothing && ways.Contains(DutyWay.Air) ? DutyKind.WipeDry : DutyKind.TakeOff, Ways = ways, Within = upper });
        return DutyJoin.Join(all, driest);
    }
}
