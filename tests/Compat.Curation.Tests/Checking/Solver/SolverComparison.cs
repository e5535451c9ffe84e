using Compat.Curation.Checking;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The report of a check, held against what the solver says.</summary>
internal static class SolverComparison
{
    private static readonly CheckOptions Options = new() { Today = default };

    /// <summary>What the solver is asked for.</summary>
    public static HashSet<FindingKind> Kinds { get; } =
        [FindingKind.Contradiction, FindingKind.DeadRule, FindingKind.RedundantRule, FindingKind.BrokenStandingRule];

    /// <summary>Checks records both ways. None may be kept as a second source: the solver knows of no purpose.</summary>
    public static CheckReport Of(KnowledgeData data)
    {
        Assert.DoesNotContain(data.Rules, rule => rule.IsSecondSource);
        var report = DataCheck.Run(data, [], Options, out var problems);
        Assert.Empty(problems);
        var trees = new ReferenceTrees(data, []);
        var solved =
            new SolverCheck(data, rule => NaiveCheck.Evidence(data, rule), (allowed, forbids) => !NaiveCheck.StrictlyBelow(trees, [], forbids, allowed));
        Assert.Equal(solved.Contradictions.Order(), Found(FindingKind.Contradiction, f => $"{f.Involved[0].Place.Id} {f.Involved[1].Place.Id}"));
        Assert.Equal(solved.Broken.Order(), Found(FindingKind.BrokenStandingRule, f => f.Involved[^1].Place.Id).Distinct());
        Assert.Equal(solved.Dead.Order(), Found(FindingKind.DeadRule, f => f.Involved[0].Place.Id));
        Assert.Equal(solved.Redundant.Order(), Found(FindingKind.RedundantRule, f => f.Involved[0].Place.Id));
        return report!;

        IEnumerable<string> Found(FindingKind kind, Func<Finding, string> name) => report!.Findings.Where(finding => finding.Kind == kind).Select(name).Order();
    }
}
