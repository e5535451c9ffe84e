using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class PointTests
{
    [Fact]
    public void EveryFullyStatedQuestionIsAnsweredAsTheReferenceAnswersIt() => RandomRun.ForAll(Shape.Point, c =>
    {
        var expected = ReferenceEvaluator.Region(c.Data, c.Sites, c.Question).Verdict;
        var answer = c.Build().Ask(c.Question);
        Assert.True(expected == answer.Verdict, $"reference {expected}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });

    [Fact]
    public void OneUseIsAnsweredByTheStepTheReferenceNames() => RandomRun.ForAll(Shape.Point, c =>
    {
        var question = c.Question with { Uses = 1 };
        var expected = ReferenceEvaluator.Point(c.Data, c.Sites, question);
        var answer = c.Build().Ask(question);
        Assert.True(expected.Verdict == Plainly(answer.Verdict), $"reference {expected.Verdict} by step {expected.Step}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });

    /// <summary>Allowed, with or without limits.</summary>
    internal static Verdict Plainly(Verdict verdict) => verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : verdict;
}
