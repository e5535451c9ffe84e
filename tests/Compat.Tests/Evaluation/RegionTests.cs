using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class RegionTests
{
    /// <summary>Whether it is within limits too: what was assumed or not said is a limit.</summary>
    [Fact]
    public void Region_OfRandomBases_IsAnsweredAsTheReferenceAnswersIt() => RandomRun.ForAll(Shape.Region, c =>
    {
        var expected = new ReferenceEvaluator(c.Data, c.Sites, c.Question).Region();
        var answer = c.Build().Ask(c.Question);
        var limits = string.Join("; ", answer.Limits.Select(l => l.Code + " " + string.Join(" ", l.Arguments)));
        Assert.True(expected == answer.Verdict, $"reference {expected}, engine {answer.Verdict}, {answer.Decisive.Code}, limits {limits}");
    });
}
