using System.Text.Json.Nodes;

namespace Compat.Cli.Tests.Checks;

/// <summary>What the check writes for machines.</summary>
public sealed class CheckFormatsTests
{
    [Theory]
    [InlineData("contradiction")]
    [InlineData("thin-evidence")]
    [InlineData("instructions")]
    public async Task Json_IsAsTheSchemaSays(string name)
    {
        using var folder = new FaultFolder(name);
        var run = folder.Check("--format", "json", "--verbose");
        Assert.Equal("", await SchemaFiles.Refusals("check", run.Output));
        Assert.NotEqual("", await SchemaFiles.Refusals("check", run.Output.Replace("\"kind\": \"", "\"kind\": \"x", StringComparison.Ordinal)));
    }

    [Fact]
    public void Sarif_HasARegionForEveryRuleAndAFingerprintThatSurvivesMovedLines()
    {
        using var folder = new FaultFolder("contradiction");
        var before = Result(folder);
        Assert.Equal("contradiction", before["ruleId"]!.GetValue<string>());
        Assert.NotNull(before["locations"]![0]!["physicalLocation"]!["region"]);
        Assert.NotNull(before["relatedLocations"]![0]!["physicalLocation"]!["region"]);
        var file = System.IO.Path.Combine(folder.Path, "rules", "rules.yaml");
        File.WriteAllText(file, "# moved\n\n" + File.ReadAllText(file));
        var after = Result(folder);
        Assert.NotEqual(before["locations"]!.ToJsonString(), after["locations"]!.ToJsonString());
        Assert.Equal(before["partialFingerprints"]!.ToJsonString(), after["partialFingerprints"]!.ToJsonString());
    }

    [Fact]
    public void Github_WritesOneLineForEachRecordInvolved()
    {
        using var folder = new FaultFolder("contradiction");
        var lines = folder.Check("--format", "github").Output.TrimEnd('\n').Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("::error file=data/rules/rules.yaml,line=1,endLine=1,col=7,endColumn=21,title=contradiction::", lines[0], StringComparison.Ordinal);
        Assert.Contains("%0Aask: compat ask", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("::notice file=data/rules/rules.yaml,line=11,", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Unreadable_IsWrittenInEveryFormatWithPlaceAndHelp()
    {
        using var folder = new FaultFolder("contradiction");
        File.WriteAllText(System.IO.Path.Combine(folder.Path, "rules", "more.yaml"), "- id: a\n  why: x\n  why: y\n");
        File.WriteAllText(System.IO.Path.Combine(folder.Path, "rules", "No Name.yaml"), "[]");
        var json = folder.Check("--format", "json");
        Assert.Equal(2, json.Code);
        Assert.Contains("data/rules/more.yaml:3:3: error: the key `why` is written twice", json.Notes, StringComparison.Ordinal);
        Assert.Equal("", await SchemaFiles.Refusals("check", json.Output));
        var unreadable = JsonNode.Parse(json.Output)!["unreadable"]!.AsArray();
        Assert.False(JsonNode.Parse(json.Output)!["clean"]!.GetValue<bool>());
        var twice = Assert.Single(unreadable, one => one!["code"]!.GetValue<string>() == "duplicate-key")!;
        Assert.Equal(("data/rules/more.yaml", 3, 3, "keep one of the two", 2),
            (twice["file"]!.GetValue<string>(), twice["line"]!.GetValue<int>(), twice["column"]!.GetValue<int>(), twice["help"]!.GetValue<string>(),
                twice["other"]!["line"]!.GetValue<int>()));

        var run = folder.Check("--format", "sarif");
        Assert.Equal(2, run.Code);
        Assert.Equal("", SarifSchemaTests.Refusals(run.Output));
        var sarif = JsonNode.Parse(run.Output)!["runs"]![0]!;
        Assert.Equal(unreadable.Count, sarif["results"]!.AsArray().Count);
        Assert.False(sarif["invocations"]![0]!["executionSuccessful"]!.GetValue<bool>());
        var result = Assert.Single(sarif["results"]!.AsArray(), one => one!["ruleId"]!.GetValue<string>() == "unreadable/duplicate-key")!;
        Assert.Equal(("error", "unreadable", 3, "data/rules/more.yaml"), (
            result["level"]!.GetValue<string>(),
            sarif["tool"]!["driver"]!["rules"]![result["ruleIndex"]!.GetValue<int>()]!["id"]!.GetValue<string>(),
            result["locations"]![0]!["physicalLocation"]!["region"]!["startLine"]!.GetValue<int>(),
            result["locations"]![0]!["physicalLocation"]!["artifactLocation"]!["uri"]!.GetValue<string>().Replace("file://", "", StringComparison.Ordinal)));
        Assert.Contains("keep one of the two", result["message"]!["text"]!.GetValue<string>(), StringComparison.Ordinal);

        var github = folder.Check("--format", "github");
        Assert.Equal(2, github.Code);
        Assert.Equal(unreadable.Count, github.Output.TrimEnd('\n').Split('\n').Length);
        Assert.Contains("::error file=data/rules/more.yaml,line=3,endLine=3,col=3,endColumn=6,title=unreadable%3A duplicate-key::the key `why` is written "
            + "twice%0Ahelp: keep one of the two\n", github.Output, StringComparison.Ordinal);
        Assert.Contains("::error file=data/rules/No Name.yaml,title=unreadable%3A file-name::", github.Output, StringComparison.Ordinal);
    }

    private static JsonNode Result(FaultFolder folder)
    {
        var sarif = JsonNode.Parse(folder.Check("--format", "sarif").Output)!;
        Assert.Equal("2.1.0", sarif["version"]!.GetValue<string>());
        var run = sarif["runs"]![0]!;
        Assert.Equal("utf16CodeUnits", run["columnKind"]!.GetValue<string>());
        Assert.All(run["tool"]!["driver"]!["rules"]!.AsArray(), rule => Assert.NotEmpty(rule!["help"]!["text"]!.GetValue<string>()));
        var result = run["results"]![0]!;
        Assert.Equal(result["ruleId"]!.GetValue<string>(), run["tool"]!["driver"]!["rules"]![result["ruleIndex"]!.GetValue<int>()]!["id"]!.GetValue<string>());
        return result;
    }
}
