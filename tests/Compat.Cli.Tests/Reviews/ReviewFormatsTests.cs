namespace Compat.Cli.Tests.Reviews;

/// <summary>What the review writes for machines and forges.</summary>
public sealed class ReviewFormatsTests
{
    [Theory]
    [MemberData(nameof(ScriptedEditsTests.Names), MemberType = typeof(ScriptedEditsTests))]
    public async Task Json_IsAsTheSchemaSays(string name)
    {
        using var folder = new EditFolder(name);
        var run = folder.Review("--format", "json");
        Assert.Equal("", await SchemaFiles.Refusals("review", run.Output));
        Assert.NotEqual("", await SchemaFiles.Refusals("review", run.Output.Replace("\"action\": \"", "\"action\": \"x", StringComparison.Ordinal)));
    }

    [Fact]
    public void Text_HasTheLineOfTheEditAndAQuestionThatCanBeTyped()
    {
        using var folder = new EditFolder("boundary-moved");
        var output = folder.Review().Output;
        Assert.StartsWith("head/rules/rules.yaml:15:21: loosened: rule `housing.propanol` changed\n", output, StringComparison.Ordinal);
        Assert.Contains("^^^^^^^^^^^", output, StringComparison.Ordinal);
        var ask = output.Split('\n').First(line => line.Contains("ask: compat ", StringComparison.Ordinal)).Split("ask: compat ")[1];
        var words = ask.Split('"').SelectMany((piece, i) => i % 2 == 1 ? [piece] : piece.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToArray();
        int Code(string side) => CliRun.Of(words.Select(word => word == "head" ? side : word).ToArray()).Code;
        Assert.Equal((1, 3), (Code(folder.Base), Code(folder.Head)));
        Assert.True(folder.Review("--verbose").Output.Split("ask: compat ").Length > 20);
    }

    private const int Many = 250;

    [Fact]
    public void AComment_OfAnySizeFitsAndCountsWhatIsLeftOut()
    {
        using var folder = new EditFolder();
        var rules = Path.Combine(folder.Head, "rules", "rules.yaml");
        var like = File.ReadAllText(rules);
        var start = like.IndexOf("- id: display.soap", StringComparison.Ordinal);
        var one = like[start..like.IndexOf("- id: steel.chlorine", StringComparison.Ordinal)];
        File.AppendAllText(
            rules, string.Concat(
                Enumerable.Range(1, Many)
                .Select(i => one.Replace("display.soap", $"display.soap-{i}", StringComparison.Ordinal)
                .Replace("<= 1 % w/w", $"{1 + (i / 10m)}..{1.05m + (i / 10m)} % w/w", StringComparison.Ordinal))));
        var output = folder.Review("--format", "markdown").Output;
        Assert.InRange(output.Length, 40_000, 65_536);
        Assert.Contains("Left out here:", output, StringComparison.Ordinal);
        var headings = output.Split("\n### ").Length - 1;
        Assert.Contains($"**Left out here: {Many - headings} edits with {Many - headings} boxes", output, StringComparison.Ordinal);
        Assert.Equal(0, (output.Split("```").Length - 1) % 2);
    }

    [Theory]
    [InlineData("a | b", "a \\| b")]
    [InlineData("`x|y` and <b>", "`x\\|y` and &lt;b>")]
    [InlineData("@someone #12 *b* _i_ [l](u)", "@<!-- -->someone #<!-- -->12 \\*b\\* \\_i\\_ \\[l\\](u)")]
    [InlineData("a\nb ` c", "a b \\` c")]
    [InlineData("https://x", "https:&#47;/x")]
    public void AText_IsShownAsItStands(string text, string shown) => Assert.Equal(shown, Markdown.Text(text));

    /// <summary>A forge undoes entities before it looks for names, so only what stands between the sign and the name helps.</summary>
    [Theory]
    [InlineData("@team")]
    [InlineData("ask @team/all, (@some-one) or @a.")]
    [InlineData("&#64;team &commat;team &#x40;team")]
    [InlineData("a@team b@@team **@team** _@team_")]
    [InlineData("#1 org/name#12 &#35;1")]
    [InlineData("`code` @team `@open")]
    [InlineData("<!-- -->@team<!-- --> \\@team")]
    public void Markdown_CallsNobodyByName(string text)
    {
        foreach (var shown in new[] { Markdown.Text(text), Markdown.Plain(text), Markdown.Text("see " + text) })
        {
            var words = System.Net.WebUtility.HtmlDecode(System.Text.RegularExpressions.Regex.Replace(shown, "(`+).*?\\1", ""));
            Assert.DoesNotMatch("[@#][A-Za-z0-9]", words);
        }
    }

    [Theory]
    [InlineData("a`b", "``a`b``")]
    [InlineData("`a", "`` `a ``")]
    public void Code_HasAFenceLongerThanAnyInIt(string text, string shown) => Assert.Equal(shown, Markdown.Code(text));

    [Fact]
    public void WhatTheDataSays_CannotBreakATable()
    {
        using var folder = new EditFolder();
        folder.Replace("rules/rules.yaml", "look-for: fine cracks", "look-for: \"</details> | @team ``` **now**\"");
        var output = folder.Review("--format", "markdown").Output;
        Assert.Equal(output.Split("<details>").Length, output.Split("\n</details>\n").Length);
        Assert.DoesNotContain(output.Split('\n'), line => line.Contains("@team", StringComparison.Ordinal) && !line.Contains('`', StringComparison.Ordinal));
        foreach (var row in output.Split('\n').Where(line => line.StartsWith('|')))
            Assert.Equal(5, row.Replace("\\|", "", StringComparison.Ordinal).Split('|').Length - 1);
    }
}
