using System.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Writing;
using Compat.Curation.Yaml;
using Compat.Tests.RandomCases;
using Compat.Tests.Validation;
using FsCheck.Xunit;

namespace Compat.Curation.Tests;

/// <summary>What is written is read back as the same records.</summary>
public sealed class KnowledgeTextTests
{
    [Fact]
    public void The_shipped_data_survives()
    {
        var data = DataFolder.Read(Repository.PathOf("data")).Data;
        var files = KnowledgeText.WriteFiles(data);
        var read = DataFolder.Read(files.ToDictionary(file => file.Key, file => Encoding.UTF8.GetBytes(file.Value)), "");
        Assert.Equal("", DiagnosticText.Render(read.Diagnostics));
        Assert.Equal(files, KnowledgeText.WriteFiles(read.Data));
        Assert.Equal(KnowledgeText.Write(data), KnowledgeText.Write(read.Data));
        Assert.Equal(data.Rules.Select(rule => (rule.Id, rule.When, rule.Allows)), read.Data.Rules.Select(rule => (rule.Id, rule.When, rule.Allows)));
    }

    [Fact]
    public void Every_kind_of_record_survives()
    {
        var whole = Repository.PathOf("tests/Compat.Curation.Tests/Schemas/Whole");
        var given = new Dictionary<string, byte[]>();
        foreach (var folder in new[] { "sources", "materials", "parts", "agents", "organisms", "efficacy", "mixing", "persons", "protection" })
            given[$"{folder}/a.yaml"] = File.ReadAllBytes($"{whole}/{folder}.yaml");
        foreach (
            var file in new[] { "conventions.yaml", "levels.yaml", "test-standards.yaml", "needs.yaml", "instruction-words.yaml", "occasions.yaml",
            "version.yaml" })
            given[file] = File.ReadAllBytes($"{whole}/{file}");
        given["standing.yaml"] = Encoding.UTF8.GetBytes("""
            - { id: a, agent: b, when: { strength: "< 50 % v/v", methods: any }, never-above: cleaned, reason: R }
            - { id: b, agent: b, part: a, patient: newborn, never-allowed: true, reason: R }
            - { id: c, agent: b, bound-by: hard water, reason: R, sources: [a] }
            - { id: d, agent: b, mixing-with: c, reason: R }
            - { id: e, agent: b, mixing-with-soil: urine, reason: R }
            - { id: f, agent: b, part: a, never-allowed: true, reason: R }
            - { id: g, agent: b, material: a, always-with: dry, reason: R }

            """);
        var first = DataFolder.Read(given, "");
        Assert.Equal("", DiagnosticText.Render(first.Diagnostics));
        var files = KnowledgeText.WriteFiles(first.Data);
        // What is on record as harmless where two meet is written to a file of its own.
        Assert.Equal(given.Count + 1, files.Count);
        var again = DataFolder.Read(files.ToDictionary(file => file.Key, file => Encoding.UTF8.GetBytes(file.Value)), "");
        Assert.Equal("", DiagnosticText.Render(again.Diagnostics));
        Assert.Equivalent(first.Data, again.Data, strict: true);
    }

    [Fact]
    public void A_site_survives()
    {
        var data = DataFolder.Read(Repository.PathOf("data")).Data;
        string[] paths =
            [.. Directory.EnumerateFiles(Repository.PathOf("data/demo"), "*.yaml"), Repository.PathOf("tests/Compat.Curation.Tests/Schemas/Whole/site.yaml")];
        foreach (var path in paths)
        {
            var site = SiteFile.Read(path, data).Site!;
            var text = KnowledgeText.Write(site, data);
            var read = SiteFile.Read(Encoding.UTF8.GetBytes(text), "site.yaml", data);
            Assert.Equal("", DiagnosticText.Render(read.Diagnostics));
            Assert.Equal(text, KnowledgeText.Write(read.Site!, data));
            Assert.Equivalent(site, read.Site, strict: true);
            Assert.Equal(site.Rules.Select(rule => rule.When), read.Site!.Rules.Select(rule => rule.When));
            Assert.Equal(
                site.Devices.SelectMany(device => device.Instructions)
                .SelectMany(edition => edition.Serials), read.Site.Devices.SelectMany(device => device.Instructions).SelectMany(edition => edition.Serials));
        }
    }

    public static TheoryData<string> Spoilt => [.. SpoiltSites.All.Keys];

    /// <summary>Whoever makes a site in code is told no less than whoever writes it down.</summary>
    [Theory]
    [MemberData(nameof(Spoilt))]
    public void A_site_refused_in_code_is_refused_as_a_file_too(string name)
    {
        Assert.Empty(KnowledgeBase.TryBuild(EveryKind.Data, out var kb));
        Assert.NotEmpty(kb!.TryWith(SpoiltSites.All[name].Site, out _));
        var text = KnowledgeText.Write(SpoiltSites.All[name].Site, EveryKind.Data);
        var read = SiteFile.Read(Encoding.UTF8.GetBytes(text), "site.yaml", EveryKind.Data);
        Assert.True(read.Diagnostics.Count > 0 || kb.TryWith(read.Site!, out _).Count > 0, text);
    }

    [Property(MaxTest = 500)]
    public bool A_text_that_is_written_is_read_back_where_all_of_it_is_seen(string text)
    {
        if (string.IsNullOrEmpty(text) || text.Any(char.IsSurrogate)) return true;
        var source = new SourceText("f", "a: " + RecordText.Quoted(text) + "\n");
        var faults = new DiagnosticList(source);
        var map = YamlReader.Read(faults) as YamlMapping;
        if (Compat.Validation.HiddenText.Find(text, out _) >= 0) return faults.Found is [{ Code: "character" }];
        return map?.Find("a")!.Value is YamlScalar scalar && scalar.Text == text && faults.Found.Count == 0;
    }
}
