namespace Compat.Answers;

/// <summary>One hazard on record and the two it was found for.</summary>
/// <param name="Hazard">The record.</param>
/// <param name="First">The agent of the record as it stands in what was asked: an agent, or an ingredient of a product.</param>
/// <param name="Other">The other one, as it stands in what was asked.</param>
/// <param name="OnlySome">Whether what was asked is a wider class, so that only some of its members are meant.</param>
public sealed record FoundHazard(MixingHazard Hazard, string First, string Other, bool OnlySome);

/// <summary>What is on record where two meet. Never 'safe': at most, no hazard is on record.</summary>
public sealed record MixingAnswer
{
    /// <summary>The one.</summary>
    public required MixingPartner First { get; init; }

    /// <summary>The other.</summary>
    public required MixingPartner Other { get; init; }

    /// <summary>The hazards, worst first; empty where none is on record.</summary>
    public IReadOnlyList<FoundHazard> Hazards { get; init; } = [];

    /// <summary>Hazards that hold at other strengths only than those of the two; empty where none is on record, or where a strength is not known.</summary>
    public IReadOnlyList<FoundHazard> AtOtherStrengths { get; init; } = [];

    /// <summary>What is on record as harmless between them, by id. A hazard beside it holds all the same.</summary>
    public IReadOnlyList<HarmlessMeeting> Harmless { get; init; } = [];

    /// <summary>What is on record in one word: harmless only where no hazard is, and every pair in them is on record as harmless.</summary>
    public required MixingOutcome Outcome { get; init; }

    /// <summary>Products whose composition is not fully known, so that more hazards may be in them.</summary>
    public IReadOnlyList<ProductId> NotFullyKnown { get; init; } = [];

    /// <summary>The identity of the knowledge base and of its sites.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }

    /// <summary>The worst severity; null where no hazard is on record.</summary>
    public MixingSeverity? Worst => Hazards.Count == 0 ? null : Hazards[0].Hazard.Severity;
}
