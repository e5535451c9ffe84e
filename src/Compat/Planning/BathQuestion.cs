namespace Compat.Planning;

/// <summary>A bath, or an opened tub or bottle, as it stands today.</summary>
public sealed record BathQuestion
{
    /// <summary>The product of a site; exactly one of this and <see cref="Claim"/>.</summary>
    public ProductId? Product { get; init; }

    /// <summary>The published claim whose bath it is, where it is no product of a site.</summary>
    public ClaimId? Claim { get; init; }

    /// <summary>Today.</summary>
    public required CalendarDate Today { get; init; }

    /// <summary>The strength that was measured today; a range is uncertain. Null where none was.</summary>
    public Strength? Measured { get; init; }

    /// <summary>The day of the last test of its strength; null where none is on record.</summary>
    public CalendarDate? Tested { get; init; }

    /// <summary>Whether the last test passed; null where none is on record.</summary>
    public bool? TestPassed { get; init; }

    /// <summary>The day it was activated; null where it was not, or nobody knows.</summary>
    public CalendarDate? Activated { get; init; }

    /// <summary>The day it was diluted; null where it was not, or nobody knows.</summary>
    public CalendarDate? Diluted { get; init; }

    /// <summary>The day its lot was opened; null where nobody knows.</summary>
    public CalendarDate? Opened { get; init; }

    /// <summary>The last day of its lot, as printed on it; null where it was not read.</summary>
    public CalendarDate? Expires { get; init; }

    /// <summary>Whether the tub or bottle was filled again.</summary>
    public bool Refilled { get; init; }

    /// <summary>Whether it is a tub or bottle that is used up, and no bath that is used again.</summary>
    public bool Tub { get; init; }
}

/// <summary>What to do with it.</summary>
public enum BathVerdict
{
    /// <summary>Discard it.</summary>
    Discard,

    /// <summary>It is not known to be good: do not use it until what is missing is known.</summary>
    NotKnown,

    /// <summary>Nothing on record speaks against using it today.</summary>
    Use,
}

/// <summary>Why.</summary>
public enum BathReasonCode
{
    /// <summary>Weaker than the least strength on record, or perhaps so. Arguments: measured, least.</summary>
    TooWeak,

    /// <summary>The last test of its strength failed. Arguments: day.</summary>
    TestFailed,

    /// <summary>Its strength was not tested today. Arguments: how often it is tested.</summary>
    NotTestedToday,

    /// <summary>Past its reuse life. Arguments: last day.</summary>
    PastReuse,

    /// <summary>Past what it keeps after activation. Arguments: last day.</summary>
    PastActivation,

    /// <summary>Past what it keeps after dilution. Arguments: last day.</summary>
    PastDilution,

    /// <summary>Past what it keeps after opening. Arguments: last day.</summary>
    PastOpening,

    /// <summary>Past the day printed on its lot. Arguments: last day.</summary>
    PastExpiry,

    /// <summary>It was filled again, and nothing on record says that it may be. Arguments: none.</summary>
    Refilled,

    /// <summary>A day on which its life counts is not known. Arguments: which (activated, diluted, opened, expires).</summary>
    DayNotKnown,

    /// <summary>Neither a least strength nor a life is on record. Arguments: none.</summary>
    NothingOnRecord,

    /// <summary>Good until this day, if every test until then passes. Arguments: last day.</summary>
    GoodUntil,

    /// <summary>As strong as it must be. Arguments: measured, least.</summary>
    StrongEnough,
}

/// <summary>A reason with its arguments.</summary>
/// <param name="Code">Which.</param>
/// <param name="Arguments">What the code's description lists.</param>
public sealed record BathReason(BathReasonCode Code, IReadOnlyList<string> Arguments);

/// <summary>Whether a bath or an opened tub is still good.</summary>
public sealed record BathAnswer
{
    /// <summary>The question.</summary>
    public required BathQuestion Question { get; init; }

    /// <summary>What to do.</summary>
    public required BathVerdict Verdict { get; init; }

    /// <summary>Why, what decides first.</summary>
    public IReadOnlyList<BathReason> Reasons { get; init; } = [];

    /// <summary>The last day on which it may be used; null where it may not, or no life is on record.</summary>
    public CalendarDate? LastDay { get; init; }

    /// <summary>The agent whose strength is tested; null where none is on record.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The least strength; null where none is on record.</summary>
    public Strength? Least { get; init; }

    /// <summary>How often it is tested, in words; null where nothing is on record.</summary>
    public string? Test { get; init; }

    /// <summary>The sources of the figures; empty for a product's label.</summary>
    public IReadOnlyList<SourceId> Sources { get; init; } = [];

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }
}
