using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>Brings indentation, spaces, blank lines and the spelling of single values into the canonical form.</summary>
/// <remarks>
/// It walks over the values in the order of the text and looks at nothing else than what stands between them, so that nothing can be left out.
/// Whether a list or mapping is written in lines or in brackets stays as it is.
/// </remarks>
internal sealed partial class LayoutPass
{
    private const int Step = 2;

    private readonly SourceText _source;
    private readonly string _text;
    private readonly List<TextEdit> _edits = [];
    private readonly List<string> _comments = [];

    /// <summary>Blocks that ended behind the last value: a comment further in than what follows belongs to one of them.</summary>
    private readonly List<(int From, int To)> _closed = [];
    private int _at;

    private LayoutPass(SourceText source)
    {
        _source = source;
        _text = source.Text;
    }

    /// <summary>Lays a text out whose lines end by LF.</summary>
    /// <param name="source">The text.</param>
    /// <param name="root">Its tree.</param>
    /// <param name="shape">What its schema says.</param>
    /// <param name="comments">The comments in it.</param>
    /// <exception cref="CannotFormatException">It holds something that is not laid out.</exception>
    public static string Run(SourceText source, YamlNode root, SchemaShape shape, out IReadOnlyList<string> comments)
    {
        var pass = new LayoutPass(source);
        pass.Advance(root.Span.Start, null, 0);
        pass.Node(root, shape, 0);
        pass.Advance(source.Text.Length, null, 0);
        comments = pass._comments;
        return TextEdit.Apply(source.Text, pass._edits);
    }

    private void Node(YamlNode node, SchemaShape shape, int column)
    {
        shape = shape.For(node);
        switch (node)
        {
            case YamlScalar scalar:
                Scalar(scalar, shape, inFlow: false);
                break;
            case YamlMapping mapping when !IsFlow(node):
                BlockMapping(mapping, shape, column);
                break;
            case YamlSequence sequence when !IsFlow(node):
                BlockSequence(sequence, shape, column);
                break;
            default:
                Flow(node, shape, column + Step);
                break;
        }
    }

    private void BlockMapping(YamlMapping mapping, SchemaShape shape, int column)
    {
        var from = ColumnOf(_at);
        foreach (var entry in mapping.Entries)
        {
            if (entry != mapping.Entries[0]) Advance(entry.Key.Span.Start, null, column);
            Key(entry.Key);
            Take(':', "", column);
            Advance(entry.Value.Span.Start, IsBlock(entry.Value) ? null : " ", column + Step);
            Node(entry.Value, shape.Of(entry.Key.Text), column + Step);
        }

        _closed.Add((from, column));
    }

    private void BlockSequence(YamlSequence sequence, SchemaShape shape, int column)
    {
        var from = ColumnOf(_at);
        for (var i = 0; i < sequence.Items.Count; i++)
        {
            var item = sequence.Items[i];
            Take('-', i == 0 ? "" : null, column);
            Advance(item.Span.Start, " ", column + Step);
            Node(item, shape.Items ?? SchemaShape.Nothing, column + Step);
        }

        _closed.Add((from, column));
    }

    private void Key(YamlScalar key) => Replace(key.Span, ScalarSpelling.OfKey(key));

    private void Scalar(YamlScalar scalar, SchemaShape shape, bool inFlow)
    {
        if (scalar.IsNothing) throw new CannotFormatException(scalar.Span);
        var written = _source.Excerpt(scalar.Span);
        var comment = scalar.IsPlain ? null : ScalarSpelling.HeadComment(written);
        var spelt = ScalarSpelling.Of(scalar, written, shape, inFlow, comment is not null || CommentFollows(scalar.Span.End));
        if (comment is not null)
        {
            _comments.Add(comment);
            spelt += " " + comment;
        }

        Replace(scalar.Span, spelt);
    }

    /// <summary>Whether a comment will stand right behind a value: a comma is written before it, and none behind the last item.</summary>
    private bool CommentFollows(int end)
    {
        var next = NextSign(end);
        if (next == _text.Length || _text[next] != ',') return IsComment(end);
        return _text.AsSpan(NextSign(next + 1)) is [']' or '}', ..] && (IsComment(end) || IsComment(next + 1));

        bool IsComment(int at) => _text.AsSpan(at).TrimStart(' ') is ['#', ..];
    }

    /// <summary>Goes on to a place and writes what stands before it.</summary>
    /// <param name="start">The place.</param>
    /// <param name="inline">What stands before it on its line; null where it begins a line.</param>
    /// <param name="column">The column where it begins a line.</param>
    /// <param name="commentColumn">The column of comments on lines of their own; where it is left out, that of what follows.</param>
    private void Advance(int start, string? inline, int column, int? commentColumn = null)
    {
        if (start < _at) throw new CannotFormatException(new(start, 1));
        Write(Gap.Read(_text, TextSpan.Between(_at, start)), "", start, inline, column, commentColumn);
    }

    /// <summary>Writes a gap up to a place.</summary>
    private void Write(Gap? gap, string sign, int start, string? inline, int column, int? commentColumn = null)
    {
        if (gap is null) throw new CannotFormatException(new(Math.Min(NextSign(_at), _text.Length - 1), 1));
        _comments.AddRange(gap.Comments);
        var next = start == _text.Length ? -1 : ColumnOf(start);
        var least = int.MaxValue;
        Replace(TextSpan.Between(_at, start),
            sign + gap.Write(inline, column, from => least = Math.Min(least, CommentColumn(from, next, commentColumn ?? column))));
        _closed.Clear();
    }

    /// <summary>Goes over a sign of the text.</summary>
    private void Take(char sign, string? inline, int column)
    {
        var at = NextSign(_at);
        if (at == _text.Length || _text[at] != sign) throw new CannotFormatException(new(Math.Min(at, _text.Length), at == _text.Length ? 0 : 1));
        Advance(at, inline, column);
        _at++;
    }

    /// <summary>Where the next thing stands that is no space and no comment.</summary>
    private int NextSign(int at)
    {
        while (at < _text.Length)
        {
            if (_text[at] == '#') while (at < _text.Length && _text[at] != '\n') at++;
            else if (_text[at] is ' ' or '\n') at++;
            else break;
        }

        return at;
    }

    private int CommentColumn(int from, int next, int column)
    {
        var owner = (From: -1, To: column);
        if (from <= next) return column;
        foreach (var block in _closed)
            if (block.From >= next && block.From <= from && block.From > owner.From) owner = block;
        return owner.To;
    }

    private void Replace(TextSpan span, string text)
    {
        if (!_text.AsSpan(span.Start, span.Length).SequenceEqual(text)) _edits.Add(new(span, text));
        _at = span.End;
    }

    private int ColumnOf(int offset) => offset - (offset == 0 ? 0 : _text.LastIndexOf('\n', offset - 1) + 1);

    private bool IsFlow(YamlNode node) => node.Span.Start < _text.Length && _text[node.Span.Start] is '[' or '{';

    private bool IsBlock(YamlNode node) => node is not YamlScalar && !IsFlow(node);
}
