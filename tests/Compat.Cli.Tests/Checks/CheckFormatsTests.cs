using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

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
        var text = Repository.Read("schemas", "check.schema.json");
        using var document = JsonDocument.Parse(run.Output);
        Assert.True(JsonSchema.FromText(text).Evaluate(document.RootElement).IsValid, run.Output);
        Assert.Empty((await NJsonSchema.JsonSchema.FromJsonAsync(text)).Validate(run.Output).Select(error => error.ToString()));
        Assert.NotEmpty((await NJsonSchema.JsonSchema.FromJsonAsync(text)).Validate(run.Output.Replace("\"kind\": \"", "\"kind\": \"x", StringComparison.Ordinal)));
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
