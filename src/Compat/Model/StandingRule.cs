namespace Compat.Model;

/// <summary>What a standing rule demands.</summary>
public enum StandingDemand
{
    /// <summary>Nothing is allowed on the part or material.</summary>
    NeverAllowed,

    /// <summary>Every 'allowed' on the part or material carries a duty.</summary>
    AlwaysWith,

    /// <summary>No published claim of the bare agent reaches above a level.</summary>
    NeverAbove,

    /// <summary>A person rule forbids the agent for the patient.</summary>
    NeverForPatient,

    /// <summary>The agent's record says what binds it.</summary>
    BoundBy,

    /// <summary>A hazard of mixing is on record.</summary>
    MixingOnRecord,
}

/// <summary>What the whole knowledge base must keep for ever, over a box of parts or materials, agents and exposures.</summary>
[Record(Validation.RecordKind.StandingRule)]
public sealed record StandingRule
{
    /// <summary>Its id.</summary>
    public required StandingRuleId Id { get; init; }

    /// <summary>
    /// The part type it holds for, with all below; exactly one of this and <see cref="Material"/> where it demands something of rules; beside a patient, the
    /// part types the person rule must cover.
    /// </summary>
    public PartId? Part { get; init; }

    /// <summary>The material it holds for, with all below: every part type that has it.</summary>
    public MaterialId? Material { get; init; }

    /// <summary>The agent class it holds for, with all below.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The exposures it holds for.</summary>
    public ExposureBox When { get; init; } = ExposureBox.Unbounded;

    /// <summary>The kind of duty that every 'allowed' there carries; null where nothing may be allowed there.</summary>
    public DutyKind? AlwaysWith { get; init; }

    /// <summary>The level that published claims of the bare agent may not reach above.</summary>
    public Level? NeverAbove { get; init; }

    /// <summary>The kind of patient for whom a person rule forbids the agent.</summary>
    public PatientGroup? Patient { get; init; }

    /// <summary>What the agent's record says it is bound or destroyed by.</summary>
    public string? BoundBy { get; init; }

    /// <summary>The other agent of a hazard of mixing that is on record.</summary>
    public AgentId? MixingWith { get; init; }

    /// <summary>The soil of a hazard of mixing that is on record.</summary>
    public SoilKind? MixingWithSoil { get; init; }

    /// <summary>What it demands.</summary>
    public StandingDemand Demand =>
        NeverAbove is not null ? StandingDemand.NeverAbove
        : Patient is not null ? StandingDemand.NeverForPatient
        : BoundBy is not null ? StandingDemand.BoundBy
        : MixingWith is not null || MixingWithSoil is not null ? StandingDemand.MixingOnRecord
        : AlwaysWith is not null ? StandingDemand.AlwaysWith
        : StandingDemand.NeverAllowed;

    /// <summary>Whether it demands something of rules on parts and materials.</summary>
    public bool SpeaksOfRules => Demand is StandingDemand.NeverAllowed or StandingDemand.AlwaysWith;

    /// <summary>Why, as a reviewer needs it.</summary>
    [Remark]
    public required string Reason { get; init; }

    /// <summary>Its sources.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];
}
