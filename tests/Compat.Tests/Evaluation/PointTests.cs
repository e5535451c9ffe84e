using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class PointTests
{
    [Fact]
    public void EveryFullyStatedQuestionIsAnsweredAsTheReferenceAnswersIt() => RandomRun.ForAll(Shape.Point, c =>
    {
        var expected = ReferenceEvaluator.Region(c.Data, c.Sites, c.Question);
        var answer = c.Build().Ask(c.Question);
        Assert.True(expected.Verdict == answer.Verdict, $"reference {expected.Verdict}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });

    [Fact]
    public void OneUseIsAnsweredByTheStepTheReferenceNames() => RandomRun.ForAll(Shape.Point, c =>
    {
        var question = c.Question with { Uses = 1 };
        var expected = ReferenceEvaluator.Point(c.Data, c.Sites, question);
        var answer = c.Build().Ask(question);
        Assert.True(expected.Verdict == Plainly(answer.Verdict), $"reference {expected.Verdict} by step {expected.Step}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });

    [Fact]
    public void NearlyAllRandomCasesAreValidAsMade()
    {
        var refused = new List<string>();
        for (var seed = 0; seed < 500; seed++)
        {
            var made = CaseMaker.Make(seed, Shape.Region);
            if (made.Build(out var problems) is null) refused.Add(string.Join("\n", problems));
        }

        Assert.True(refused.Count <= 25, $"{refused.Count} of 500 refused\n" + string.Join("\n", refused.SelectMany(r => r.Split('\n')).Take(20)));
    }

    /// <summary>Allowed, with or without limits.</summary>
    internal static Verdict Plainly(Verdict verdict) => verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : verdict;
}
