using Compat.Curation.Checking;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The check of the shipped data, whole, against the solver: as it is, and with faults put into it.</summary>
public class ShippedSolverTests
{
    private static readonly KnowledgeData Data = DataFolder.Read(Repository.PathOf("data")).Data;

    /// <summary>What says `keep: second-source` repeats another indeed.</summary>
    [Fact]
    public void The_shipped_data_checks_as_a_solver_says()
    {
        var report = SolverComparison.Of(Data with { Rules = Data.Rules.Select(rule => rule with { IsSecondSource = false }).ToArray() });
        Assert.Empty(report.Faults);
        Assert.Subset(
            report.Findings.Where(finding => finding.Kind == FindingKind.RedundantRule).Select(finding => finding.Involved[0].Place.Id).ToHashSet(),
            Data.Rules.Where(rule => rule.IsSecondSource).Select(rule => rule.Id.Value).ToHashSet());
    }

    /// <summary>No rule is an exception any more, and every fifth standing rule has a permission against it.</summary>
    [Fact]
    public void So_it_does_with_faults_in_it()
    {
        var trees = new ReferenceTrees(Data, []);
        var against = Data.StandingRules.Where(standing => standing.SpeaksOfRules).Where((_, i) => i % 5 == 0).Select(standing => new Rule
        {
            Id = new("against." + standing.Id),
            Target = standing.Part is { } part ? RuleTarget.On(part) : RuleTarget.On(standing.Material!),
            Agent = standing.Agent,
            WholeClass = true,
            Allows = true,
            When = new()
            {
                Strength = trees.Basis(standing.Agent) is null ? default : AxisLimit.Any,
                ExposureTime = AxisLimit.Any,
                Temperature = AxisLimit.Any,
                Ph = AxisLimit.Any,
                Uses = AxisLimit.Any,
                Methods = MethodLimit.Any,
            },
            KnownBy = KnownBy.Practice,
            Why = "put in",
            Sources = [Data.Sources[0].Id],
            Reviewed = new(2026, 1, 1),
        });
        var report = SolverComparison.Of(Data with
        {
            Rules = [.. Data.Rules.Select(rule => rule with { IsSecondSource = false, Overrides = [] }), .. against],
        });
        Assert.Superset(SolverComparison.Kinds, report.Findings.Select(finding => finding.Kind).ToHashSet());
    }
}
