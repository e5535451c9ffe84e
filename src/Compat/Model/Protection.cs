namespace Compat.Model;

/// <summary>A glove material that an agent does not get through.</summary>
public sealed record GloveMaterial
{
    /// <summary>The material, in words.</summary>
    public required string Material { get; init; }

    /// <summary>How long it holds, in seconds; null where not stated.</summary>
    [Measured("Duration")]
    public decimal? Holds { get; init; }
}

/// <summary>How staff are protected from an agent.</summary>
[Record(Validation.RecordKind.Protection)]
public sealed record Protection
{
    /// <summary>Its id.</summary>
    public required ProtectionId Id { get; init; }

    /// <summary>The agent, with all below it.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The exposures it speaks of; an axis it does not name is unbounded in it.</summary>
    public ExposureBox When { get; init; } = ExposureBox.Unbounded;

    /// <summary>Gloves that hold.</summary>
    public IReadOnlyList<GloveMaterial> Gloves { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Glove materials that do not hold.</summary>
    public IReadOnlyList<string> GlovesFail { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Which staff keep off it, or off its gloves.</summary>
    public string? NotFor { get; init; }

    /// <summary>Protection of the eyes.</summary>
    public string? Eyes { get; init; }

    /// <summary>Protection of breathing.</summary>
    public string? Breathing { get; init; }

    /// <summary>Ventilation.</summary>
    public string? Ventilation { get; init; }

    /// <summary>Limits of exposure.</summary>
    public IReadOnlyList<ExposureLimit> Limits { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What to keep away because it burns or feeds a fire.</summary>
    public string? Fire { get; init; }

    /// <summary>Its flash point in °C; null where none is on record.</summary>
    [Measured("FlashPoint")]
    public decimal? FlashPoint { get; init; }

    /// <summary>What holds near oxygen.</summary>
    public string? Oxygen { get; init; }

    /// <summary>What holds on equipment that is switched on.</summary>
    public string? Energised { get; init; }

    /// <summary>How it is disposed of.</summary>
    public string? Disposal { get; init; }

    /// <summary>First aid.</summary>
    public string? FirstAid { get; init; }

    /// <summary>Its sources; at least one.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>When it was last looked at.</summary>
    [Remark]
    public required Compat.Model.CalendarDate Reviewed { get; init; }
}
