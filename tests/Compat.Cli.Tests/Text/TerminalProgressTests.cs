
namespace Compat.Cli.Tests.Text;

/// <summary>Progress is seen on a terminal only, and is gone when the run ends.</summary>
public sealed class TerminalProgressTests
{
    [Fact]
    public void OnATerminal_EachStepTakesThePlaceOfTheOneBefore_AndNothingStays()
    {
        using var stderr = new StringWriter();
        using (var progress = new TerminalProgress(stderr, isTerminal: true, "asking", TimeSpan.Zero))
        {
            progress.Step("a part");
            Assert.Equal("asking a part …", stderr.ToString());
            progress.Step("b");
            Assert.Equal("asking a part …\r               \rasking b …", stderr.ToString());
        }

        Assert.EndsWith("\r          \r", stderr.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', stderr.ToString());
    }

    [Fact]
    public void Counts_ThatComeFast_ArePassedOver()
    {
        using var stderr = new StringWriter();
        using var progress = new TerminalProgress(stderr, isTerminal: true, "asking", TimeSpan.Zero);
        Parallel.For(1, 5_001, i => progress.Count(i, 5_000));
        Assert.Contains(" of 5000 …", stderr.ToString(), StringComparison.Ordinal);
        Assert.InRange(stderr.ToString().Split('…').Length, 2, 100);
    }

    [Theory]
    [InlineData(false, 0)]
    [InlineData(true, 60)]
    public void InAPipe_OrInAShortRun_NothingIsWritten(bool isTerminal, int patience)
    {
        using var stderr = new StringWriter();
        using (var progress = new TerminalProgress(stderr, isTerminal, "asking", TimeSpan.FromSeconds(patience)))
        {
            progress.Step("a part");
            progress.Count(1, 2);
        }

        Assert.Equal("", stderr.ToString());
    }

    [Fact]
    public void Shelf_WithProgress_CountsEveryQuestionOnce()
    {
        var kb = Curation.SiteFile.LayOver(KnowledgeBase.Shipped, Repository.Demo).KnowledgeBase!;
        var counted = new System.Collections.Concurrent.ConcurrentBag<(int Done, int All)>();
        Planning.Shelf.Of(kb, (done, all) => counted.Add((done, all)));
        Assert.Equal(Enumerable.Range(1, counted.First().All), counted.Select(one => one.Done).Order());
    }
}
