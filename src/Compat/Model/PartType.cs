namespace Compat.Model;

/// <summary>A kind of device part, in one tree. One that states no materials, wettest method or acts has its parent's.</summary>
[Record(Validation.RecordKind.Part)]
public sealed record PartType
{
    /// <summary>The root of the tree of part types.</summary>
    public static PartId Root { get; } = new("any-part");

    /// <summary>Its id.</summary>
    public required PartId Id { get; init; }

    /// <summary>What the trade calls it.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>The part type it is a kind of; null for the root only.</summary>
    public PartId? Under { get; init; }

    /// <summary>Everyday names.</summary>
    [Remark]
    public IReadOnlyList<string> AlsoCalled { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What it is made of, bonds, coatings and print included; null where the parent's hold.</summary>
    public IReadOnlyList<MaterialSlot>? Materials { get; init => field = Frozen.Of(value); }

    /// <summary>Whether <see cref="Materials"/> are all of them; null is yes where materials are stated, no where neither it nor a parent states any.</summary>
    [Truth("partly", "fully")]
    public bool? MaterialsKnown { get; init; }

    /// <summary>The wettest method it stands; null where the parent's holds. Nowhere stated: dry-wipe.</summary>
    public ApplicationMethod? Wettest { get; init; }

    /// <summary>Acts it never stands; null where the parent's hold.</summary>
    public IReadOnlyList<Act>? Never { get; init => field = Frozen.Of(value); }

    /// <summary>Its usual shape; null where the parent's holds. Nowhere stated: open.</summary>
    public Geometry? Geometry { get; init; }

    /// <summary>What usually touches it; null where the parent's holds.</summary>
    public TouchedBy? TouchedBy { get; init; }

    /// <summary>The kinds of patient it is usually for; those of its ancestors hold too.</summary>
    public IReadOnlyList<PatientGroup> Patients { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What is usually on it before it is cleaned; null where the parent's holds.</summary>
    public IReadOnlyList<SoilKind>? Soil { get; init => field = Frozen.Of(value); }

    /// <summary>What helps where it cannot be cleaned as it needs; null where the parent's holds.</summary>
    public IReadOnlyList<WayOut>? WayOut { get; init => field = Frozen.Of(value); }

    /// <summary>What to check of its function after it was cleaned; null where the parent's holds.</summary>
    public string? FunctionCheck { get; init; }

    /// <summary>How long it is dry before power, in seconds; null where the parent's holds.</summary>
    [Measured("Duration")]
    public decimal? DryBeforePower { get; init; }

    /// <summary>The protection against water that sets its wettest method; null where the parent's holds.</summary>
    [Remark]
    public WaterIngress? WaterIngress { get; init; }

    /// <summary>What accompanies every use of any agent on it; those of its ancestors hold too.</summary>
    public IReadOnlyList<Duty> Duties { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
