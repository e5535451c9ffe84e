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

/// <summary>A part type with the agents of which nothing is known on it.</summary>
/// <param name="Part">The part type.</param>
/// <param name="Agents">The narrowest agents without evidence, by id.</param>
/// <param name="OutOf">How many of the narrowest agents there are.</param>
public sealed record PartGaps(PartId Part, IReadOnlyList<AgentId> Agents, int OutOf);

/// <summary>All that one check found.</summary>
public sealed record CheckReport
{
    /// <summary>What a check found that could check nothing.</summary>
    public static CheckReport Nothing { get; } = new() { Findings = [], Rules = 0, Subjects = 0, Agents = 0 };

    /// <summary>What was found: faults first, then notes, each by kind and rule.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The gaps, worst parts first.</summary>
    public IReadOnlyList<PartGaps> Gaps { get; init; } = [];

    /// <summary>How many rules were checked.</summary>
    public required int Rules { get; init; }

    /// <summary>How many materials, variants of part types and parts of devices they were checked on.</summary>
    public required int Subjects { get; init; }

    /// <summary>How many agents they were checked with.</summary>
    public required int Agents { get; init; }

    /// <summary>The faults among the findings.</summary>
    public IEnumerable<Finding> Faults => Findings.Where(finding => finding.IsFault);

    /// <summary>Whether there is no fault.</summary>
    public bool IsClean => !Faults.Any();

    /// <summary>How many pairs of part and agent have no evidence.</summary>
    public int GapCount => Gaps.Sum(part => part.Agents.Count);
}
