namespace Compat.Model;

/// <summary>One part of a device.</summary>
public sealed record DevicePart
{
    /// <summary>Its id, unique within the device.</summary>
    public required DevicePartId Id { get; init; }

    /// <summary>What the site calls it; null for the part type's name.</summary>
    [Remark]
    public string? Name { get; init; }

    /// <summary>Its part type, or the candidates of which one is right.</summary>
    [Key("type")]
    public required IReadOnlyList<PartId> OneOfTypes { get; init => field = Frozen.Of(value); }

    /// <summary>Materials of it that are known: they decide and add to those of its type, or are all of them. Null where the type's hold.</summary>
    public IReadOnlyList<MaterialSlot>? Materials { get; init => field = Frozen.Of(value); }

    /// <summary>Whether <see cref="Materials"/> are all of them, and so take the place of the type's; null where that is not said.</summary>
    [Truth("partly", "fully")]
    public bool? MaterialsKnown { get; init; }

    /// <summary>The wettest method its instructions give; null where the type's holds.</summary>
    public ApplicationMethod? Wettest { get; init; }

    /// <summary>The edition of the instructions that states a <see cref="Wettest"/> wetter than the type's.</summary>
    public EditionId? WettestFrom { get; init; }

    /// <summary>Its shape; null where the type's holds.</summary>
    public Geometry? Geometry { get; init; }

    /// <summary>What touches it; null where the type's holds.</summary>
    public TouchedBy? TouchedBy { get; init; }

    /// <summary>Why something touches it that asks less than what touches its type; needed where it asks less.</summary>
    public string? Because { get; init; }

    /// <summary>What is usually on it before it is cleaned; null where the type's holds.</summary>
    public IReadOnlyList<SoilKind>? Soil { get; init => field = Frozen.Of(value); }

    /// <summary>What it is like once taken apart; null where it is not, or nobody knows.</summary>
    public DismantledPart? WhenDismantled { get; init; }
}

/// <summary>One edition of what a device's maker says.</summary>
public sealed record InstructionsEdition
{
    /// <summary>Its id, unique within the device.</summary>
    public required EditionId Id { get; init; }

    /// <summary>Its date.</summary>
    public CalendarDate? Dated { get; init; }

    /// <summary>The serial numbers it covers; empty for all.</summary>
    public IReadOnlyList<SerialRange> Serials { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The editions it replaces where both cover a device.</summary>
    public IReadOnlyList<EditionId> Replaces { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether only the agents it lists may be used.</summary>
    [Key("agents")]
    [Truth(null, "only-listed")]
    public bool OnlyListed { get; init; }

    /// <summary>Its source.</summary>
    public SourceId? Source { get; init; }

    /// <summary>What it permits and forbids in words of its own.</summary>
    public IReadOnlyList<InstructionPhrase> Says { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The levels it says are reached.</summary>
    public IReadOnlyList<InstructedLevel> Reaches { get; init => field = Frozen.Of(value); } = [];
}

/// <summary>An assembly of parts at one site, with its instructions.</summary>
[Record(Validation.RecordKind.Device)]
public sealed record Device
{
    /// <summary>Its id.</summary>
    public required DeviceId Id { get; init; }

    /// <summary>What the site calls it.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>Its parts; at least one.</summary>
    public required IReadOnlyList<DevicePart> Parts { get; init => field = Frozen.Of(value); }

    /// <summary>The kinds of patient it is for; null where its part types say so.</summary>
    public IReadOnlyList<PatientGroup>? Patients { get; init => field = Frozen.Of(value); }

    /// <summary>The editions of its instructions; empty where they were not seen.</summary>
    public IReadOnlyList<InstructionsEdition> Instructions { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
