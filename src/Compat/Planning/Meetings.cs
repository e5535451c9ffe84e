using System.Collections.Concurrent;

namespace Compat.Planning;

/// <summary>Clause L10. What is on record where the products of a shelf meet each other and soil; looked up once for each pair.</summary>
internal sealed class Meetings(KnowledgeBase knowledge)
{
    private readonly ConcurrentDictionary<(ProductId, ProductId), MixingAnswer?> _products = [];
    private readonly ConcurrentDictionary<(ProductId, SoilKind), MixingAnswer?> _soils = [];

    public IReadOnlyList<FoundHazard> Of(ProductId one, SoilKind soil) =>
        _soils.GetOrAdd((one, soil), _ => Look(MixingPartner.Of(one), MixingPartner.Of(soil)))?.Hazards ?? [];

    public IReadOnlyList<FoundHazard> Of(ProductId one, ProductId other) => Between(one, other)?.Hazards ?? [];

    /// <summary>Hazards on record of two products that hold only at other strengths than theirs.</summary>
    public IReadOnlyList<FoundHazard> AtOtherStrengths(ProductId one, ProductId other) => Between(one, other)?.AtOtherStrengths ?? [];

    /// <summary>Pairs that never stand in one plan: what must never meet, and nothing on record lets them follow each other.</summary>
    public bool NeverInOnePlan(ProductId one, ProductId other) =>
        Of(one, other).Any(found => found.Hazard.Severity == MixingSeverity.Never && found.Hazard.SeparatedBy.All(separation => separation == Separation.Nothing));

    /// <summary>Pairs that are never used on one part: what must never meet.</summary>
    public bool NeverOnOnePart(ProductId one, ProductId other) => Of(one, other).Any(found => found.Hazard.Severity == MixingSeverity.Never);

    private MixingAnswer? Between(ProductId one, ProductId other) =>
        one == other ? null
        : one.CompareTo(other) > 0 ? Between(other, one)
        : _products.GetOrAdd((one, other), _ => Look(MixingPartner.Of(one), MixingPartner.Of(other)));

    private MixingAnswer? Look(MixingPartner one, MixingPartner other) =>
        Mixture.TryJudge(knowledge, one, other, out var answer, out _) ? answer : null;
}
