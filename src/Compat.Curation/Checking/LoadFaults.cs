using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Faults of meaning that loading finds already; they do not keep the rest from being checked.</summary>
internal static class LoadFaults
{
    private static readonly Dictionary<string, FindingKind> Kinds = new()
    {
        ["override-misses"] = FindingKind.OverrideMisses,
        ["override-cycle"] = FindingKind.OverrideCycle,
        ["override-reach"] = FindingKind.OverrideReach,
        ["overrides-instructions"] = FindingKind.OverridesInstructions,
        ["breaks-standing-rule"] = FindingKind.BrokenStandingRule,
        ["exceeds-test"] = FindingKind.ThinEvidence,
        ["rests-on-absence"] = FindingKind.ThinEvidence,
        ["mark-too-weak"] = FindingKind.ThinEvidence,
    };

    /// <summary>Whether a problem is one of them.</summary>
    public static bool IsOne(Problem problem) => Kinds.ContainsKey(problem.Code);

    /// <summary>The problem as a finding.</summary>
    public static Finding Of(Problem problem) => new()
    {
        Kind = Kinds[problem.Code],
        IsFault = true,
        Message = problem.Message,
        Involved = [new(problem.Place, "stands here")],
        Help = problem.Help,
    };
}
