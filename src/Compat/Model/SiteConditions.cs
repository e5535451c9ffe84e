namespace Compat.Model;

/// <summary>What is at hand at a site: a step that needs what is not there is not in a plan. What is null or empty was not stated.</summary>
public sealed record SiteConditions
{
    /// <summary>The temperatures of the rooms, in °C.</summary>
    [Measured("Temperature")]
    public Interval? Temperature { get; init; }

    /// <summary>The hardness of the water, in mg/L of calcium carbonate.</summary>
    [Measured("Hardness")]
    public Interval? Hardness { get; init; }

    /// <summary>The grades of water at hand.</summary>
    public IReadOnlyList<WaterGrade> Water { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The cloths at hand, by what they are made of.</summary>
    public IReadOnlyList<string> Cloths { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The glove materials at hand.</summary>
    public IReadOnlyList<string> Gloves { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether there is clean compressed air to dry with; null where not stated.</summary>
    public bool? DryingAir { get; init; }
}

/// <summary>Another level that a site has decided for a part.</summary>
public sealed record LevelDecision
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>Its part; null for every part.</summary>
    public DevicePartId? Part { get; init; }

    internal (DeviceId Device, DevicePartId? Part) Key => (Device, Part);

    /// <summary>The level.</summary>
    public required Level Level { get; init; }

    /// <summary>Who decided, by office and never by name.</summary>
    public required string DecidedBy { get; init; }

    /// <summary>Why.</summary>
    public required string Because { get; init; }

    /// <summary>On what it rests; at least one.</summary>
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];
}
