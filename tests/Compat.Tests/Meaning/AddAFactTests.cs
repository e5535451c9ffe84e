using System.Text;
using Compat.Curation;
using Compat.Curation.Diagnostics;
using Compat.Tests.Shipped;

namespace Compat.Tests.Meaning;

/// <summary>The examples of DEVELOPERS.md, one of each kind of record, read and checked with the shipped data.</summary>
public sealed class AddAFactTests
{
    private static readonly string[] Kinds =
    [
        "sources", "materials", "parts", "agents", "rules", "organisms", "efficacy", "test-standards", "needs", "mixing", "persons", "protection", "standing",
        "instruction-words", "occasions", "patterns", "levels", "conventions", "site",
    ];

    private static IReadOnlyList<Block> Examples { get; } = MeaningPages.BlocksOf(File.ReadAllLines(RepositoryFile.Of("DEVELOPERS.md")))
        .Where(block => block.Info.StartsWith("yaml ", StringComparison.Ordinal)).ToArray();

    [Fact]
    public void Examples_OneOfEachKind_AreThere() => Assert.Equal(Kinds.Order(StringComparer.Ordinal), Examples.Select(Kind).Order(StringComparer.Ordinal));

    [Fact]
    public void Examples_LaidOverTheShippedData_AreAccepted()
    {
        var folder = RepositoryFile.Of("data");
        var files = Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories)
            .ToDictionary(path => Path.GetRelativePath(folder, path).Replace('\\', '/'), File.ReadAllText);
        foreach (var example in Examples.Where(example => Kind(example) != "site"))
        {
            var text = string.Join('\n', example.Lines) + "\n";
            var file = Kind(example) + ".yaml";
            if (!files.TryGetValue(file, out var all)) files[$"{Kind(example)}/example.yaml"] = text;
            else files[file] = Kind(example) is "levels" or "conventions" ? Replaced(all, text) : all + text;
        }

        var read = DataFolder.Read(files.ToDictionary(one => one.Key, one => Encoding.UTF8.GetBytes(one.Value)), "data");
        Assert.True(read.Diagnostics.Count == 0, DiagnosticText.Render(read.Diagnostics));
        var problems = KnowledgeBase.TryBuild(read.Data, out var built);
        Assert.True(built is not null, string.Join("\n", problems));
        var site = SiteFile.Read(Encoding.UTF8.GetBytes(string.Join('\n', Examples.Single(one => Kind(one) == "site").Lines)), "site", read.Data);
        Assert.True(site.Diagnostics.Count == 0, DiagnosticText.Render(site.Diagnostics));
        Assert.Empty(built.TryWith(site.Site!, out _));
    }

    private static string Kind(Block block) => block.Info["yaml ".Length..];

    /// <summary>A file with the record of an example in the place of the one of the same id.</summary>
    private static string Replaced(string all, string record)
    {
        var records = all.Split("\n- ").ToList();
        var at = records.FindIndex(one => one.Split('\n')[0] == record.Split('\n')[0][2..]);
        records[at] = record[2..].TrimEnd('\n');
        return string.Join("\n- ", records) + (all.EndsWith('\n') && at == records.Count - 1 ? "\n" : "");
    }
}
