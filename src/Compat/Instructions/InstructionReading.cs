namespace Compat.Instructions;

/// <summary>What became of words of an edition.</summary>
public enum ReadingOutcome
{
    /// <summary>They permit: the rules say what.</summary>
    Permits,

    /// <summary>They forbid: the rules say what.</summary>
    Forbids,

    /// <summary>They say how it is done: their methods, exposure time and duties went into the rules of what the edition permits.</summary>
    SaysHow,

    /// <summary>The table reads no permission into them: they list nothing.</summary>
    ListsNothing,

    /// <summary>They would permit, but words that say how could not be read, so the condition of the permission is not known: they list nothing.</summary>
    HowNotRead,

    /// <summary>They would permit, but what is said of how leaves no method: they list nothing.</summary>
    NoMethodLeft,

    /// <summary>The table does not know them: they list nothing.</summary>
    NotInTable,

    /// <summary>They forbid, and the table cannot say what: everything is taken to be forbidden until somebody has read them.</summary>
    ForbidsUnread,
}

/// <summary>How words of an edition of a device's instructions were read.</summary>
public sealed record InstructionReading
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>The edition of its instructions.</summary>
    public required EditionId Edition { get; init; }

    /// <summary>The words, as they stand there.</summary>
    public required string Words { get; init; }

    /// <summary>The words whose way of doing they describe; null where they stand by themselves.</summary>
    public string? HowOf { get; init; }

    /// <summary>The parts they speak of; empty for all.</summary>
    public IReadOnlyList<DevicePartId> Parts { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The record of the table that reads them; null where none does.</summary>
    public InstructionWordId? Word { get; init; }

    /// <summary>What became of them.</summary>
    public required ReadingOutcome Outcome { get; init; }

    /// <summary>The rules that were made of them, in order.</summary>
    public IReadOnlyList<RuleId> Rules { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Phrases of the table that are spelt like words it does not know, nearest first.</summary>
    public IReadOnlyList<string> Nearest { get; init => field = Frozen.Of(value); } = [];
}
