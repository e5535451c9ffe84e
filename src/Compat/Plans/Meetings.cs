using Compat.Knowledge;
using Compat.Mixing;

namespace Compat.Plans;

/// <summary>What is on record where the products of a shelf meet each other and soil; looked up once for each pair.</summary>
internal sealed class Meetings(KnowledgeBase knowledge)
{
    private readonly Dictionary<(ProductId, ProductId), IReadOnlyList<FoundHazard>> _products = [];
    private readonly Dictionary<(ProductId, SoilKind), IReadOnlyList<FoundHazard>> _soils = [];

    public IReadOnlyList<FoundHazard> Of(ProductId one, SoilKind soil)
    {
        if (!_soils.TryGetValue((one, soil), out var found)) _soils[(one, soil)] = found = Look(MixingPartner.Of(one), MixingPartner.Of(soil));
        return found;
    }

    public IReadOnlyList<FoundHazard> Of(ProductId one, ProductId other)
    {
        if (one == other) return [];
        var key = one.CompareTo(other) < 0 ? (one, other) : (other, one);
        if (!_products.TryGetValue(key, out var found)) _products[key] = found = Look(MixingPartner.Of(key.Item1), MixingPartner.Of(key.Item2));
        return found;
    }

    /// <summary>Pairs that never stand in one plan: what must never meet, and nothing on record lets them follow each other.</summary>
    public bool NeverInOnePlan(ProductId one, ProductId other) =>
        Of(one, other).Any(found => found.Hazard.Severity == MixingSeverity.Never && found.Hazard.SeparatedBy.All(separation => separation == Separation.Nothing));

    /// <summary>Pairs that are never used on one part: what must never meet.</summary>
    public bool NeverOnOnePart(ProductId one, ProductId other) => Of(one, other).Any(found => found.Hazard.Severity == MixingSeverity.Never);

    private IReadOnlyList<FoundHazard> Look(MixingPartner one, MixingPartner other) =>
        Mixture.TryJudge(knowledge, one, other, out var answer, out _) ? answer!.Hazards : [];
}
