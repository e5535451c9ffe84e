using Compat.Curation.Checking;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The check against a general-purpose constraint solver, which knows nothing of boxes.</summary>
public class SolverTests
{
    [Fact]
    public void Contradictions_dead_and_redundant_rules_and_broken_standing_rules_are_those_a_solver_finds()
    {
        var kinds = new HashSet<FindingKind>();
        RandomData.ForAll(500, random => kinds.UnionWith(Compared(random.Data).Findings.Select(finding => finding.Kind)));
        Assert.Superset(new HashSet<FindingKind> { FindingKind.Contradiction, FindingKind.DeadRule, FindingKind.RedundantRule, FindingKind.BrokenStandingRule }, kinds);
    }

    private static readonly CheckOptions Options = new() { Today = new CalendarDate(2026, 11, 25) };

    /// <summary>The report of a check, held against what the solver says.</summary>
    private static CheckReport Compared(KnowledgeData data)
    {
        var solved = Solve(data);
        var report = DataCheck.Run(data, [], Options, out var problems);
        Assert.Empty(problems);
        Assert.Equal(solved.Contradictions.Order(), Of(report!, FindingKind.Contradiction).Select(f => $"{f.Involved[0].Place.Id} {f.Involved[1].Place.Id}").Order());
        Assert.Equal(solved.Broken.Order(), Of(report!, FindingKind.BrokenStandingRule).Select(f => f.Involved[^1].Place.Id).Distinct().Order());
        Assert.Equal(solved.Dead.Order(), First(report!, FindingKind.DeadRule));
        Assert.Equal(solved.Redundant.Order(), First(report!, FindingKind.RedundantRule));
        return report!;
    }

    private static SolverCheck Solve(KnowledgeData data)
    {
        var trees = new ReferenceTrees(data, []);
        return new(data, rule => NaiveCheck.Evidence(data, rule), (allowed, forbids) => !NaiveCheck.StrictlyBelow(trees, forbids, allowed));
    }

    private static IEnumerable<string> First(CheckReport report, FindingKind kind) => Of(report, kind).Select(f => f.Involved[0].Place.Id).Order();

    private static IEnumerable<Finding> Of(CheckReport report, FindingKind kind) => report.Findings.Where(finding => finding.Kind == kind);
}
