using System.Text;
using Compat.Curation.Diagnostics;

namespace Compat.Curation.Tests.Reading;

public sealed class DataFolderTests
{
    [Fact]
    public void A_missing_folder_is_said_to_be_missing() =>
        Assert.Equal("no-such-folder: error: there is no such folder\n\n", DiagnosticText.Render(DataFolder.Load("no-such-folder").Diagnostics));

    [Fact]
    public void A_missing_site_file_is_said_to_be_missing() =>
        Assert.Equal("no-such.yaml: error: there is no such file\n\n", DiagnosticText.Render(SiteFile.Read("no-such.yaml", new()).Diagnostics));

    [Fact]
    public void A_folder_without_data_is_refused()
    {
        var folder = Directory.CreateTempSubdirectory("compat-test-");
        try
        {
            Assert.Equal("the folder holds no data files", Assert.Single(DataFolder.Read(folder.FullName).Diagnostics).Message);
        }
        finally
        {
            folder.Delete();
        }
    }

    [Theory]
    [InlineData("rules/a.yml",
        "rules/a.yml: error: no file in a data folder is called `rules/a.yml`\n"
            + "  help: a name is lower-case letters, digits and hyphens, and ends in `.yaml`: `rules/a.yaml`, or move it out of the folder\n\n")]
    [InlineData("rule/a.yaml", "rule/a.yaml: error: nothing reads this file\n  help: did you mean `rules`?\n\n")]
    [InlineData("convention.yaml", "convention.yaml: error: nothing reads this file\n  help: did you mean `conventions.yaml`?\n\n")]
    [InlineData("demo/a.yaml", "")]
    [InlineData("README.md", "")]
    public void A_data_file_that_nothing_would_read_is_refused(string path, string expected) =>
        Assert.Equal(expected, DiagnosticText.Render(DataFolder.Read(new Dictionary<string, byte[]> { [path] = "[]"u8.ToArray() }, "").Diagnostics));

    [Fact]
    public void The_report_does_not_depend_on_the_order_of_the_files()
    {
        (string, string)[] files = [("rules/b.yaml", "- { id: a }\n"), ("materials/a.yaml", "- { idd: a }\n"), ("parts/a.yaml", "x: 1\n")];
        var forward = DataFolder.Read(files.ToDictionary(file => file.Item1, file => Encoding.UTF8.GetBytes(file.Item2)), "d");
        var backward = DataFolder.Read(files.Reverse().ToDictionary(file => file.Item1, file => Encoding.UTF8.GetBytes(file.Item2)), "d");
        Assert.Equal(DiagnosticText.Render(forward.Diagnostics), DiagnosticText.Render(backward.Diagnostics));
        Assert.Equal(forward.Diagnostics.Select(one => one.File).Order(StringComparer.Ordinal), forward.Diagnostics.Select(one => one.File));
    }

    [Fact]
    public void A_strength_is_kept_in_percent_of_the_basis_of_the_nearest_ancestor_wherever_that_is_written()
    {
        var files = new Dictionary<string, byte[]>
        {
            ["agents/z.yaml"] =
                "- { id: any-agent, name: any }\n- { id: a, name: a, under: any-agent, basis: ppm w/v }\n- { id: b, name: b, under: a }\n"u8.ToArray(),
            ["rules/a.yaml"] =
                ("- { id: r, part: any-part, agent: b, when: { strength: '>= 5 g/L' }, verdict: not-allowed, damage: { mechanism: crazing, onset: first-use, lasting: true, "u8
                    + "consequence: looks }, why: w, sources: [s], reviewed: 2026-11-25 }\n"u8).ToArray(),
        };
        var read = DataFolder.Read(files, "");
        Assert.Equal("", DiagnosticText.Render(read.Diagnostics));
        Assert.Equal(Interval.AtLeast(0.5m), Assert.Single(read.Data.Rules).When.Strength.Range);
    }
}
