namespace Compat.Model;

/// <summary>What what touches a part asks of it: a level, or to be kept dry.</summary>
[Record(Validation.RecordKind.Need)]
public sealed record NeedRule
{
    /// <summary>Its id.</summary>
    public required NeedRuleId Id { get; init; }

    /// <summary>The contacts it holds for.</summary>
    public IReadOnlyList<TouchedBy> TouchedBy { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The soils it holds for, where it holds only where such soil was on the part; empty where it always holds.</summary>
    public IReadOnlyList<SoilKind> Soil { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The level it asks; null where it asks nothing and the part is kept dry.</summary>
    public Level? Level { get; init; }

    /// <summary>Whether the part is cleaned first, in a step of its own.</summary>
    public bool CleanFirst { get; init; }

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
