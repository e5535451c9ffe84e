using System.Text;

namespace Compat.Curation.Tests.Yaml;

/// <summary>The slips of a hand that writes YAML are told in the words of all other faults, with what to do: none in those of the scanner.</summary>
public sealed class ScannerWordTests
{
    [Theory]
    [InlineData("- id: a\n  name: Supplier guides: clear\n")]
    [InlineData("- id: a\n  name: b\n   note: c\n")]
    [InlineData("- id: a\n   name: b\n  note: c\n")]
    [InlineData("- id: a\n  name: \"b\n- id: c\n  name: d\n")]
    [InlineData("- id: a\n  name: 'b\n- id: c\n  name: d\n")]
    [InlineData("- id: a\n  name: b\nid: c\n")]
    [InlineData("- id: a\n  name: \"b\" c\n")]
    [InlineData("- id: a\n  also-called: [b, c\n  note: d\n")]
    [InlineData("- { id: a, name: b\n- { id: c, name: d }\n")]
    [InlineData("- id: a\n  name: \"\\ud800\"\n")]
    [InlineData("- id: a\n  name: \"\\UFFFFFFFF\"\n")]
    [InlineData("- id: a\n  name: \"\\q\"\n")]
    [InlineData("- id: a\n  name: @b\n")]
    [InlineData("- id: a\n  name: %b\n")]
    [InlineData("- id: a\n  name: `b`\n")]
    [InlineData("- id: a\n  name: b\n...\nc\n")]
    [InlineData("- id: a\n  - b\n")]
    [InlineData("- id: a\n  name\n  note: c\n")]
    public void Slip_IsToldInPlainWordsWithHelp(string text)
    {
        var fault = DataFolder.Read(new Dictionary<string, byte[]> { ["materials/x.yaml"] = Encoding.UTF8.GetBytes(text) }, "").Diagnostics[0];
        Assert.DoesNotMatch("(?i)while (scanning|parsing)|did not find|expected <|surrogate|indicator|block mapping|plain scalar", fault.Message);
        Assert.False(string.IsNullOrEmpty(fault.Help), fault.Message);
    }

    [Theory]
    [InlineData("1:50", "dilution")]
    [InlineData("70", "unit")]
    [InlineData("<= 70", "unit")]
    public void Strength_WrittenAsSomethingElse_SaysAllThatIsToBeDone(string strength, string said)
    {
        var files = new Dictionary<string, byte[]>
        {
            ["agents/a.yaml"] = "- { id: any-agent, name: any }\n- { id: alcohol, name: alcohol, under: any-agent, basis: '% v/v' }\n"u8.ToArray(),
            ["rules/x.yaml"] =
                Encoding.UTF8.GetBytes($"- {{ id: a, part: p, agent: alcohol, when: {{ strength: \"{strength}\" }}, verdict: not-allowed, damage: {{ "
                    + $"mechanism: crazing, onset: first-use, lasting: true, consequence: looks }}, why: w, sources: [s], reviewed: 2026-11-25 }}\n"),
        };
        var fault = Assert.Single(DataFolder.Read(files, "").Diagnostics);
        Assert.Contains(said, fault.Message + fault.Help, StringComparison.Ordinal);
        Assert.DoesNotContain("minutes and seconds", fault.Help, StringComparison.Ordinal);
    }
}
