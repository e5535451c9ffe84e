using System.Text;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>Brings the keys of every mapping into the order of the schema, by moving stretches of a text that is laid out already.</summary>
/// <remarks>
/// A key moves with its value, the comment behind it and the comments directly above it. No key moves over a blank line.
/// Braces that hold a comment keep their order. Records keep theirs always.
/// </remarks>
internal sealed class KeyOrderPass
{
    private readonly string _text;

    private KeyOrderPass(string text) => _text = text;

    /// <summary>Orders the keys of a text.</summary>
    public static string Run(SourceText source, YamlNode root, SchemaShape shape)
    {
        var pass = new KeyOrderPass(source.Text);
        var ordered = pass.Render(root, shape, out var end);
        return source.Text[..root.Span.Start] + ordered + source.Text[end..];
    }

    /// <summary>The text of a value with its keys in order.</summary>
    /// <param name="node">The value.</param>
    /// <param name="shape">What the schema says of it.</param>
    /// <param name="end">Where what belongs to it ends: behind comments that move with its last key.</param>
    private string Render(YamlNode node, SchemaShape shape, out int end)
    {
        shape = shape.For(node);
        end = node.Span.End;
        return node switch
        {
            YamlSequence list => List(list, shape.Items ?? SchemaShape.Nothing, ref end),
            YamlMapping mapping when _text[node.Span.Start] == '{' => Braces(mapping, shape),
            YamlMapping mapping => Block(mapping, shape, out end),
            _ => _text[node.Span.Start..end],
        };
    }

    private string List(YamlSequence list, SchemaShape items, ref int end)
    {
        var text = new StringBuilder();
        var at = list.Span.Start;
        foreach (var item in list.Items)
        {
            text.Append(_text, at, item.Span.Start - at).Append(Render(item, items, out at));
        }

        end = Math.Max(end, at);
        return text.Append(_text, at, end - at).ToString();
    }

    private string Braces(YamlMapping mapping, SchemaShape shape)
    {
        var entries = mapping.Entries;
        var hasComment = false;
        var pieces = new string[entries.Count];
        var at = mapping.Span.Start;
        for (var i = 0; i < entries.Count; i++)
        {
            var (key, value) = entries[i];
            hasComment |= HasComment(at, key.Span.Start) || HasComment(key.Span.End, value.Span.Start);
            pieces[i] = _text[key.Span.Start..value.Span.Start] + Render(value, shape.Of(key.Text), out _);
            at = value.Span.End;
        }

        hasComment |= HasComment(at, mapping.Span.End);
        var order = hasComment ? Enumerable.Range(0, entries.Count).ToArray() : Ordered(entries, shape, 0, entries.Count);
        var text = new StringBuilder();
        at = mapping.Span.Start;
        for (var i = 0; i < entries.Count; i++)
        {
            text.Append(_text, at, entries[i].Key.Span.Start - at).Append(pieces[order[i]]);
            at = entries[i].Value.Span.End;
        }

        return text.Append(_text, at, mapping.Span.End - at).ToString();
    }

    private string Block(YamlMapping mapping, SchemaShape shape, out int end)
    {
        var entries = mapping.Entries;
        var column = ColumnOf(entries[0].Key.Span.Start);
        var pieces = new string[entries.Count];
        var before = new string[entries.Count];
        end = mapping.Span.Start;
        for (var i = 0; i < entries.Count; i++)
        {
            var (key, value) = entries[i];
            var start = i == 0 ? key.Span.Start : FirstOfGroup(end, key.Span.Start);
            before[i] = i == 0 ? "" : _text[end..start].TrimEnd(' ') + new string(' ', column);
            var rendered = Render(value, shape.Of(key.Text), out var behind);
            end = WithComments(behind, column);
            pieces[i] = _text[start..value.Span.Start] + rendered + _text[behind..end];
        }

        var text = new StringBuilder();
        for (var from = 0; from < entries.Count;)
        {
            var to = from + 1;
            while (to < entries.Count && !before[to].Contains("\n\n", StringComparison.Ordinal)) to++;
            var order = Ordered(entries, shape, from, to);
            for (var i = from; i < to; i++) text.Append(before[i]).Append(pieces[order[i - from]]);
            from = to;
        }

        return text.ToString();
    }

    /// <summary>Keys of the schema in its order, then the others as they stand.</summary>
    private static int[] Ordered(IReadOnlyList<YamlEntry> entries, SchemaShape shape, int from, int to)
    {
        var ranks = shape.Keys.Select((key, i) => (key, i)).ToDictionary(pair => pair.key, pair => pair.i, StringComparer.Ordinal);
        return Enumerable.Range(from, to - from).OrderBy(i => ranks.GetValueOrDefault(entries[i].Key.Text, int.MaxValue)).ToArray();
    }

    /// <summary>Where the comments begin that stand directly above a key, or the key itself.</summary>
    private int FirstOfGroup(int from, int key)
    {
        var between = _text[from..key];
        var blank = between.LastIndexOf("\n\n", StringComparison.Ordinal);
        var at = from + (blank >= 0 ? blank + 2 : between.IndexOf('\n', StringComparison.Ordinal) + 1);
        while (_text[at] == ' ') at++;
        return at;
    }

    /// <summary>Takes the comment behind a value to it, and those below it that stand further in than the keys.</summary>
    private int WithComments(int end, int column)
    {
        var lineEnd = LineEnd(end);
        if (_text[end..lineEnd].TrimStart(' ').StartsWith('#')) end = lineEnd;
        while (end == lineEnd && lineEnd < _text.Length)
        {
            var next = lineEnd + 1;
            var nextEnd = LineEnd(next);
            var line = _text[next..nextEnd];
            var body = line.TrimStart(' ');
            if (!body.StartsWith('#') || line.Length - body.Length <= column) break;
            end = lineEnd = nextEnd;
        }

        return end;
    }

    private bool HasComment(int from, int to) => _text.AsSpan(from, to - from).Contains('#');

    private int LineEnd(int at) => _text.IndexOf('\n', at) is var end and >= 0 ? end : _text.Length;

    private int ColumnOf(int offset) => offset - (offset == 0 ? 0 : _text.LastIndexOf('\n', offset - 1) + 1);
}
