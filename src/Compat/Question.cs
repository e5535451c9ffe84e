namespace Compat;

/// <summary>One question: may this agent or product be used on this part? An axis that is null is left out and treated as the design states.</summary>
/// <remarks>Exactly one of <see cref="Agent"/> and <see cref="Product"/>; and a <see cref="Part"/>, a <see cref="Device"/> with <see cref="DevicePart"/>, or
/// <see cref="Materials"/>.</remarks>
public sealed record Question
{
    /// <summary>The part type asked about.</summary>
    public PartId? Part { get; init; }

    /// <summary>Materials asked about: alone, or beside a part, whose own list they decide and add to.</summary>
    public IReadOnlyList<MaterialSlot> Materials { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether <see cref="Materials"/> are all that the part is made of, and so take the place of its own list; null where that is not said.</summary>
    public bool? MaterialsKnown { get; init; }

    /// <summary>The device whose part is asked about.</summary>
    public DeviceId? Device { get; init; }

    /// <summary>The part of the device.</summary>
    public DevicePartId? DevicePart { get; init; }

    /// <summary>The device's serial number; null where it is not known.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The agent class asked about.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The product asked about.</summary>
    public ProductId? Product { get; init; }

    /// <summary>Strength of the agent; a range is uncertain: its worst value counts.</summary>
    public Strength? Strength { get; init; }

    /// <summary>Dilution of the product as a share of volume, above 0 to 1; a range is uncertain.</summary>
    public Interval? Dilution { get; init; }

    /// <summary>The method.</summary>
    public ApplicationMethod? Method { get; init; }

    /// <summary>Exposure time in seconds; a range is uncertain; <see cref="Interval.WithoutEnd"/> for one without end.</summary>
    public Interval? ExposureTime { get; init; }

    /// <summary>Temperature in °C; a range is uncertain.</summary>
    public Interval? Temperature { get; init; }

    /// <summary>pH; a range is uncertain.</summary>
    public Interval? Ph { get; init; }

    /// <summary>Uses over the part's life.</summary>
    public int? Uses { get; init; }

    /// <summary>Acts that go with it.</summary>
    public IReadOnlyList<Act> Acts { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether only the part is to be judged, not kill and people.</summary>
    public bool OnlyPart { get; init; }

    /// <summary>What touches the part; null where what is on record of it holds.</summary>
    public TouchedBy? TouchedBy { get; init; }

    /// <summary>The kinds of patient; empty where those of the device or part hold.</summary>
    public IReadOnlyList<PatientGroup> Patients { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether a patient is in the device or in reach.</summary>
    public bool Occupied { get; init; }

    /// <summary>What was on the part; null where what is usually on it holds, empty where nothing was.</summary>
    public IReadOnlyList<SoilKind>? Soil { get; init => field = Frozen.Of(value); }

    /// <summary>A level to reach at least; it only raises what the contact asks.</summary>
    public Level? Level { get; init; }

    /// <summary>The groups and organisms that must be killed beside what the level includes.</summary>
    public IReadOnlyList<OrganismTarget> Against { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What the cloth is made of; null where it was not said.</summary>
    public string? Cloth { get; init; }

    /// <summary>
    /// Whether kill and people are judged beside the part: a device is named, or any of what they are judged by, and the part alone was not asked.
    /// </summary>
    public bool JudgesKillAndPeople =>
        !OnlyPart
            && (Device is not null || TouchedBy is not null || Patients is { Count: > 0 } || Occupied || Soil is not null || Level is not null
            || Against is { Count: > 0 } || Cloth is not null);
}
