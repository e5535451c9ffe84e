namespace Compat.Curation.Yaml;

/// <summary>A place in a text as an editor shows it.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Column">The column in UTF-16 units, from 1.</param>
public readonly record struct LinePosition(int Line, int Column);

/// <summary>Finds line and column of an offset. A line ends by LF, by CRLF or by a lone CR, and by nothing else (not by U+0085).</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class LineIndex
{
    private readonly string _text;
    private readonly List<int> _starts = [0];

    /// <summary>Indexes a text.</summary>
    public LineIndex(string text)
    {
        _text = text;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
                _starts.Add(i + 1);
        }
    }

    /// <summary>How many lines there are; a text that ends by a line end has an empty last line.</summary>
    public int Count => _starts.Count;

    /// <summary>Line and column of an offset; one outside the text is taken to its nearer end.</summary>
    public LinePosition At(int offset)
    {
        offset = Math.Clamp(offset, 0, _text.Length);
        var found = _starts.BinarySearch(offset);
        var line = found >= 0 ? found : ~found - 1;
        return new(line + 1, offset - _starts[line] + 1);
    }

    /// <summary>The stretch of a line (from 1) without its line end.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such line.</exception>
    public TextSpan LineSpan(int line)
    {
        var start = _starts[line - 1];
        var end = line < _starts.Count ? _starts[line] : _text.Length;
        while (end > start && _text[end - 1] is ('\n' or '\r')) end--;
        return TextSpan.Between(start, end);
    }

    /// <summary>The offset of a place; one behind the end of its line is taken to that end.</summary>
    public int OffsetOf(LinePosition place)
    {
        var line = LineSpan(place.Line);
        return Math.Clamp(line.Start + place.Column - 1, line.Start, line.End);
    }
}
