using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;
using FsCheck.Xunit;

namespace Compat.Curation.Tests.Yaml;

public sealed class LineIndexTests
{
    [Theory]
    [InlineData("ab\ncd", 3, 2, 1)]
    [InlineData("ab\r\ncd", 4, 2, 1)]
    [InlineData("ab\r\ncd", 3, 1, 4)]
    [InlineData("ab\rcd", 3, 2, 1)]
    [InlineData("ab\r\r\ncd", 3, 2, 1)]
    [InlineData("a\tb", 2, 1, 3)]
    [InlineData("😀b", 2, 1, 3)]
    [InlineData("a\u0085b", 2, 1, 3)]
    [InlineData("", 0, 1, 1)]
    [InlineData("ab\n", 3, 2, 1)]
    [InlineData("ab", 99, 1, 3)]
    public void An_offset_has_its_line_and_column(string text, int offset, int line, int column) =>
        Assert.Equal(new LinePosition(line, column), new LineIndex(text).At(offset));

    [Theory]
    [InlineData("ab\r\ncd\n", 1, "ab")]
    [InlineData("ab\r\ncd\n", 2, "cd")]
    [InlineData("ab\r\ncd\n", 3, "")]
    [InlineData("ab\rcd", 2, "cd")]
    public void A_line_is_shown_without_its_end(string text, int line, string expected)
    {
        var span = new LineIndex(text).LineSpan(line);
        Assert.Equal(expected, text.Substring(span.Start, span.Length));
    }

    [Fact]
    public void A_byte_order_mark_moves_no_column()
    {
        List<Diagnostic> faults = [];
        var source = SourceReader.Decode("\uFEFFab: c"u8.ToArray(), "f", faults)!;
        Assert.Empty(faults);
        Assert.Equal("ab: c", source.Text);
        Assert.Equal(new LinePosition(1, 1), source.Lines.At(0));
    }

    [Property(MaxTest = 300)]
    public bool Every_offset_is_found_again_from_its_line_and_column(int[] picks)
    {
        var pieces = new[] { "a", "\n", "\r\n", "\r", "😀", "\u0085", "\t", "é" };
        var text = string.Concat((picks ?? []).Select(pick => pieces[(int)((uint)pick % pieces.Length)]));
        var index = new LineIndex(text);
        return Enumerable.Range(0, text.Length + 1).All(offset =>
        {
            var place = index.At(offset);
            var line = index.LineSpan(place.Line);
            return offset > line.End || index.OffsetOf(place) == offset;
        });
    }
}
