namespace Compat.Tests.Reference;

/// <summary>What is on record where two meet: clauses M12 to M15.</summary>
internal sealed class MeetingReference(KnowledgeData data, IReadOnlyList<Site> sites)
{
    private readonly ReferenceTrees _trees = new(data, sites);

    /// <summary>The hazards that hold, those at other strengths, and the word for all of it.</summary>
    public (string[] Hold, string[] AtOtherStrengths, MixingOutcome Outcome) Of(MixingPartner one, MixingPartner other)
    {
        var pairs = Parts(one).SelectMany(a => Parts(other).SelectMany(b => new[] { (a, one, b, other), (b, other, a, one) })).ToArray();
        var onRecord = data.MixingHazards.Where(h => pairs.Any(p => Speaks(h, p.Item1, p.Item3))).ToArray();
        var hold = onRecord.Where(h => pairs.Any(p => Speaks(h, p.Item1, p.Item3) && Can(h.Agent, h.Strength, p.Item1, p.Item2)
            && Can(h.WithAgent, h.WithStrength, p.Item3, p.Item4))).ToArray();
        var known = new[] { one, other }.Select(Product)
            .All(p => p is null || (p.Composition == Composition.Full && p.Ingredients.All(i => i.Agent is not null)));
        var harmless = pairs.Length > 0
            && Parts(one).All(a => Parts(other).All(b => data.HarmlessMeetings.Any(m => IsOf(m, a, b) || IsOf(m, b, a))));
        var outcome = hold.Length > 0 ? MixingOutcome.Hazard
            : harmless && known && onRecord.Length == 0 ? MixingOutcome.Harmless : MixingOutcome.NothingOnRecord;
        return (Ids(hold), Ids(onRecord.Except(hold)), outcome);
    }

    private static string[] Ids(IEnumerable<MixingHazard> hazards) => [.. hazards.Select(h => h.Id.Value).Order(StringComparer.Ordinal)];

    private Product? Product(MixingPartner partner) =>
        partner.Product is null ? null : sites.SelectMany(s => s.Products).Single(p => p.Id == partner.Product);

    private MixingPartner[] Parts(MixingPartner partner) => Product(partner) is not { } product ? [partner]
        : [.. product.Ingredients.Where(i => i.Agent is not null).Select(i => MixingPartner.Of(i.Agent!))];

    private bool Speaks(MixingHazard h, MixingPartner a, MixingPartner b) => a.Agent is not null && Touches(h.Agent, a.Agent)
        && (h.WithAgent is not null ? b.Agent is not null && Touches(h.WithAgent, b.Agent)
            : h.WithMaterial is not null ? b.Material is not null && (_trees.Below(b.Material, h.WithMaterial)
                || (b.Material != Material.Root && _trees.Below(h.WithMaterial, b.Material)))
            : b.Soil == h.WithSoil && b.Soil is not null);

    private bool Touches(AgentId recorded, AgentId asked) =>
        _trees.Below(asked, recorded) || (asked != AgentClass.Root && _trees.Below(recorded, asked));

    private bool IsOf(HarmlessMeeting m, MixingPartner a, MixingPartner b) => a.Agent is not null && _trees.Below(a.Agent, m.Agent)
        && (m.WithAgent is not null ? b.Agent is not null && _trees.Below(b.Agent, m.WithAgent)
            : m.WithMaterial is not null ? b.Material is not null && _trees.Below(b.Material, m.WithMaterial)
            : b.Soil == m.WithSoil && b.Soil is not null);

    /// <summary>Whether the strength of one of a pair can lie in what a hazard names: a class has one basis with all below it.</summary>
    private bool Can(AgentId? recorded, Interval? at, MixingPartner part, MixingPartner whole)
    {
        if (recorded is null || at is not { } box || part.Agent is not { } agent) return true;
        if (Product(whole) is not { } product) return whole.Strength is not { } stated || !stated.Percent.Intersect(box).IsEmpty;
        return Of(agent).Concat(Of(recorded)).Any(range => !range.Intersect(box).IsEmpty);

        IEnumerable<Interval> Of(AgentId top)
        {
            var members = product.Ingredients.Where(i => i.Agent is not null && _trees.Below(i.Agent, top)).ToArray();
            var figures = members.Select(i => i.Strength?.Percent ?? Interval.Closed(0, 100)).ToArray();
            foreach (var (one, figure) in members.Zip(figures)) if (one.Agent == agent || one.Agent == top) yield return Undiluted(figure);
            if (members.Length < 2) yield break;
            yield return Undiluted(Interval.Closed(figures.Min(f => f.Lower ?? 0), Math.Min(100, figures.Sum(f => f.Upper ?? 100))));
        }

        Interval Undiluted(Interval range) =>
            product.StrengthOf == StrengthOf.Concentrate ? new Interval(0, true, range.Upper, range.UpperIncluded) : range;
    }
}
