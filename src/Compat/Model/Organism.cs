namespace Compat.Model;

/// <summary>An organism that a question or a claim may name.</summary>
[Record(Validation.RecordKind.Organism)]
public sealed record Organism
{
    /// <summary>Its id; never the word of a group.</summary>
    public required OrganismId Id { get; init; }

    /// <summary>Its name.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>Everyday names and abbreviations.</summary>
    [Remark]
    public IReadOnlyList<string> AlsoCalled { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The group it belongs to.</summary>
    public required OrganismGroup Group { get; init; }

    /// <summary>Whether it needs a claim of its own: one for its group does not suffice.</summary>
    public bool OwnClaim { get; init; }

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}

/// <summary>What a claim says is killed, or is not: a whole group or one organism.</summary>
public sealed record OrganismTarget
{
    private OrganismTarget() { }

    /// <summary>The group, or null.</summary>
    public OrganismGroup? Group { get; private init; }

    /// <summary>The organism, or null.</summary>
    public OrganismId? Organism { get; private init; }

    /// <summary>A whole group.</summary>
    public static OrganismTarget Of(OrganismGroup group) => new() { Group = group };

    /// <summary>One organism.</summary>
    public static OrganismTarget Of(OrganismId organism) => new() { Organism = organism ?? throw new ArgumentNullException(nameof(organism)) };

    /// <summary>The word of the group or the id of the organism, as a file spells it.</summary>
    public override string ToString() => Group is { } group ? Words.Of(group) : Organism!.Value;
}
