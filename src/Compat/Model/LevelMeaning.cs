namespace Compat.Model;

/// <summary>Which groups of organisms a level includes. A group never implies a level. <see cref="Level.Cleaned"/> includes none and needs no record.</summary>
[Record(Validation.RecordKind.Level)]
public sealed record LevelMeaning
{
    /// <summary>The level.</summary>
    [Key("id")]
    public required Level Level { get; init; }

    /// <summary>The groups it includes.</summary>
    public IReadOnlyList<OrganismGroup> Includes { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
