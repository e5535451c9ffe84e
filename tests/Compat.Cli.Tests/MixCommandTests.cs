namespace Compat.Cli.Tests;

/// <summary>What <c>compat mix</c> returns to a script, and what strengths change.</summary>
public sealed class MixCommandTests
{
    [Theory]
    [InlineData(1, "sodium-hypochlorite", "citric-acid")]
    [InlineData(1, "chlorhexidine", "soap")]
    [InlineData(1, "hydrogen-peroxide", "isopropanol")]
    [InlineData(1, "hydrogen-peroxide", "isopropanol", "--strength", "8 % w/w")]
    [InlineData(1, "isopropanol", "hydrogen-peroxide", "--other-strength", "7..9 % w/w")]
    [InlineData(4, "hydrogen-peroxide", "isopropanol", "--strength", "0.5 % w/w")]
    [InlineData(4, "coupling-gel", "defoamer")]
    [InlineData(0, "isopropanol", "benzalkonium-chloride")]
    [InlineData(0, "benzalkonium-chloride", "isopropanol", "--other-strength", "70 % v/v")]
    public void ExitCode_TwoAgents_SaysHazardHarmlessOrNobodyKnows(int code, params string[] asked) => Assert.Equal(code, CliRun.Of(["mix", .. asked]).Code);

    [Fact]
    public void Text_StrengthOutsideTheRecord_IsANote()
    {
        var run = CliRun.Of("mix", "hydrogen-peroxide", "isopropanol", "--strength", "0.5 % w/w");
        Assert.Contains("Only at other strengths than these", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Never together", run.Output, StringComparison.Ordinal);
        Assert.Contains("nobody knows", run.Flat, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--strength", "strong", "mix", "hydrogen-peroxide", "isopropanol")]
    [InlineData("--strength", "3 % w/w", "mix", "blood", "isopropanol")]
    [InlineData("--other-strength", "200 % v/v", "mix", "hydrogen-peroxide", "isopropanol")]
    public void Strength_ThatCannotBe_IsBadInput(string option, string figure, params string[] asked)
    {
        var run = CliRun.Of([.. asked, option, figure]);
        Assert.Equal((2, ""), (run.Code, run.Output));
    }

    [Fact]
    public void Help_Mix_SaysTheExitCodes() =>
        Assert.Contains("Exit code 1: a hazard; 4: nothing is on record", CliRun.Of("mix", "--help").Flat, StringComparison.Ordinal);
}
