namespace Compat.Knowledge;

/// <summary>What the whole knowledge base must keep for ever, over a box of parts or materials, agents and exposures.</summary>
public sealed record StandingRule
{
    /// <summary>Its id.</summary>
    public required StandingRuleId Id { get; init; }

    /// <summary>The part type it holds for, with all below; exactly one of this and <see cref="Material"/>.</summary>
    public PartId? Part { get; init; }

    /// <summary>The material it holds for, with all below: every part type that has it.</summary>
    public MaterialId? Material { get; init; }

    /// <summary>The agent class it holds for, with all below.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The exposures it holds for.</summary>
    public ExposureBox When { get; init; } = ExposureBox.Unbounded;

    /// <summary>The kind of duty that every 'allowed' there carries; null where nothing may be allowed there.</summary>
    public DutyKind? AlwaysWith { get; init; }

    /// <summary>Why, as a reviewer needs it.</summary>
    public required string Reason { get; init; }

    /// <summary>Its sources.</summary>
    public IReadOnlyList<SourceId> Sources { get; init; } = [];
}
