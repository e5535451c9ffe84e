namespace Compat.Curation.Yaml;

/// <summary>The text of one file under the name it is shown by. A byte-order mark is not part of the text.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class SourceText
{
    private readonly Lazy<LineIndex> _lines;

    /// <summary>Makes a source text.</summary>
    /// <param name="path">The name the file is shown by.</param>
    /// <param name="text">Its text.</param>
    public SourceText(string path, string text)
    {
        Path = path;
        Text = text;
        _lines = new(() => new LineIndex(Text));
    }

    /// <summary>The name the file is shown by.</summary>
    public string Path { get; }

    /// <summary>The text.</summary>
    public string Text { get; }

    /// <summary>Its lines.</summary>
    public LineIndex Lines => _lines.Value;

    /// <summary>What stands in a stretch of it.</summary>
    public string Excerpt(TextSpan span) => Text.Substring(span.Start, span.Length);
}
