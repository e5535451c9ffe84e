namespace Compat.Cli.Tests.Text;

public sealed class LetterTests
{
    [Fact]
    public void Letter_AsksForTheMissingStatementWithoutNames()
    {
        var run = CliRun.Of("ask", "--letter", "--device", "slit-lamp", "--part", "lamp-housing", "--product", "large-white-wipe", "--method", "damp-wipe",
            "--exposure-time", "1 min", "--uses", "1000", "--site", Repository.Demo);
        Assert.Equal(4, run.Code);
        Assert.StartsWith("To the maker of the equipment, and to the maker of the liquid\n", run.Output, StringComparison.Ordinal);
        foreach (
            var stated in new[] { "ethanol: 20..30 % w/w", "the whole wipe, cloth included", "method: damp wipe", "1 min", "1000",
            "temperature: for you to state", "its full composition with figures" })
            Assert.Contains(stated, run.Flat, StringComparison.Ordinal);
        foreach (var name in new[] { "large-white", "large white wipe", "slit lamp", "slit-lamp", "clinic" })
            Assert.DoesNotContain(name, run.Output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Letter_OfABareAgent_AsksByMaterial()
    {
        var run = CliRun.Of("ask", "--letter", "--material", "polyurethane-integral-skin", "--agent", "chlorhexidine");
        Assert.Equal(4, run.Code);
        Assert.Contains("of this part stand it?", run.Flat, StringComparison.Ordinal);
        Assert.Contains("strength: for you to state", run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void Letter_WhereNothingIsMissing_IsNotWritten()
    {
        var run = CliRun.Of("ask", "--letter", "--part", "display-coated", "--agent", "isopropanol", "--strength", "70 % v/v");
        Assert.Equal(1, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("no statement is missing", run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void Letter_OfADevice_IsOneForEachPartThatLacksIt()
    {
        var run = CliRun.Of("ask", "--letter", "--device", "slit-lamp", "--product", "large-white-wipe", "--method", "damp-wipe", "--site", Repository.Demo);
        Assert.True(run.Output.Split("To the maker of").Length > 2, run.Output);
    }
}
