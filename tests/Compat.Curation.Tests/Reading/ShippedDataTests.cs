using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;

namespace Compat.Curation.Tests.Reading;

public sealed class ShippedDataTests
{
    private static readonly string Data = Repository.PathOf("data");

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Data, "*.yaml", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/'))
            .Order(StringComparer.Ordinal)];

    [Fact]
    public void The_data_is_read_without_a_diagnostic()
    {
        var read = DataFolder.Read(Data);
        Assert.Equal("", DiagnosticText.Render(read.Diagnostics));
        Assert.NotEmpty(read.Data.Rules);
    }

    [Fact]
    public void The_sites_of_the_demo_are_read_without_a_diagnostic()
    {
        var data = DataFolder.Read(Data).Data;
        foreach (var path in Directory.EnumerateFiles(Path.Combine(Data, "demo"), "*.yaml"))
            Assert.Equal("", DiagnosticText.Render(SiteFile.Read(path, data).Diagnostics));
    }

    [Fact]
    public void The_data_and_the_demo_make_a_knowledge_base()
    {
        var sites = Directory.EnumerateFiles(Path.Combine(Data, "demo"), "*.yaml").Order(StringComparer.Ordinal).ToArray();
        var loaded = DataFolder.Load(Data, sites);
        Assert.Equal("", DiagnosticText.Render(loaded.Diagnostics));
        Assert.NotNull(loaded.KnowledgeBase);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_file_names_its_schema_for_editors(string file)
    {
        var line = File.ReadLines(Repository.PathOf(file)).First();
        const string Modeline = "# yaml-language-server: $schema=";
        Assert.StartsWith(Modeline, line, StringComparison.Ordinal);
        var schema = Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Repository.PathOf(file))!, line[Modeline.Length..]));
        Assert.True(File.Exists(schema), schema);
        var steps = file.Split('/');
        var kind = steps[1] == "demo" ? "site" : steps.Length == 2 ? Path.GetFileNameWithoutExtension(file) : steps[1];
        Assert.Contains(kind, Words.All<FileKind>());
        Assert.Equal(kind + ".schema.json", Path.GetFileName(schema));
    }
}
