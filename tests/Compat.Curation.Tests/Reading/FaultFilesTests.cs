using System.Text;
using Compat.Curation.Diagnostics;

namespace Compat.Curation.Tests.Reading;

/// <summary>
/// Each faulty file in Faults/ gives exactly the text beside it. The first line names the file it stands for, in a small folder or beside the shipped data.
/// </summary>
/// <remarks>Setting COMPAT_ACCEPT to 1 writes the texts anew.</remarks>
public sealed class FaultFilesTests
{
    private static readonly string Folder = Repository.PathOf("tests/Compat.Curation.Tests/Faults");

    /// <summary>What stands behind the name of a file that is faulty in its meaning: the shipped data is what it speaks of.</summary>
    private const string Beside = " beside the shipped data";

    public static TheoryData<string> Names =>
        [.. Directory.EnumerateFiles(Folder, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void It_is_reported_exactly_so(string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder, name + ".yaml"));
        var stands = text.Split('\n')[0].Replace("# as ", "", StringComparison.Ordinal).Trim();
        var shown = DiagnosticText.Render(Read(stands, text));
        var expected = Path.Combine(Folder, name + ".expected");
        if (Environment.GetEnvironmentVariable("COMPAT_ACCEPT") == "1") File.WriteAllText(expected, shown);
        Assert.Equal(File.ReadAllText(expected), shown);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_underlined_stands_in_the_file(string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder, name + ".yaml"));
        foreach (var one in Read(text.Split('\n')[0].Replace("# as ", "", StringComparison.Ordinal).Trim(), text))
        {
            var place = Assert.IsType<SourcePlace>(one.Place);
            var excerpt = place.Source.Excerpt(place.Span);
            var line = text.Split('\n')[place.Position.Line - 1];
            Assert.StartsWith(excerpt.Split('\n')[0], line[(place.Position.Column - 1)..], StringComparison.Ordinal);
        }
    }

    private static IReadOnlyList<Diagnostic> Read(string stands, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        if (stands.EndsWith(Beside, StringComparison.Ordinal)) return LoadBesideTheShipped(bytes, stands[..^Beside.Length]);
        var agents =
            ("- { id: any-agent, name: any }\n- { id: alcohol, name: alcohol, under: any-agent, basis: '% v/v' }\n"u8
                + "- { id: isopropanol, name: isopropanol, under: alcohol }\n- { id: detergent, name: detergent, under: any-agent }\n"u8).ToArray();
        var files = new Dictionary<string, byte[]> { ["agents/base.yaml"] = agents };
        if (stands == "site.yaml") return SiteFile.Read(bytes, stands, DataFolder.Read(files, "").Data).Diagnostics;
        files[stands] = bytes;
        return DataFolder.Read(files, "").Diagnostics;
    }

    private static IReadOnlyList<Diagnostic> LoadBesideTheShipped(byte[] bytes, string name)
    {
        var data = Repository.PathOf("data");
        var files = Directory.EnumerateFiles(data, "*.yaml", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(data, path).Replace('\\', '/'))
            .Where(path => !path.StartsWith("demo/", StringComparison.Ordinal)).ToDictionary(path => path, path => File.ReadAllBytes(Path.Combine(data, path)));
        files[name] = bytes;
        return KnowledgeLoader.Build(DataFolder.Read(files, ""), "", []).Diagnostics;
    }
}
