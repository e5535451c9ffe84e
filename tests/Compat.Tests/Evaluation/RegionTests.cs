using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class RegionTests
{
    [Fact]
    public void EveryRegionIsAnsweredAsTheReferenceAnswersIt() => RandomRun.ForAll(Shape.Region, c =>
    {
        var expected = ReferenceEvaluator.Region(c.Data, c.Sites, c.Question);
        var answer = c.Build().Ask(c.Question);
        Assert.True(expected.Verdict == answer.Verdict, $"reference {expected.Verdict}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });
}
