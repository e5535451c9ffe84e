using Compat.Curation.Checking;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The check against a general-purpose constraint solver, which knows nothing of boxes.</summary>
public class SolverTests
{
    [Fact]
    public void Contradictions_dead_and_redundant_rules_and_broken_standing_rules_are_those_a_solver_finds()
    {
        var kinds = new HashSet<FindingKind>();
        RandomData.ForAll(200, random => kinds.UnionWith(SolverComparison.Of(random.Data).Findings.Select(finding => finding.Kind)));
        Assert.Superset(SolverComparison.Kinds, kinds);
    }
}
