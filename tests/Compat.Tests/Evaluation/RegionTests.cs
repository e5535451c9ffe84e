using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class RegionTests
{
    [Fact]
    public void EveryRegionIsAnsweredAsTheReferenceAnswersIt() => RandomRun.ForAll(Shape.Region, c =>
    {
        var expected = PointTests.Plainly(new ReferenceEvaluator(c.Data, c.Sites, c.Question).Region());
        var answer = c.Build().Ask(c.Question);
        Assert.True(expected == PointTests.Plainly(answer.Verdict), $"reference {expected}, engine {answer.Verdict}, {answer.Decisive.Code}");
    });

    [Fact]
    public void WhatWasAssumedOrNotSaidIsALimit() => RandomRun.ForAll(Shape.Region, c =>
    {
        var answer = c.Build().Ask(c.Question);
        if (answer.Verdict < Verdict.AllowedWithinLimits) return;
        var expected = new ReferenceEvaluator(c.Data, c.Sites, c.Question).Region();
        Assert.True(expected == answer.Verdict, $"reference {expected}, engine {answer.Verdict}, limits {string.Join("; ", answer.Limits.Select(l => l.Code + " " + string.Join(" ", l.Arguments)))}");
    });
}
