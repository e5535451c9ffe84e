namespace Compat.Model;

/// <summary>What a duty asks.</summary>
public enum DutyKind
{
    /// <summary>Take the residue off, by one of the ways.</summary>
    TakeOff,

    /// <summary>Wipe dry or let dry, by one of the ways.</summary>
    WipeDry,

    /// <summary>Dry the part, by one of the ways.</summary>
    Dry,

    /// <summary>Keep the agent off the named parts.</summary>
    KeepOff,

    /// <summary>Clean the part first.</summary>
    CleanFirst,

    /// <summary>Keep it visibly wet, re-wetting as often as it takes.</summary>
    KeepWet,

    /// <summary>Wear protection.</summary>
    Protect,

    /// <summary>Ventilate the room.</summary>
    Ventilate,

    /// <summary>Inspect the part after so many uses.</summary>
    Inspect,

    /// <summary>Let no liquid pool or enter.</summary>
    NoPooling,

    /// <summary>Switch the device off and disconnect it first.</summary>
    PowerOff,

    /// <summary>Discard the part after so many uses.</summary>
    Discard,
}

/// <summary>Grades of water, each serving where a lower one is asked.</summary>
public enum WaterGrade
{
    /// <summary>Running water of drinking quality.</summary>
    Running,

    /// <summary>Purified water.</summary>
    Purified,

    /// <summary>Sterile water.</summary>
    Sterile,
}

/// <summary>
/// How a duty is met: by a method with water (<see cref="Method"/>) or by an act (<see cref="Act"/>), or by leaving the part to the air (neither).
/// </summary>
/// <remarks>A part stands a way whose method is not wetter than the part stands and whose act is none of those it never stands. Air is always stood.</remarks>
public sealed record DutyWay
{
    /// <summary>Left to dry in the air.</summary>
    public static DutyWay Air { get; } = new();

    /// <summary>The method by which water is brought onto the part; null where none is.</summary>
    public ApplicationMethod? Method { get; init; }

    /// <summary>The act; null where there is none.</summary>
    public Act? Act { get; init; }

    /// <summary>The least grade of water; null where no water is used or the grade is not stated.</summary>
    public WaterGrade? Water { get; init; }

    /// <summary>How often, at least; null where not stated.</summary>
    public int? Times { get; init; }

    /// <summary>How long each time, at least, in seconds; null where not stated.</summary>
    public decimal? Seconds { get; init; }

    /// <summary>How much water each time, at least, in litres; null where not stated.</summary>
    public decimal? Litres { get; init; }

    /// <summary>The way that takes water and a cloth or a rinse, by its method.</summary>
    public static DutyWay By(ApplicationMethod method) => new() { Method = method };

    /// <summary>The way that is an act.</summary>
    public static DutyWay By(Act act) => new() { Act = act };
}

/// <summary>What must accompany a use.</summary>
public sealed record Duty
{
    /// <summary>What it asks.</summary>
    public required DutyKind Kind { get; init; }

    /// <summary>The ways of which one meets it; empty where the kind has none.</summary>
    public IReadOnlyList<DutyWay> Ways { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Within how many seconds, at most; null where not stated.</summary>
    public decimal? Within { get; init; }

    /// <summary>The part types to keep off, of a <see cref="DutyKind.KeepOff"/>.</summary>
    public IReadOnlyList<PartId> Parts { get; init => field = Frozen.Of(value); } = [];

    /// <summary>After how many uses, of an <see cref="DutyKind.Inspect"/> or <see cref="DutyKind.Discard"/>.</summary>
    public int? AfterUses { get; init; }

    /// <summary>What to look for, what to wear, how to ventilate: in words.</summary>
    public string? Note { get; init; }
}
