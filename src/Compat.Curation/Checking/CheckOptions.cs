namespace Compat.Curation.Checking;

/// <summary>What a check is asked to look at beside contradictions and dead rules.</summary>
public sealed record CheckOptions
{
    /// <summary>The day on which the age of a review is counted, and behind which no date may lie.</summary>
    public required CalendarDate Today { get; init; }

    /// <summary>After how many months without a review a rule is stale.</summary>
    public int StaleAfterMonths { get; init; } = 24;

    /// <summary>How many gaps are no fault; null where any number is none.</summary>
    public int? GapsAtMost { get; init; }

    /// <summary>Whether refinements are listed.</summary>
    public bool WithRefinements { get; init; }

    /// <summary>Told what is looked at, for showing progress; null where nobody watches.</summary>
    public Action<string>? Progress { get; init; }
}
