namespace Compat.Cli.Tests;

public sealed class HelpTests
{
    [Theory]
    [InlineData("ask")]
    [InlineData("map")]
    [InlineData("list")]
    [InlineData("find")]
    [InlineData("pack")]
    [InlineData("review")]
    [InlineData("format")]
    [InlineData("site")]
    [InlineData("shelf")]
    [InlineData("dossier")]
    [InlineData("completions")]
    public void Help_OfEveryCommand_ShowsTwoWorkedExamples(string command)
    {
        var run = CliRun.Of(command, "--help");
        Assert.Equal(0, run.Code);
        Assert.Equal("", run.Notes);
        var examples = run.Output[run.Output.IndexOf("\nExamples\n", StringComparison.Ordinal)..];
        Assert.Equal(2, examples.Split("  compat " + command).Length - 1);
    }

    [Theory]
    [InlineData("ask")]
    [InlineData("map")]
    [InlineData("list")]
    [InlineData("find")]
    public void Help_OfEveryCommandThatReadsData_ShowsTheCommonOptions(string command)
    {
        var run = CliRun.Of(command, "--help");
        foreach (var option in new[] { "--data DIR", "--site FILE", "--json", "--help" })
            Assert.Contains("\n  " + option, run.Output, StringComparison.Ordinal);
    }

    /// <summary>A script branches on these: each command says its own, and 2 is bad input in every one.</summary>
    [Theory]
    [InlineData("ask", "0 allowed as asked", "1 not allowed", "3 allowed within limits", "4 not established")]
    [InlineData("map", "0 done")]
    [InlineData("check", "0 no fault", "1 faults")]
    [InlineData("pack", "0 written", "1 faults")]
    [InlineData("bath", "0 use it", "1 discard it")]
    [InlineData("dilute", "0 done")]
    public void Help_ExitCodes_AreThoseOfTheCommand(string command, params string[] codes)
    {
        var output = CliRun.Of(command, "--help").Output;
        var section = output[output.IndexOf("\nExit codes\n", StringComparison.Ordinal)..output.IndexOf("\nExamples\n", StringComparison.Ordinal)];
        Assert.All([.. codes, "2 bad input"], code => Assert.Contains("\n  " + code, section, StringComparison.Ordinal));
        Assert.Equal(codes.Length + 1, section.Split('\n').Count(line => line.Length > 2 && char.IsDigit(line[2])));
    }

    [Fact]
    public void Help_WithoutCommand_ListsTheCommandsAndTwoExamples()
    {
        var run = CliRun.Of("--help");
        foreach (var command in new[] { "ask", "map", "list", "find" })
            Assert.Contains("\n  " + command + " ", run.Output, StringComparison.Ordinal);
        Assert.Equal(2, run.Output.Split("\n  # ").Length - 1);
        Assert.Equal(run.Output, CliRun.Of().Output);
    }

    [Fact]
    public void Help_IsNowhereWiderThanEightyColumns() =>
        Assert.All(
            new[] { "", "ask", "map", "list", "find", "pack", "review", "format", "dossier" }.SelectMany(
                command => CliRun.Of(command.Length == 0 ? ["--help"] : [command, "--help"]).Output.Split('\n')),
            line => Assert.True(line.Length <= 80, line));

    [Fact]
    public void Version_NamesTheProgramAndTheData()
    {
        var run = CliRun.Of("--version");
        Assert.Equal(0, run.Code);
        Assert.Matches(@"^compat \d+\.\d+\.\d+\nshipped, version \S+, content [0-9a-f]{16}\n$", run.Output);
    }
}
