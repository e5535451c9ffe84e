namespace Compat.Curation.Reviewing;

/// <summary>How well what decides is known; each better than the one before.</summary>
public enum EvidenceWeight
{
    /// <summary>Common practice, a source of no standing, or nothing.</summary>
    Practice,

    /// <summary>A figure that was recalled and not read.</summary>
    Recalled,

    /// <summary>A publication of which a copy was read.</summary>
    Copy,

    /// <summary>A source that was read at its publisher.</summary>
    Read,
}

/// <summary>A rule that another sets aside.</summary>
/// <param name="Rule">The rule that does not count.</param>
/// <param name="By">The rule that overrides it.</param>
public sealed record SetAside(RuleId Rule, RuleId By);

/// <summary>What is answered at every point of a box where every axis is stated.</summary>
public sealed record CellAnswer
{
    /// <summary>The verdict. Within limits: the part stands it, but something keeps the answer from a plain 'allowed' (weak evidence, a silent source).</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The rules that decide; empty where none does: a barrier, or nothing on record.</summary>
    public IReadOnlyList<RuleId> DecidedBy { get; init; } = [];

    /// <summary>The duties that go with a use; empty where it is not allowed.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>What forbids without a rule: the part does not stand the method, or its instructions list other things only; null where rules decide.</summary>
    public Reason? Barrier { get; init; }

    /// <summary>The prohibitions that do not count because another rule sets them aside.</summary>
    public IReadOnlyList<SetAside> SetAside { get; init; } = [];

    /// <summary>How well it is known. Of a permission the weakest voice counts, of a prohibition the best rule; an exception is known no better than the rule that makes it.</summary>
    public EvidenceWeight Evidence { get; init; }

    /// <summary>The worst that a 'not allowed' prevents; null where no rule decides.</summary>
    public Consequence? Prevents { get; init; }

    /// <summary>Whether the use is permitted, with limits or without.</summary>
    public bool IsAllowed => Verdict >= Verdict.AllowedWithinLimits;
}
