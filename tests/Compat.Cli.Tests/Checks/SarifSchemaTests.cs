using Json.Schema;

namespace Compat.Cli.Tests.Checks;

/// <summary>The SARIF output against the published schema of version 2.1.0, as a package of its publisher carries it; used by the tests only.</summary>
public sealed class SarifSchemaTests
{
    private static readonly JsonSchema Published = JsonSchema.FromText(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "sarif-2.1.0.json")));
    private static readonly EvaluationOptions Strict = new() { RequireFormatValidation = true, OutputFormat = OutputFormat.List };

    [Theory]
    [MemberData(nameof(FaultFoldersTests.Folders), MemberType = typeof(FaultFoldersTests))]
    public void Every_kind_of_fault_is_written_as_the_schema_says(string name)
    {
        using var folder = new FaultFolder(name);
        var sarif = folder.Check("--format", "sarif", "--verbose").Output;
        Assert.Equal("", Refusals(sarif));
    }

    [Fact]
    public void What_the_schema_forbids_it_refuses()
    {
        using var folder = new FaultFolder("contradiction");
        var sarif = folder.Check("--format", "sarif").Output;
        string[] broken =
        [
            sarif.Replace("utf16CodeUnits", "letters", StringComparison.Ordinal),
            sarif.Replace("\"level\": \"error\"", "\"level\": \"bad\"", StringComparison.Ordinal),
            sarif.Replace("\"startLine\": 1,", "\"startLine\": 0,", StringComparison.Ordinal),
            sarif.Replace("\"relatedLocations\"", "\"otherLocations\"", StringComparison.Ordinal),
            sarif.Replace("\"name\": \"compat check\",", "", StringComparison.Ordinal),
            sarif.Replace("\"2.1.0\"", "\"2.0.0\"", StringComparison.Ordinal),
        ];
        Assert.All(broken, one => Assert.True(one != sarif && Refusals(one).Length > 0));
    }

    internal static string Refusals(string sarif)
    {
        using var document = System.Text.Json.JsonDocument.Parse(sarif);
        var result = Published.Evaluate(document.RootElement, Strict);
        return result.IsValid ? ""
            : string.Join("\n", (result.Details ?? []).Where(one => one.Errors is not null)
            .Select(one => $"{one.InstanceLocation}: {string.Join(", ", one.Errors!.Values)}").Append("refused"));
    }
}
