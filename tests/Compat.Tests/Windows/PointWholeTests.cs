using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Windows;

/// <summary>The whole answer of the engine against the slow reference, on random cases.</summary>
public sealed class PointWholeTests
{
    [Fact]
    public void TheWholeVerdictAtAStatedPointIsTheReferences() => RandomRun.ForAll(Shape.WholePoint, c =>
    {
        if (!c.Question.JudgesKillAndPeople) return;
        var reference = new ReferenceWhole(c.Data, c.Sites, c.Question);
        var expected = reference.AtStatedPoint(Stated(c.Question));
        var answer = c.Build().Ask(c.Question);
        var got = answer.Verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : answer.Verdict;
        Assert.True(
            expected == got,
            $"reference {expected}, engine {answer.Verdict}: part {answer.PartVerdict}, kill {answer.Kill!.Verdict} ({answer.Kill.Reasons[0].Code}), people "
                + $"{answer.People?.Verdict}\n{c}");
    }, share: 5);

    private static WholePoint Stated(Question q) =>
        new(q.Method!.Value, q.Dilution?.Lower ?? 1, q.ExposureTime!.Value, q.Temperature!.Value, q.Ph, q.Uses!.Value, 1);
}
