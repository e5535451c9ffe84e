namespace Compat.Curation.Reviewing;

/// <summary>What a change of answers is, the most dangerous first.</summary>
public enum ChangeKind
{
    /// <summary>More is permitted than before.</summary>
    Loosened,

    /// <summary>A level or group of organisms is reached with less than before.</summary>
    EfficacyLoosened,

    /// <summary>A use is permitted with less care than before.</summary>
    DutiesDropped,

    /// <summary>What is not allowed still is, but what it prevents is said to be milder: a plan may accept it.</summary>
    PreventsLess,

    /// <summary>The same is answered on less.</summary>
    EvidenceWeakened,

    /// <summary>Less is permitted than before, or with more care.</summary>
    Tightened,

    /// <summary>The same is answered on more.</summary>
    EvidenceStrengthened,
}

/// <summary>From what to what an answer changed, the most dangerous first.</summary>
public enum AnswerStep
{
    /// <summary>What was not allowed is permitted.</summary>
    ForbiddenToPermitted,

    /// <summary>What was not established, or not on record, is permitted.</summary>
    NewlyPermitted,

    /// <summary>What was not allowed is not established.</summary>
    NoLongerForbidden,

    /// <summary>All else.</summary>
    Other,
}

/// <summary>A box of exposures of one subject to one agent in which the answer is another than before, the same throughout.</summary>
public sealed record AnswerChange
{
    /// <summary>What it is.</summary>
    public required ChangeKind Kind { get; init; }

    /// <summary>What kind of thing it is asked of.</summary>
    public required SubjectKind SubjectKind { get; init; }

    /// <summary>The id of the part type or material; of a device's part <c>device/part</c>.</summary>
    public required string Subject { get; init; }

    /// <summary>
    /// A serial number of the device for which it holds: it does for every other that the same editions of the instructions speak for. Null where they tell
    /// none apart.
    /// </summary>
    public SerialNumber? Serial => Question.Serial;

    /// <summary>The agent.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The box; an axis not named holds everywhere.</summary>
    public required ExposureBox Box { get; init; }

    /// <summary>The methods.</summary>
    public required MethodSet Methods { get; init; }

    /// <summary>The unit of the strength; null where there is none.</summary>
    public StrengthUnit? Basis { get; init; }

    /// <summary>The verdict before.</summary>
    public required Verdict From { get; init; }

    /// <summary>The verdict now.</summary>
    public required Verdict To { get; init; }

    /// <summary>Whether the agent was not on record before.</summary>
    public bool IsNewAgent { get; init; }

    /// <summary>Whether the part, material or device was not on record before.</summary>
    public bool IsNewSubject { get; init; }

    /// <summary>The worst that a 'not allowed' prevented before, anywhere in the box; null where no rule forbade.</summary>
    public Consequence? Prevented { get; init; }

    /// <summary>The worst that a 'not allowed' prevents now, anywhere in the box; null where no rule forbids.</summary>
    public Consequence? Prevents { get; init; }

    /// <summary>
    /// What forbade without a rule before: the part does not stand the method, or its instructions list other things only; null where nothing did.
    /// </summary>
    public Reason? BarrierBefore { get; init; }

    /// <summary>What forbids without a rule now; null where nothing does.</summary>
    public Reason? BarrierAfter { get; init; }

    /// <summary>The prohibitions that do not count here now because another rule sets them aside, and did count or were not set aside before.</summary>
    public IReadOnlyList<SetAside> SetAside { get; init; } = [];

    /// <summary>Whether the strength of the agent was written in another unit before, so that nothing can be compared with it.</summary>
    public bool IsInAnotherUnit { get; init; }

    /// <summary>The rules that decided before somewhere in the box.</summary>
    public required IReadOnlyList<RuleId> DecidedBefore { get; init; }

    /// <summary>The rules that decide now somewhere in the box.</summary>
    public required IReadOnlyList<RuleId> DecidedAfter { get; init; }

    /// <summary>The least evidence before, anywhere in the box.</summary>
    public required EvidenceWeight EvidenceBefore { get; init; }

    /// <summary>The least evidence now, anywhere in the box.</summary>
    public required EvidenceWeight EvidenceAfter { get; init; }

    /// <summary>The duties that nothing meets any more.</summary>
    public IReadOnlyList<Duty> DutiesDropped { get; init; } = [];

    /// <summary>The duties that nothing met before.</summary>
    public IReadOnlyList<Duty> DutiesAdded { get; init; } = [];

    /// <summary>A question at a point of the box, on the part alone.</summary>
    public required Question Question { get; init; }

    /// <summary>What kind of step it is, the most dangerous first.</summary>
    public AnswerStep Step =>
        To < Verdict.AllowedWithinLimits ? (From == Verdict.NotAllowed && To == Verdict.NotEstablished ? AnswerStep.NoLongerForbidden : AnswerStep.Other)
        : From >= Verdict.AllowedWithinLimits ? AnswerStep.Other : From == Verdict.NotAllowed && !IsNewSubject && !IsNewAgent ? AnswerStep.ForbiddenToPermitted
            : AnswerStep.NewlyPermitted;

    /// <summary>How large the box is; only for putting the widest first.</summary>
    public required double Size { get; init; }
}
