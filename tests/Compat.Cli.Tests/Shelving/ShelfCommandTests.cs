
namespace Compat.Cli.Tests.Shelving;

public sealed class ShelfCommandTests
{
    [Fact]
    public void Shelf_OfTheDemo_HasUnservedPartsOnTopAndTheCautions()
    {
        var run = CliRun.Of("shelf", "--site", Repository.Demo);
        Assert.Equal(1, run.Code);
        var first = run.Output.Split('\n')[0];
        Assert.True(run.Output.IndexOf("no product serves it", StringComparison.Ordinal) < run.Output.IndexOf("does it", StringComparison.Ordinal), first);
        Assert.Contains("refused by instructions", run.Flat, StringComparison.Ordinal);
        Assert.Contains("Never mix agents.", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Fact]
    public void Shelf_AsMarkdownAndCsv_HasARowForEachPartAndAColumnForEachProduct()
    {
        var csv = CliRun.Of("shelf", "--site", Repository.Demo, "--format", "csv").Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        var markdown = CliRun.Of("shelf", "--site", Repository.Demo, "--format", "markdown").Output.Split('\n').Where(line => line.StartsWith('|')).ToArray();
        Assert.Equal(csv.Length + 1, markdown.Length);
        var columns = csv[0].Split("\",\"").Length;
        Assert.All(csv, line => Assert.Equal(columns, line.Split("\",\"").Length));
        Assert.Contains("\"peroxide-wipe\"", csv[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=1+1", "\"\t=1+1\"")]
    [InlineData("+x", "\"\t+x\"")]
    [InlineData("-x", "\"\t-x\"")]
    [InlineData("@x", "\"\t@x\"")]
    [InlineData("a \"b\", c", "\"a \"\"b\"\", c\"")]
    [InlineData("plain", "\"plain\"")]
    public void Csv_WhatLooksLikeAFormula_StartsWithATab(string text, string cell) => Assert.Equal(cell, ShelfTable.Quoted(text));

    [Fact]
    public void Replace_SaysWhatIsLostAndWhatTakesLonger()
    {
        var run = CliRun.Of("shelf", "--site", Repository.Demo, "--replace", "plain-quat-wipe", "peroxide-wipe");
        Assert.Equal(1, run.Code);
        foreach (
            var heading in new[] { "Lost:", "Refused:", "On the label", "Must stay wet longer", "New duties", "Staff: new protection", "At the change",
            "Uses go on counting", "Gained" })
            Assert.Contains(heading, run.Flat, StringComparison.Ordinal);
        Assert.Contains("highest level claimed: low before, intermediate now", run.Flat, StringComparison.Ordinal);
        Assert.Contains("no longer claimed: fungi", run.Flat, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("there is no product `peroxide-wip`", "--replace", "peroxide-wip", "grey-tub-wipe")]
    [InlineData("there is no format `html`", "--format", "html")]
    [InlineData("a replacement is written as text or JSON", "--format", "csv", "--replace", "peroxide-wipe", "grey-tub-wipe")]
    public void Shelf_BadInput_SaysSo(string message, params string[] options)
    {
        var run = CliRun.Of(["shelf", "--site", Repository.Demo, .. options]);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void Shelf_WithoutSite_SaysThatThereAreNoProducts() =>
        Assert.Contains("there are no products", CliRun.Of("shelf").FlatNotes, StringComparison.Ordinal);
}
