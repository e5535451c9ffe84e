namespace Compat.Model;

/// <summary>What kind of source it is.</summary>
public enum SourceKind
{
    /// <summary>A published standard.</summary>
    Standard,

    /// <summary>A guideline.</summary>
    Guideline,

    /// <summary>A handbook.</summary>
    Handbook,

    /// <summary>A paper.</summary>
    Paper,

    /// <summary>A device's instructions.</summary>
    DeviceInstructions,

    /// <summary>A product's label or data sheet.</summary>
    Label,

    /// <summary>A statement of a maker.</summary>
    MakerStatement,

    /// <summary>A test of a site.</summary>
    SiteTest,

    /// <summary>Common practice of the trade; no publication.</summary>
    CommonPractice,
}

/// <summary>How far a source is to be trusted.</summary>
public enum Trust
{
    /// <summary>Read at the publisher's own address.</summary>
    Strong,

    /// <summary>The publication is named; what was read was a copy, or nothing was.</summary>
    NamedPublication,

    /// <summary>No publication of standing.</summary>
    Weak,
}

/// <summary>Where a statement comes from.</summary>
[Record(Validation.RecordKind.Source)]
public sealed record Source
{
    /// <summary>Its id.</summary>
    public required SourceId Id { get; init; }

    /// <summary>What kind of source it is.</summary>
    public required SourceKind Kind { get; init; }

    /// <summary>Its title.</summary>
    [Remark]
    public required string Title { get; init; }

    /// <summary>Who published it.</summary>
    [Remark]
    public string? Publisher { get; init; }

    /// <summary>The year, edition or date it is of.</summary>
    [Remark]
    public string? Edition { get; init; }

    /// <summary>Section, table or page.</summary>
    [Remark]
    public string? Section { get; init; }

    /// <summary>The publisher's own page.</summary>
    [Remark]
    public string? Address { get; init; }

    /// <summary>Whether it is carried from memory; false where it, or a copy, was read.</summary>
    [Key("basis")]
    [Truth("read", "recalled")]
    public bool Recalled { get; init; }

    /// <summary>How far it is to be trusted.</summary>
    public Trust Trust { get; init; } = Trust.NamedPublication;

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }

    /// <summary>Whether it was read, has standing, and is more than practice.</summary>
    internal bool IsWellFounded => !Recalled && Trust != Trust.Weak && Kind != SourceKind.CommonPractice;
}
