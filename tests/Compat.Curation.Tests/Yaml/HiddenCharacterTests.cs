using System.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Recorded;
using Compat.Curation.Yaml;

namespace Compat.Curation.Tests.Yaml;

/// <summary>
/// A hidden character is refused where it stands, whichever way it is written: as it is, as an escape, as a line break of a text of several lines; in every
/// text of every kind of file.
/// </summary>
public sealed class HiddenCharacterTests
{
    public static TheoryData<string> Escapes =>
    [
        "\\0", "\\a", "\\b", "\\t", "\\n", "\\v", "\\f", "\\r", "\\e", "\\N", "\\_", "\\L", "\\P", "\\x07", "\\x7f", "\\x9b", "\\u202e", "\\u2066", "\\u200B",
            "\\u00ad", "\\u2060", "\\u034F", "\\u3164",
        "\\U000E0041", "\\U0000202E",
    ];

    /// <summary>The kinds of file, by one file of the shipped data each.</summary>
    public static TheoryData<string> Files
    {
        get
        {
            var data = Repository.PathOf("data");
            var all = Directory.EnumerateFiles(data, "*.yaml", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(data, path).Replace('\\', '/'))
                .Order(StringComparer.Ordinal);
            return [.. all.GroupBy(path => path.Contains('/', StringComparison.Ordinal) ? path[..path.LastIndexOf('/')] : path).Select(group => group.First())];
        }
    }

    [Theory]
    [MemberData(nameof(Escapes))]
    public void Escape_IsRefusedWhereItStands(string escape)
    {
        var fault = Assert.Single(Read($"- {{ id: a, name: \"x \\\\ \\\"{escape} y\" }}\n"));
        Assert.Equal("character", fault.Code);
        Assert.Equal(escape, fault.Place!.Source.Excerpt(fault.Place.Span));
        Assert.Matches("^the character U\\+[0-9A-F]{4,6} cannot be seen$", fault.Message);
    }

    [Theory]
    [InlineData("\u00a0")]
    [InlineData("\u200b")]
    [InlineData("\u200e")]
    [InlineData("\u061c")]
    [InlineData("\u00ad")]
    [InlineData("\u2060")]
    [InlineData("\u034f")]
    [InlineData("\u3164")]
    [InlineData("\U000e0041")]
    [InlineData("\u001b")]
    public void Character_WrittenAsItIs_IsRefusedWhereItStands(string hidden)
    {
        foreach (var text in new[] { $"- {{ id: a, name: x{hidden}y }}\n", $"- {{ id: a, name: b }} # x{hidden}y\n", $"- id: a\n {hidden}name: b\n" })
        {
            var fault = Assert.Single(Read(text));
            Assert.Equal(("character", hidden), (fault.Code, fault.Place!.Source.Excerpt(fault.Place.Span)));
        }
    }

    [Theory]
    [InlineData("|\n    x\n    y\n")]
    [InlineData("|-\n    x\n    y\n")]
    [InlineData(">\n    x\n")]
    [InlineData("\"x\n\n    y\"\n")]
    [InlineData("'x\n\n    y'\n")]
    [InlineData("x\n\n    y\n")]
    public void Text_OfSeveralLines_IsRefused(string written) =>
        Assert.Equal("a text of several lines", Assert.Single(Read("- id: a\n  name: " + written)).Message);

    [Theory]
    [InlineData("\"\\u00e9 \\x41 \\/ \\\" \\\\\"")]
    [InlineData("x\n    y")]
    [InlineData("'\\n \\u202e'")]
    [InlineData(">-\n    x\n    y")]
    public void Text_InWhichAllIsSeen_IsTaken(string written) => Assert.Empty(Read("- id: any-material\n  name: " + written + "\n"));

    [Fact]
    public void Key_WithAHiddenCharacter_IsRefused() => Assert.Equal("character", Assert.Single(Read("- { id: a, name: b, \"no\\u200bte\": c }\n")).Code);

    /// <summary>Each key of the file is spoilt once: nobody forgot a text.</summary>
    [Theory]
    [MemberData(nameof(Files))]
    public void EveryTextOfAKindOfFile_IsLookedAt(string path)
    {
        var source = new SourceText(path, File.ReadAllText(Repository.PathOf("data/" + path)));
        var seen = new Dictionary<string, YamlScalar>();
        Gather(YamlReader.Read(new DiagnosticList(source))!, "", seen);
        Assert.NotEmpty(seen);
        foreach (var scalar in seen.Values)
        {
            var text = source.Text[..scalar.Span.Start] + "\"x\\u202ey\"" + source.Text[scalar.Span.End..];
            var fault = Assert.Single(Diagnose(path, text), one => one.Code == "character");
            Assert.Equal(scalar.Span.Start + 2, fault.Place!.Span.Start);
        }
    }

    [Theory]
    [InlineData("{ \"format\": \"plan-2\", \"device\": \"a\\u001b[2J\" }")]
    [InlineData("{ \"format\": \"plan-2\", \"device\": \"a\\n\" }")]
    [InlineData("{ \"format\": \"plan-2\", \"device\": \"a\u202e\" }")]
    [InlineData("{ \"format\": \"plan-2\", \"de\\u202evice\": \"a\" }")]
    public void RecordedText_WithAHiddenCharacter_IsRefused(string json)
    {
        var faults = new List<Diagnostic>();
        Assert.Null(RecordedFile.Read(Encoding.UTF8.GetBytes(json), "p.json", faults));
        Assert.Contains(faults, fault => fault.Code == "character" && fault.Place!.Position.Line == 1);
    }

    private static IReadOnlyList<Diagnostic> Diagnose(string path, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        if (path.StartsWith("demo/", StringComparison.Ordinal)) return SiteFile.Read(bytes, path, new()).Diagnostics;
        return DataFolder.Read(new Dictionary<string, byte[]> { [path] = bytes }, "").Diagnostics;
    }

    private static void Gather(YamlNode node, string at, Dictionary<string, YamlScalar> seen)
    {
        if (node is YamlScalar scalar) seen.TryAdd(at, scalar);
        if (node is YamlSequence list) foreach (var item in list.Items) Gather(item, at, seen);
        if (node is YamlMapping mapping) foreach (var entry in mapping.Entries) Gather(entry.Value, at + "." + entry.Key.Text, seen);
    }

    private static IReadOnlyList<Diagnostic> Read(string text) =>
        DataFolder.Read(new Dictionary<string, byte[]> { ["materials/x.yaml"] = Encoding.UTF8.GetBytes(text) }, "").Diagnostics;
}
