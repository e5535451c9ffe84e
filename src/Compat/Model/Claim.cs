namespace Compat.Model;

/// <summary>What makes a claim.</summary>
public enum ClaimKind
{
    /// <summary>A product's label.</summary>
    Label,

    /// <summary>A guideline.</summary>
    Guideline,

    /// <summary>A paper.</summary>
    Paper,

    /// <summary>A standard.</summary>
    Standard,
}

/// <summary>What must be done before an agent does what its claim says.</summary>
public enum ClaimNeed
{
    /// <summary>The part is cleaned first.</summary>
    CleanFirst,

    /// <summary>The agent is activated.</summary>
    Activation,
}

/// <summary>Where alone a claim holds.</summary>
public enum ClaimWhere
{
    /// <summary>
    /// In a machine that keeps its exposure: a reprocessor, a washer, a steriliser of a certain kind. Never in a bath by hand, never by wiping.
    /// </summary>
    Machine,
}

/// <summary>How a bath of the agent is kept.</summary>
public sealed record BathUse
{
    /// <summary>The strength it must still have, in percent of the agent's basis; null where not stated.</summary>
    [Measured("Strength")]
    public Interval? Minimum { get; init; }

    /// <summary>How long it may be used again, in seconds; null where not stated.</summary>
    [Measured("Duration")]
    public decimal? Reuse { get; init; }

    /// <summary>How often its strength is tested, in words.</summary>
    public string? Test { get; init; }
}

/// <summary>What a claim of a blend names beside its agent.</summary>
/// <param name="Agent">The other agent, with all below it.</param>
/// <param name="Strength">Its strength in percent of its basis: a range, or 'any' where the source says so.</param>
public sealed record ClaimPartner(AgentId Agent, AxisLimit Strength);

/// <summary>A box of exposures in which an agent reaches a level or kills groups of organisms.</summary>
/// <remarks>A claim says nothing of an exposure outside its box, and claims never add up.</remarks>
[Record(Validation.RecordKind.Claim)]
public sealed record Claim
{
    /// <summary>Its id.</summary>
    public required ClaimId Id { get; init; }

    /// <summary>The agent it speaks of.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>What else must be in the same liquid, each at its strength; empty where the agent alone is meant.</summary>
    public IReadOnlyList<ClaimPartner> With { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The exposures in which it holds.</summary>
    public ClaimBox When { get; init; } = new();

    /// <summary>The level reached, never <see cref="Level.Cleaned"/>; null where only groups are claimed.</summary>
    public Level? Reaches { get; init; }

    /// <summary>What is killed; empty where only a level is claimed.</summary>
    public IReadOnlyList<OrganismTarget> Kills { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The part types it speaks of, with all below; empty where it is general.</summary>
    public IReadOnlyList<PartId> For { get; init => field = Frozen.Of(value); } = [];

    /// <summary>
    /// Where alone it holds; null where it holds by hand. What holds in a machine only meets no need: no question says which machine is at hand.
    /// </summary>
    public ClaimWhere? Where { get; init; }

    /// <summary>What is not killed, by the same source.</summary>
    public IReadOnlyList<OrganismTarget> DoesNotKill { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What must be done first.</summary>
    public IReadOnlyList<ClaimNeed> Needs { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The soil in which it was shown.</summary>
    public IReadOnlyList<SoilKind> StandsSoil { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How a bath is kept; null where the source says nothing of it.</summary>
    public BathUse? Bath { get; init; }

    /// <summary>The published outbreak or failure that speaks against it: then it is no claim, kept so that nobody adds it again.</summary>
    public string? Refuted { get; init; }

    /// <summary>What makes it.</summary>
    public required ClaimKind Kind { get; init; }

    /// <summary>Why, in one sentence.</summary>
    [Remark]
    public required string Why { get; init; }

    /// <summary>Its sources; at least one.</summary>
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>When it was last looked at.</summary>
    [Remark]
    public required CalendarDate Reviewed { get; init; }
}
