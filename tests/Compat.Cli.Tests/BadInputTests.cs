namespace Compat.Cli.Tests;

public sealed class BadInputTests
{
    [Fact]
    public void Ask_ManyMistakes_AreAllReportedAtOnce()
    {
        var run = CliRun.Of("ask", "--part", "dispay-coated", "--agent", "isopropanl", "--strength", "70 %", "--method", "wipe", "--ph", "20", "--uses", "0",
            "--act", "brsh", "--serial", "?", "--only", "kill", "--nonsense");
        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Output);
        foreach (var text in new[]
        {
            "--part: ", "did you mean `display-coated`", "did you mean `isopropanol`", "`%` does not say of what", "`wipe` is not known here",
            "`20` reaches outside of what pH can be", "`0` is no number of uses", "did you mean `brush`", "`?` is no serial number",
            "`kill` cannot be asked alone", "unknown option `--nonsense`",
        })
            Assert.Contains(text, run.FlatNotes, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no part, device or material is named", "ask", "--agent", "ethanol")]
    [InlineData("no agent or product is named", "ask", "--part", "display-coated")]
    [InlineData("an agent and a product exclude each other", "ask", "--part", "display-coated", "--agent", "ethanol", "--product", "none")]
    [InlineData("`--part` needs a value", "ask", "--agent", "ethanol", "--part")]
    [InlineData("`--part` is given more than once", "ask", "--agent", "ethanol", "--part", "socket", "--part", "keypad-membrane")]
    [InlineData("`1:50` is read two ways", "ask", "--part", "socket", "--product", "none", "--dilution", "1:50")]
    [InlineData("`--exposure-time` and `--contact-time` are both given", "ask", "--part", "socket", "--agent", "ethanol", "--exposure-time", "1 min",
        "--contact-time", "1 min")]
    [InlineData("error: unknown option `--residence`, it is called `--exposure-time` now", "ask", "--part", "socket", "--agent", "ethanol", "--residence",
        "1 min")]
    [InlineData("error: unknown option `--contact=1 min`, it is called `--contact-time` now", "ask", "--part", "socket", "--agent", "ethanol",
        "--contact=1 min")]
    [InlineData("time without a unit", "ask", "--part", "socket", "--agent", "ethanol", "--contact-time", "2")]
    [InlineData("exposure time without a unit", "ask", "--part", "socket", "--agent", "ethanol", "--exposure-time", "2")]
    [InlineData("did you mean `display-coated`", "ask", "--part", "Display Coated", "--agent", "ethanol")]
    [InlineData("unknown command `aks`", "aks")]
    [InlineData("did you mean `ask`?", "aks")]
    [InlineData("there is no list of `partz`", "list", "partz")]
    [InlineData("its check digit does not hold", "find", "67-63-1")]
    [InlineData("no agent or product is named", "map", "--part", "socket")]
    [InlineData("`--replace` needs OLD NEW", "shelf", "--replace", "peroxide-wipe")]
    [InlineData("`list` needs parts|materials|agents|organisms|tests|products|devices", "list")]
    public void Call_ThatIsWrong_SaysSoAndGivesTwo(string text, params string[] args)
    {
        var run = CliRun.Of(args);
        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains(text, run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void Option_ThatWasRenamed_IsRefusedWithoutItsValue()
    {
        var run = CliRun.Of("ask", "--part", "socket", "--agent", "ethanol", "--contact", "1 min");
        Assert.Equal((2, "error: unknown option `--contact`, it is called `--contact-time` now\n"), (run.Code, run.Notes));
    }

    [Theory]
    [InlineData("--data", "no-such-folder")]
    [InlineData("--site", "no-such-file.yaml")]
    public void Data_ThatIsNotThere_IsBadInput(string option, string path)
    {
        var run = CliRun.Of("list", "parts", option, path);
        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains(path, run.Notes, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_NothingFound_GivesOneAndANote()
    {
        var run = CliRun.Of("find", "qqqqqqqqqqqq");
        Assert.Equal(1, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("nothing is called `qqqqqqqqqqqq`", run.FlatNotes, StringComparison.Ordinal);
    }
}
