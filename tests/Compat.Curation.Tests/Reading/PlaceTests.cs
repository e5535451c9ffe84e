using System.Text;
using Compat.Validation;

namespace Compat.Curation.Tests.Reading;

/// <summary>What is wrong in meaning is shown where it is written.</summary>
public sealed class PlaceTests
{
    private const string Rules =
        "- id: a.b\n  part: p\n  agent: any-agent\n  when: { ph: '> 9' }\n  verdict: not-allowed\n"
            + "  damage: { mechanism: crazing, onset: first-use, lasting: true, consequence: looks }\n  overrides: [x.y, x.z]\n  why: w\n  sources: [s]\n"
            + "  reviewed: 2026-11-25\n";

    private static ReadResult Read() => DataFolder.Read(new Dictionary<string, byte[]> { ["rules/r.yaml"] = Encoding.UTF8.GetBytes(Rules + Rules) }, "");

    [Theory]
    [InlineData("", 0, "a.b", 1)]
    [InlineData("part", 0, "p", 2)]
    [InlineData("when", 0, "when", 4)]
    [InlineData("when.ph", 0, "'> 9'", 4)]
    [InlineData("when.strength", 0, "when", 4)]
    [InlineData("overrides.1", 0, "x.z", 7)]
    [InlineData("overrides.9", 0, "overrides", 7)]
    [InlineData("known-by", 0, "a.b", 1)]
    [InlineData("part", 1, "p", 12)]
    [InlineData("part", 7, "p", 12)]
    public void A_field_is_found(string field, int occurrence, string expected, int line)
    {
        var place = Read().Places.Find(new(RecordKind.Rule, "a.b", field, occurrence))!;
        Assert.Equal(expected, place.Source.Excerpt(place.Span));
        Assert.Equal(line, place.Position.Line);
    }

    [Fact]
    public void A_record_that_is_nowhere_has_no_place() => Assert.Null(Read().Places.Find(new(RecordKind.Rule, "x.y")));

    [Fact]
    public void What_the_check_of_the_meaning_finds_points_into_the_file()
    {
        var loaded = LoadShippedWith("- id: zz-odd\n  name: odd\n  under: no-such-thing\n");
        Assert.Null(loaded.KnowledgeBase);
        var one = Assert.Single(loaded.Diagnostics);
        Assert.Contains("no-such-thing", one.Message, StringComparison.Ordinal);
        Assert.EndsWith("materials/zz.yaml", one.File, StringComparison.Ordinal);
        Assert.Equal((3, 10), (one.Place!.Position.Line, one.Place.Position.Column));
    }

    [Fact]
    public void Faults_of_form_and_of_meaning_are_reported_in_one_run_each_once()
    {
        var loaded =
            LoadShippedWith("- { id: zz-odd, name: odd, under: no-such-thing }\n- { id: zz-two, name: two, under: zz-odd, delicate: coatin }\n"
                + "- { id: zz-three, name: three, under: zz-two }\n");
        Assert.Equal(new[] { 1, 2 }, loaded.Diagnostics.Select(one => one.Place!.Position.Line));
    }

    private static ReadResult LoadShippedWith(string materials)
    {
        var folder = Directory.CreateTempSubdirectory("compat-test-");
        try
        {
            foreach (var path in Directory.EnumerateFiles(Repository.PathOf("data"), "*.yaml", SearchOption.AllDirectories))
            {
                var to = Path.Combine(folder.FullName, Path.GetRelativePath(Repository.PathOf("data"), path));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(path, to);
            }

            File.WriteAllText(Path.Combine(folder.FullName, "materials", "zz.yaml"), materials);
            return DataFolder.Load(folder.FullName);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
