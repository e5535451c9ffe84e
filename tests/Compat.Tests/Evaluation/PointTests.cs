using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class PointTests
{
    [Fact]
    public void EveryFullyStatedQuestionIsAnsweredAsTheReferenceAnswersIt() => RandomRun.ForAll(Shape.Point, c =>
    {
        var expected = new ReferenceEvaluator(c.Data, c.Sites, c.Question).Region();
        var answer = c.Build().Ask(c.Question);
        Assert.True(expected == answer.Verdict, $"reference {expected}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });

    [Fact]
    public void OneUseIsAnsweredByTheStepTheReferenceNames() => RandomRun.ForAll(Shape.Point, c =>
    {
        var question = c.Question with { Uses = 1 };
        var expected = new ReferenceEvaluator(c.Data, c.Sites, question).Point();
        var answer = c.Build().Ask(question);
        Assert.True(
            expected.Verdict == Plainly(answer.Verdict),
            $"reference {expected.Verdict} by step {expected.Step}, engine {answer.Verdict}, {answer.Decisive.Code}");
    }, share: 2);

    /// <summary>Allowed, with or without limits.</summary>
    internal static Verdict Plainly(Verdict verdict) => verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : verdict;
}
