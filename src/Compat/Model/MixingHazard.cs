namespace Compat.Model;

/// <summary>What happens where an agent meets another agent, a soil or a material it is not judged on as a surface.</summary>
[Record(Validation.RecordKind.Mixing)]
public sealed record MixingHazard
{
    /// <summary>Its id.</summary>
    public required MixingHazardId Id { get; init; }

    /// <summary>The agent, with all below it.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The other agent, with all below it; exactly one of this, <see cref="WithSoil"/> and <see cref="WithMaterial"/>.</summary>
    public AgentId? WithAgent { get; init; }

    /// <summary>The soil.</summary>
    public SoilKind? WithSoil { get; init; }

    /// <summary>The material, with all below it.</summary>
    public MaterialId? WithMaterial { get; init; }

    /// <summary>Where it holds only under a condition, in words: where concentrated, where hot.</summary>
    public string? OnlyWhere { get; init; }

    /// <summary>The strengths of the agent at which it holds, in percent of the agent's basis; null: every strength.</summary>
    [Key("strength", Within = "when")]
    [Measured("Strength")]
    public Interval? Strength { get; init; }

    /// <summary>The strengths of the other agent at which it holds, in percent of that agent's basis; null: every strength.</summary>
    [Key("with-strength", Within = "when")]
    [Measured("Strength", Of = "with-agent")]
    public Interval? WithStrength { get; init; }

    /// <summary>Why it stands on this agent and not on the class that the agent shares with others; null where nothing is said.</summary>
    [Key("agent", Within = "rests-on")]
    [Remark]
    public MemberGround? AgentRestsOn { get; init; }

    /// <summary>Why it stands on this other agent and not on its class; null where nothing is said.</summary>
    [Key("with-agent", Within = "rests-on")]
    [Remark]
    public MemberGround? WithAgentRestsOn { get; init; }

    /// <summary>What happens; at least one.</summary>
    public IReadOnlyList<MixingEffect> Effects { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What forms, by name.</summary>
    public IReadOnlyList<string> Forms { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How much it forbids.</summary>
    public required MixingSeverity Severity { get; init; }

    /// <summary>What lets the two follow each other; empty where nothing is said of it.</summary>
    public IReadOnlyList<Separation> SeparatedBy { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How they are kept apart, in words.</summary>
    public string? How { get; init; }

    /// <summary>Why, in one sentence.</summary>
    [Remark]
    public required string Why { get; init; }

    /// <summary>Its sources; at least one.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>When it was last looked at.</summary>
    [Remark]
    public required CalendarDate Reviewed { get; init; }
}
