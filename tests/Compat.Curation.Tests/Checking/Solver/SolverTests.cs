using Compat.Curation.Checking;
using Compat.Knowledge;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The check against a general-purpose constraint solver, which knows nothing of boxes.</summary>
public class SolverTests
{
    [Fact]
    public void Contradictions_dead_and_redundant_rules_and_broken_standing_rules_are_those_a_solver_finds() => RandomData.ForAll(500, random =>
    {
        var solved = new SolverCheck(random.Data, rule => NaiveCheck.Evidence(random.Data, rule), (allowed, forbids) => !NaiveCheck.StrictlyBelow(new ReferenceTrees(random.Data, []), forbids, allowed));
        var report = DataCheck.Run(random.Data, [], new CheckOptions { Today = new CalendarDate(2026, 11, 25) }, out _)!;
        Assert.Equal(solved.Contradictions.Order(), Of(report, FindingKind.Contradiction).Select(f => $"{f.Involved[0].Place.Id} {f.Involved[1].Place.Id}").Order());
        Assert.Equal(solved.Broken.Order(), Of(report, FindingKind.BrokenStandingRule).Select(f => f.Involved[^1].Place.Id).Distinct().Order());
        Assert.Equal(solved.Dead.Order(), Of(report, FindingKind.DeadRule).Select(f => f.Involved[0].Place.Id).Order());
        Assert.Equal(solved.Redundant.Order(), Of(report, FindingKind.RedundantRule).Select(f => f.Involved[0].Place.Id).Order());
    });

    private static IEnumerable<Finding> Of(CheckReport report, FindingKind kind) => report.Findings.Where(finding => finding.Kind == kind);
}
