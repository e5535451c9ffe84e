namespace Compat.Model;

/// <summary>A paper that goes with an occasion.</summary>
public enum Paper
{
    /// <summary>The sheet of steps, with a blank for done or not done and initials at each.</summary>
    StepSheet,

    /// <summary>The declaration of the decontamination status.</summary>
    DecontaminationStatus,

    /// <summary>The label for a device that is held.</summary>
    HoldLabel,
}

/// <summary>Why a device is cleaned now, and what that adds to a plan.</summary>
[Record(Validation.RecordKind.Occasion)]
public sealed record Occasion
{
    /// <summary>Its id.</summary>
    public required OccasionId Id { get; init; }

    /// <summary>What it is called.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>The contacts whose parts it takes in; empty where it takes in all that need something.</summary>
    public IReadOnlyList<TouchedBy> Parts { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The level that every part it takes in reaches at least, where the part needs anything at all; null where it raises none.</summary>
    public Level? AtLeast { get; init; }

    /// <summary>Whether it must be said against what.</summary>
    public bool NeedsAgainst { get; init; }

    /// <summary>Whether nothing is done to the device: it is kept as it is. Then there is no plan.</summary>
    public bool Hold { get; init; }

    /// <summary>What is done beside the steps of the parts, in words, in order.</summary>
    public IReadOnlyList<string> Adds { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The papers it asks.</summary>
    public IReadOnlyList<Paper> Papers { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
