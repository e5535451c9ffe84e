using Compat.Curation.Checking;

namespace Compat.Curation.Reviewing;

/// <summary>A box of cells in which two knowledge bases answer differently, the same throughout.</summary>
internal sealed record CellChange(ApplicationMethod Method, CellBox Cells, CellAnswer Before, CellAnswer After)
{
    /// <summary>The rules that hold here and tell the two sides apart.</summary>
    public IReadOnlyList<RuleId> Telling { get; init; } = [];

    /// <summary>The edits that each alone make a change here; empty where only several together do.</summary>
    public IReadOnlyList<RecordEdit> Causes { get; init; } = [];

    /// <summary>Whether two answers differ in anything that a change can be.</summary>
    public static bool Differ(CellAnswer one, CellAnswer other) =>
        one.Verdict != other.Verdict || EvidenceDiffers(one, other) || (one.Prevents is not null && other.Prevents is not null && one.Prevents != other.Prevents)
        || DutyComparison.NotMet(one.Duties, other.Duties).Any() || DutyComparison.NotMet(other.Duties, one.Duties).Any();

    /// <summary>What the change is, by its most dangerous side.</summary>
    public ChangeKind Kind
    {
        get
        {
            if (After.Verdict > Before.Verdict) return ChangeKind.Loosened;
            if (After.IsAllowed && DutyComparison.NotMet(Before.Duties, After.Duties).Any()) return ChangeKind.DutiesDropped;
            if (Before.IsAllowed && !After.IsAllowed) return ChangeKind.Tightened;
            if (After.Verdict < Before.Verdict) return After.IsAllowed ? ChangeKind.EvidenceWeakened : ChangeKind.Tightened;
            if (After.Prevents < Before.Prevents) return ChangeKind.PreventsLess;
            if (EvidenceDiffers(Before, After) && After.Evidence < Before.Evidence) return ChangeKind.EvidenceWeakened;
            if (DutyComparison.NotMet(After.Duties, Before.Duties).Any() || After.Prevents > Before.Prevents) return ChangeKind.Tightened;
            return ChangeKind.EvidenceStrengthened;
        }
    }

    /// <summary>Whether the same is known better or worse. What a part does not stand, or its instructions do not list, is known by no source.</summary>
    private static bool EvidenceDiffers(CellAnswer one, CellAnswer other) => one.Evidence != other.Evidence && one.Barrier is null && other.Barrier is null;
}
