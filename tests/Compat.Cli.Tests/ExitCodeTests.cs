namespace Compat.Cli.Tests;

public sealed class ExitCodeTests
{
    [Fact]
    public void Of_OneAnswer_IsTheVerdict()
    {
        Assert.Equal(1, ExitCode.Of(Made(Verdict.NotAllowed)));
        Assert.Equal(4, ExitCode.Of(Made(Verdict.NotEstablished)));
        Assert.Equal(3, ExitCode.Of(Made(Verdict.AllowedWithinLimits)));
        Assert.Equal(0, ExitCode.Of(Made(Verdict.Allowed)));
    }

    [Fact]
    public void Of_AllowedThatIsNotAsAsked_IsWithinLimits()
    {
        Assert.Equal(3, ExitCode.Of(Made(Verdict.Allowed) with { WellFounded = false }));
        Assert.Equal(3, ExitCode.Of(Made(Verdict.Allowed) with { Question = new Question() }));
    }

    [Fact]
    public void Of_SeveralParts_NotAllowedWinsThenNotEstablishedThenLimits()
    {
        var (no, unknown, limits, yes) = (Made(Verdict.NotAllowed), Made(Verdict.NotEstablished), Made(Verdict.AllowedWithinLimits), Made(Verdict.Allowed));
        Assert.Equal(1, ExitCode.Of([yes, limits, unknown, no]));
        Assert.Equal(4, ExitCode.Of([yes, limits, unknown]));
        Assert.Equal(3, ExitCode.Of([yes, limits]));
        Assert.Equal(0, ExitCode.Of([yes, yes]));
    }

    [Fact]
    public void Of_NoPartThatNeedsAnything_IsNoPermission() => Assert.Equal(4, ExitCode.Of([]));

    private static Answer Made(Verdict verdict) => new()
    {
        Question = new Question { Part = PartType.Root, Agent = AgentClass.Root, OnlyPart = true },
        Verdict = verdict,
        PartVerdict = verdict,
        Decisive = new Reason(ReasonCode.MaterialsAllow, []),
        WellFounded = true,
        Identity = [],
    };
}
