using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>What a check can find.</summary>
public enum FindingKind
{
    /// <summary>An 'allowed' and a 'not allowed' hold for one use, and neither is an exception to the other.</summary>
    Contradiction,

    /// <summary>A 'not allowed' written strictly below an 'allowed' takes a piece out of it.</summary>
    Refinement,

    /// <summary>An override that no use ever meets.</summary>
    OverrideMisses,

    /// <summary>Rules that override each other.</summary>
    OverrideCycle,

    /// <summary>An override of a rule above or beside it.</summary>
    OverrideReach,

    /// <summary>An override that changes neither verdict nor duties.</summary>
    OverrideIdle,

    /// <summary>A rule set against a device's instructions.</summary>
    OverridesInstructions,

    /// <summary>A rule that cites an edition of instructions which no longer speaks for any device.</summary>
    SupersededEdition,

    /// <summary>A rule that decides no question.</summary>
    DeadRule,

    /// <summary>A rule without which every answer is the same.</summary>
    RedundantRule,

    /// <summary>A standing rule that an answer breaks.</summary>
    BrokenStandingRule,

    /// <summary>A claim of efficacy promises a level or a group of which another claim says that something is not killed.</summary>
    LooserClaim,

    /// <summary>A device's own instructions depart from a standing rule.</summary>
    InstructionsDepart,

    /// <summary>An 'allowed' whose duties or whose exposure time a part it covers cannot meet, or that nobody can carry out.</summary>
    ImpossibleAnswer,

    /// <summary>A label's claim that says more than the tests it names show.</summary>
    ClaimBeyondTests,

    /// <summary>More pairs of part and agent without evidence than were agreed.</summary>
    TooManyGaps,

    /// <summary>An agent binds or destroys another, and nothing is on record of the two where they meet.</summary>
    MissingMixing,

    /// <summary>A hazard stands on one member of a class and does not say why not on the class, or says what is not so.</summary>
    HazardOfOneMember,

    /// <summary>What is on record as harmless has a hazard on record too.</summary>
    HarmlessBesideHazard,

    /// <summary>An 'allowed' that rests on less than it says.</summary>
    ThinEvidence,

    /// <summary>An agent that a part stands and that kills what the part usually needs, but not both at once.</summary>
    ClosedWindow,

    /// <summary>A rule that was not looked at for long, or that better evidence near it puts in doubt.</summary>
    Stale,

    /// <summary>A date that lies behind the day of the check.</summary>
    LaterThanToday,

    /// <summary>A number of a register that two agents have.</summary>
    NumberTwice,

    /// <summary>A name that two records of one kind have.</summary>
    NameTwice,
}

/// <summary>A rule or other record that a finding speaks of.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Label">What it is there, in a few words.</param>
public sealed record Involved(ProblemPlace Place, string Label);

/// <summary>One thing that a check found.</summary>
public sealed record Finding
{
    /// <summary>What it is.</summary>
    public required FindingKind Kind { get; init; }

    /// <summary>Whether it is a fault; else a note.</summary>
    public required bool IsFault { get; init; }

    /// <summary>What is wrong: lower case, no final stop, text of the data in backticks.</summary>
    public required string Message { get; init; }

    /// <summary>Every record involved, the one to change first.</summary>
    public required IReadOnlyList<Involved> Involved { get; init; }

    /// <summary>The subject it was found on, by its id; null where it holds for none in particular.</summary>
    public string? Subject { get; init; }

    /// <summary>The agent or product it was found with; null where it holds for none in particular.</summary>
    public string? Agent { get; init; }

    /// <summary>The largest box of exposures at which it holds; an axis not named holds everywhere.</summary>
    public ExposureBox? Box { get; init; }

    /// <summary>A question that shows it.</summary>
    public Question? Witness { get; init; }

    /// <summary>Ways to mend it, the best first.</summary>
    public IReadOnlyList<Mend> Mends { get; init; } = [];

    /// <summary>What else helps to mend it; null where there is nothing to add.</summary>
    public string? Help { get; init; }
}
