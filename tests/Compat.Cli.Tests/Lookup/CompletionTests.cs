namespace Compat.Cli.Tests.Lookup;

public sealed class CompletionTests
{
    [Theory]
    [InlineData("bath", "ba")]
    [InlineData("site", "si")]
    [InlineData("add-product", "site", "add")]
    [InlineData("--strength", "ask", "--st")]
    [InlineData("display-coated", "ask", "--part", "display-c")]
    [InlineData("isopropanol", "ask", "--part", "display-coated", "--agent", "isop")]
    [InlineData("damp-wipe", "ask", "--method", "")]
    [InlineData("clostridioides-difficile", "ask", "--against", "clost")]
    [InlineData("organisms", "list", "org")]
    [InlineData("bash", "completions", "")]
    public void Complete_GivesWhatMayStandNext(string expected, params string[] words)
    {
        var run = CliRun.Of(["complete", .. words]);
        Assert.Equal(0, run.Code);
        var found = run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Contains(expected, found);
        Assert.All(found, word => Assert.StartsWith(words[^1], word, StringComparison.Ordinal));
    }

    [Fact]
    public void Complete_IdsOfASite_AreThoseOfTheFileOnTheLine() =>
        Assert.Contains("peroxide-wipe\n", CliRun.Of("complete", "ask", "--site", Repository.Demo, "--product", "pero").Output, StringComparison.Ordinal);

    [Fact]
    public void Complete_SiteThatCannotBeRead_SaysNothing()
    {
        var run = CliRun.Of("complete", "ask", "--site", "nothing-there.yaml", "--agent", "etha");
        Assert.Equal("", run.Notes);
        Assert.Contains("ethanol\n", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bash", "complete -F _compat compat")]
    [InlineData("zsh", "#compdef compat")]
    [InlineData("pwsh", "Register-ArgumentCompleter")]
    public void Script_AsksTheProgram(string shell, string line)
    {
        var run = CliRun.Of("completions", shell);
        Assert.Equal(0, run.Code);
        Assert.Contains(line, run.Output, StringComparison.Ordinal);
        Assert.Contains("compat complete ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Script_OfAnotherShell_IsBadInput() =>
        Assert.Contains("there is no script for `fish`", CliRun.Of("completions", "fish").FlatNotes, StringComparison.Ordinal);
}
