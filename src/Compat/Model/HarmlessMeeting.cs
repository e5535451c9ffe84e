namespace Compat.Model;

/// <summary>A statement that nothing harmful happens and no effect is lost where an agent meets another. It is no hazard, and takes none away.</summary>
[Record(Validation.RecordKind.HarmlessMeeting)]
public sealed record HarmlessMeeting
{
    /// <summary>Its id; hazards of mixing and these share one set of ids.</summary>
    public required MixingHazardId Id { get; init; }

    /// <summary>The agent, with all below it.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The other agent, with all below it; exactly one of this, <see cref="WithSoil"/> and <see cref="WithMaterial"/>.</summary>
    public AgentId? WithAgent { get; init; }

    /// <summary>The soil.</summary>
    public SoilKind? WithSoil { get; init; }

    /// <summary>The material, with all below it.</summary>
    public MaterialId? WithMaterial { get; init; }

    /// <summary>Why nothing happens, in one sentence.</summary>
    [Key("harmless")]
    [Remark]
    public required string Why { get; init; }

    /// <summary>Its sources; at least one.</summary>
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>When it was last looked at.</summary>
    [Remark]
    public required CalendarDate Reviewed { get; init; }
}
