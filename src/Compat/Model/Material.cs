namespace Compat.Model;

/// <summary>
/// What a surface is made of, in one tree: a rule on a material holds for those below it (an 'allowed' only as far as no delicate one begins).
/// </summary>
[Record(Validation.RecordKind.Material)]
public sealed record Material
{
    /// <summary>The root of the tree of materials.</summary>
    public static MaterialId Root { get; } = new("any-material");

    /// <summary>Its id.</summary>
    public required MaterialId Id { get; init; }

    /// <summary>What the trade calls it.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>The material it is a kind of; null for the root only.</summary>
    public MaterialId? Under { get; init; }

    /// <summary>Why it is delicate, where it is; holds for all below it.</summary>
    public Delicacy? Delicate { get; init; }

    /// <summary>Whether what a safety data sheet leaves out does not matter to it; holds for all below it.</summary>
    public bool DeclaredOnlySuffices { get; init; }

    /// <summary>Everyday names and abbreviations.</summary>
    [Remark]
    public IReadOnlyList<string> AlsoCalled { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}

/// <summary>One material of a part, or several of which one is there and it is not known which.</summary>
public sealed record MaterialSlot
{
    /// <summary>Makes a slot.</summary>
    /// <param name="oneOf">One material, or the candidates.</param>
    public MaterialSlot(params MaterialId[] oneOf)
    {
        ArgumentNullException.ThrowIfNull(oneOf);
        OneOf = Frozen.Of(oneOf);
    }

    /// <summary>The candidates; a single one where it is known.</summary>
    public IReadOnlyList<MaterialId> OneOf { get; }
}
