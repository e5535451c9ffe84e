using Compat.Curation.Diagnostics;
using Compat.Curation.Formatting;
using Compat.Curation.Schemas;

namespace Compat.Curation.Tests.Formatting;

/// <summary>Each file in Examples/ gives exactly the one beside it, which stays as it is. Setting COMPAT_ACCEPT to 1 writes the texts anew.</summary>
public sealed class FormatExampleTests
{
    private static readonly string Folder = Repository.PathOf("tests/Compat.Curation.Tests/Formatting/Examples");

    [Theory]
    [InlineData("rules")]
    [InlineData("site")]
    public void It_is_formatted_exactly_so(string kind)
    {
        var after = Path.Combine(Folder, kind + ".after.yaml");
        var formatted = Formatted(kind, File.ReadAllText(Path.Combine(Folder, kind + ".before.yaml")));
        if (Environment.GetEnvironmentVariable("COMPAT_ACCEPT") == "1") File.WriteAllText(after, formatted);
        Assert.Equal(File.ReadAllText(after), formatted);
        Assert.Equal(formatted, Formatted(kind, formatted));
    }

    private static string Formatted(string name, string text)
    {
        Assert.True(Words.TryParse<FileKind>(name, out var kind));
        var faults = new List<Diagnostic>();
        var formatted = TextFormatter.Run(kind, new(name, text), null, faults);
        Assert.Equal("", DiagnosticText.Render(faults));
        return formatted!;
    }
}
