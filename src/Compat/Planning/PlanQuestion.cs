namespace Compat.Planning;

/// <summary>What a plan is asked for.</summary>
public sealed record PlanQuestion
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>Its serial number; null where it is not known.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The occasion; null where none is named: then every part that needs something is taken in.</summary>
    public OccasionId? Occasion { get; init; }

    /// <summary>A level that every part which needs anything reaches at least.</summary>
    public Level? Level { get; init; }

    /// <summary>What must be killed beside what the levels include.</summary>
    public IReadOnlyList<OrganismTarget> Against { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What is on the device; null where the usual soil of each part is taken.</summary>
    public IReadOnlyList<SoilKind>? Soil { get; init => field = Frozen.Of(value); }

    /// <summary>What is on single parts; it stands in place of <see cref="Soil"/> there.</summary>
    public IReadOnlyDictionary<DevicePartId, IReadOnlyList<SoilKind>> SoilOn { get; init => field = Frozen.Of(value); } = new Dictionary<DevicePartId, IReadOnlyList<SoilKind>>();

    /// <summary>Whether a patient is in the device or in reach.</summary>
    public bool Occupied { get; init; }

    /// <summary>What the cloth is made of; null where one is chosen of those at hand.</summary>
    public string? Cloth { get; init; }

    /// <summary>
    /// How many products the plan uses at most, cleaners included: 1 to 32; null for the convention. More than three are refused where the shelf
    /// leaves more than 3,000,000 sets of so many.
    /// </summary>
    public int? MaxProducts { get; init; }

    /// <summary>Consequences of damage that somebody will accept by name and date where nothing else serves: looks and wear only.</summary>
    public IReadOnlyList<Consequence> Accept { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How often the plan is run on a day; null where it was not said.</summary>
    public int? UsesPerDay { get; init; }
}
