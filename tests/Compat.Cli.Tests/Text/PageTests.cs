
namespace Compat.Cli.Tests.Text;

public sealed class PageTests
{
    [Fact]
    public void Line_LongText_WrapsAtSpacesWithinEightyColumnsAndHangs()
    {
        var text = Written(page => page.Item(string.Join(' ', Enumerable.Repeat("word", 40))));
        var lines = text.TrimEnd('\n').Split('\n');
        Assert.True(lines.Length > 1);
        Assert.All(lines, line => Assert.True(line.Length <= 80));
        Assert.StartsWith("  - word", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("    word", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Line_NoBreakSpace_KeepsFigureAndUnitTogetherAndIsWrittenPlain()
    {
        var text = Written(page => page.Line(new string('x', 74) + " 70\u00a0%\u00a0v/v"));
        Assert.Equal(new string('x', 74) + "\n70 % v/v\n", text);
    }

    [Fact]
    public void Columns_LeftTooWide_PutsTheRightBelow() =>
        Assert.Equal("longer\n    text\n", Written(page => page.Columns("longer", "text", 0, 2)));

    private static string Written(Action<Page> write)
    {
        using var writer = new StringWriter();
        write(new Page(writer));
        return writer.ToString();
    }
}
