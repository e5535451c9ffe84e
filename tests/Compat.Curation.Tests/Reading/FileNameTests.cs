using System.Text;
using Compat.Curation.Diagnostics;

namespace Compat.Curation.Tests.Reading;

/// <summary>Names of data files have one form; whatever else lies in the folder is refused by its name, which can do no harm in the message.</summary>
public sealed class FileNameTests
{
    [Theory]
    [InlineData("materials/high-temperature-plastics (1).yaml", "`materials/high-temperature-plastics-1.yaml`")]
    [InlineData("materials/Zinc.yaml", "`materials/zinc.yaml`")]
    [InlineData("materials/zinc.yml", "`materials/zinc.yaml`")]
    [InlineData("materials/zinc.yaml~", "`materials/zinc.yaml`")]
    [InlineData("materials/.#zinc.yaml", "`materials/zinc.yaml`")]
    [InlineData("materials/zinc_2.yaml", "`materials/zinc-2.yaml`")]
    [InlineData("materials/zinc.bak.yaml", "`materials/zinc.yaml`")]
    [InlineData("materials/Metals/zinc.yaml", "`materials/metals/zinc.yaml`")]
    [InlineData("demo/My Site.yaml", "`demo/my-site.yaml`")]
    [InlineData("notes.txt", "`notes.yaml`")]
    [InlineData("materials/x\n::set-output name=a::b,line=1.yaml", "`materials/x-set-output-name-a-b-line-1.yaml`")]
    [InlineData("::error::x.yaml", "`error-x.yaml`")]
    [InlineData("materials/\u001b[2J.yaml", "`materials/2j.yaml`")]
    [InlineData("materials/a\u202eb.yaml", "`materials/a-b.yaml`")]
    public void Name_OfAnotherForm_IsRefusedWithTheOneToWrite(string path, string offered)
    {
        foreach (var directory in new[] { "d", "." })
        {
            var fault = Assert.Single(
                DataFolder.Read(new Dictionary<string, byte[]> { [path] = "- { id: any-material, name: any }"u8.ToArray() }, directory).Diagnostics);
            Assert.Equal("file-name", fault.Code);
            Assert.Contains(offered, fault.Help, StringComparison.Ordinal);
            var shown = DiagnosticText.Render(fault);
            Assert.Equal(2, shown.Count(c => c == '\n'));
            Assert.DoesNotContain(shown, c => char.IsControl(c) && c != '\n' || c == '\u202e');
            Assert.DoesNotContain(shown.Split('\n'), line => line.TrimStart().StartsWith("::", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Name_ThatIsNoUtf8_IsRefusedAsThat() =>
        Assert.Equal("the name of this file is no UTF-8",
            Assert.Single(DataFolder.Read(new Dictionary<string, byte[]> { ["materials/\uFFFD.yaml"] = [] }, "d").Diagnostics).Message);

    [Fact]
    public void ReadMe_MayStandBesideTheData() =>
        Assert.Empty(
            DataFolder.Read(
                new Dictionary<string, byte[]> { ["README.md"] = [], ["rules/README.md"] = [], ["CHANGELOG.md"] = [], ["demo/a-site.yaml"] = [] },
                "d").Diagnostics);

    /// <summary>
    /// A copy is refused by its name alone: its records are not given twice, and the rules that speak of records in a misnamed file are not called wrong.
    /// </summary>
    [Fact]
    public void File_OfAWrongName_IsNotRead()
    {
        var files = new Dictionary<string, byte[]>
        {
            ["materials/a.yaml"] = "- { id: any-material, name: any }\n"u8.ToArray(),
            ["materials/a (1).yaml"] = "- { id: any-material, name: any }\n- { id: zinc, name: zinc, under: any-material }\n"u8.ToArray(),
            ["parts/a.yaml"] = "- { id: any-part, name: any, materials: [zinc], materials-known: fully }\n"u8.ToArray(),
        };
        Assert.Equal("d/materials/a (1).yaml", Assert.Single(KnowledgeLoader.Build(DataFolder.Read(files, "d"), "d", []).Diagnostics).File);
    }

    [Fact]
    public void Id_GivenTwice_NamesBothPlacesAndStandsAtTheLater()
    {
        var files = new Dictionary<string, byte[]>
        {
            ["materials/a.yaml"] = "- { id: any-material, name: any }\n- { id: zinc, name: zinc, under: any-material }\n"u8.ToArray(),
            ["materials/b.yaml"] = "# more\n- { id: zinc, name: galvanised steel, under: any-material }\n"u8.ToArray(),
        };
        var fault = Assert.Single(KnowledgeLoader.Build(DataFolder.Read(files, "d"), "d", []).Diagnostics, one => one.Code == "duplicate-id");
        Assert.Equal("d/materials/b.yaml:2:9", DiagnosticText.Where(fault.Place!));
        Assert.Equal("d/materials/a.yaml:2:9", DiagnosticText.Where(fault.Related!.Place));
        Assert.Contains("first given here: d/materials/a.yaml:2:9", DiagnosticText.Render(fault), StringComparison.Ordinal);
    }

    /// <summary>A file that breaks off hides the slips of no other: only references to the kind that is missing are not judged.</summary>
    [Fact]
    public void Reference_InAnIntactFile_IsJudgedThoughAnotherFileIsBroken()
    {
        var files = new Dictionary<string, byte[]>
        {
            ["agents/a.yaml"] = "- { id: any-agent, name: any }\n- { id: solvent, name: organic solvents, under: any-agent }\n"u8.ToArray(),
            ["materials/a.yaml"] = "- { id: any-material, name: any }\n"u8.ToArray(),
            ["parts/broken.yaml"] = "- { id: any-part, name: any\n"u8.ToArray(),
            ["rules/a.yaml"] =
                ("- { id: nowhere.solvent, part: nowhere, agent: solvent, verdict: not-allowed, damage: { mechanism: crazing, onset: first-use, lasting: true, "u8
                    + "consequence: looks }, why: w, sources: [s], reviewed: 2026-11-25 }\n"u8).ToArray(),
            ["mixing/a.yaml"] = Mixing("solvant", "any-agent"),
            ["mixing/b.yaml"] = Mixing("organic solvents", "any-agent"),
            ["mixing/c.yaml"] = Mixing("solvent", "lye"),
        };
        var shown = DiagnosticText.Render(KnowledgeLoader.Build(DataFolder.Read(files, "d"), "d", []).Diagnostics);
        Assert.Contains("d/parts/broken.yaml:2:1: error: ", shown, StringComparison.Ordinal);
        Assert.Contains("error: unknown agent `solvant`", shown, StringComparison.Ordinal);
        Assert.Contains("error: `organic solvents` has not the form of `agent`", shown, StringComparison.Ordinal);
        Assert.Equal(2, shown.Split("help: did you mean `solvent`?").Length - 1);
        Assert.Contains("error: unknown agent `lye`", shown, StringComparison.Ordinal);
        Assert.DoesNotContain("unknown part", shown, StringComparison.Ordinal);

        files["agents/broken.yaml"] = "- id: [\n"u8.ToArray();
        Assert.DoesNotContain("unknown agent", DiagnosticText.Render(KnowledgeLoader.Build(DataFolder.Read(files, "d"), "d", []).Diagnostics),
            StringComparison.Ordinal);

        static byte[] Mixing(string agent, string with) => Encoding.UTF8.GetBytes(
            $"- {{ id: {with}.m{agent.Length}, agent: {agent}, with-agent: {with}, effects: [precipitate], severity: avoid, separated-by: [rinse], why: It "
                + $"is invented., sources: [a], reviewed: 2026-11-25 }}\n");
    }

    [Fact]
    public void Flood_OfErrors_IsCountedAndNotShown()
    {
        var many = Enumerable.Range(0, 1000).Select(i => new Diagnostic("x", $"fault {i}", null, "d", null)).ToArray();
        var shown = DiagnosticText.Render(many);
        Assert.Equal(DiagnosticText.MostShown + 1, shown.Split("\n\n", StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.EndsWith("error: 700 errors more are not shown\n\n", shown, StringComparison.Ordinal);
    }
}
