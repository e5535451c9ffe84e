using System.Text;
using Compat.Curation.Yaml;

namespace Compat.Curation.Tests.Formatting;

/// <summary>Writes a tree in one of the many ways a person may: other order of keys, spaces, quotes, indentation, line breaks, comments.</summary>
internal sealed class Scrambler(Random random, bool withComments, bool withBlankLines)
{
    private readonly StringBuilder _text = new();
    private int _comments;

    /// <summary>How many comments were written: <c># c1;</c>, <c># c2;</c> and so on.</summary>
    public int Comments => _comments;

    public string Write(YamlNode root, SourceText source)
    {
        _text.Clear();
        if (withBlankLines && random.Next(6) == 0) _text.Append("---\n");
        Lines(random.Next(4));
        Block(root, source, 0);
        _text.Append(withBlankLines && random.Next(3) == 0 ? "" : "\n");
        if (_text[^1] == '\n') Lines(0);
        var text = _text.ToString();
        return random.Next(3) == 0 ? text.Replace("\n", "\r\n", StringComparison.Ordinal) : text;
    }

    private void Block(YamlNode node, SourceText source, int column)
    {
        switch (node)
        {
            case YamlSequence list when IsBlock(node, source):
                for (var i = 0; i < list.Items.Count; i++)
                {
                    if (i > 0) NewLine(column);
                    _text.Append('-');
                    var inline = 1 + random.Next(3);
                    if (withComments && random.Next(12) == 0)
                    {
                        Comment();
                        NewLine(column + 1 + inline);
                    }
                    else
                    {
                        _text.Append(' ', inline);
                    }

                    Block(list.Items[i], source, column + 1 + inline);
                }

                break;
            case YamlMapping mapping when IsBlock(node, source):
                var entries = mapping.Entries.ToArray();
                if (random.Next(2) == 0) random.Shuffle(entries);
                for (var i = 0; i < entries.Length; i++)
                {
                    if (i > 0) NewLine(column);
                    Key(entries[i].Key);
                    var inner = column + 1 + random.Next(4);
                    var below = IsBlock(entries[i].Value, source) || (withComments && random.Next(20) == 0);
                    if (below) NewLine(entries[i].Value is YamlSequence && IsBlock(entries[i].Value, source) ? inner - 1 : inner);
                    else _text.Append(' ', 1 + random.Next(3));
                    Block(entries[i].Value, source, entries[i].Value is YamlSequence && IsBlock(entries[i].Value, source) ? inner - 1 : inner);
                }

                break;
            default:
                Flow(node, source, column + 1, inFlow: false);
                break;
        }
    }

    private void Flow(YamlNode node, SourceText source, int column, bool inFlow)
    {
        if (node is YamlScalar scalar)
        {
            _text.Append(Spelt(scalar, source.Excerpt(scalar.Span), inFlow));
            return;
        }

        var entries = (node as YamlMapping)?.Entries.ToArray() ?? [];
        if (random.Next(2) == 0) random.Shuffle(entries);
        var children = node is YamlSequence list ? list.Items : entries.Select(entry => entry.Value).ToArray();
        _text.Append(entries.Length > 0 ? '{' : '[');
        for (var i = 0; i < children.Count; i++)
        {
            if (i > 0 || withComments) Space(column);
            if (entries.Length > 0)
            {
                Key(entries[i].Key);
                _text.Append(' ');
            }

            Flow(children[i], source, column + 1, inFlow: true);
            Space(column);
            if (i < children.Count - 1 || random.Next(6) == 0) _text.Append(',');
        }

        Space(column);
        _text.Append(entries.Length > 0 ? '}' : ']');
    }

    private void Key(YamlScalar key) => _text.Append(random.Next(6) == 0 ? $"\"{key.Text}\"" : key.Text).Append(random.Next(8) == 0 ? " :" : ":");

    private string Spelt(YamlScalar scalar, string written, bool inFlow)
    {
        if (scalar.Text.Length == 0 || scalar.Text is "true" or "false" || decimal.TryParse(written, out _)) return written;
        if (!scalar.IsPlain && scalar.Text[0] is '<' or '>') written = written.Replace("= ", random.Next(2) == 0 ? "=" : "=  ", StringComparison.Ordinal);
        return random.Next(4) switch
        {
            0 => "'" + scalar.Text.Replace("'", "''", StringComparison.Ordinal) + "'",
            1 => '"' + scalar.Text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + '"',
            _ when inFlow && scalar.IsPlain && scalar.Text.Contains(',', StringComparison.Ordinal) => $"'{scalar.Text}'",
            _ => written,
        };
    }

    private void Space(int column)
    {
        if (random.Next(8) == 0) NewLine(column);
        else _text.Append(' ', random.Next(3));
    }

    /// <summary>Ends the line, perhaps with a comment, perhaps with lines between, and begins the next.</summary>
    private void NewLine(int column)
    {
        if (withComments && random.Next(8) == 0) Comment();
        else _text.Append(' ', random.Next(2));
        _text.Append('\n');
        if (withBlankLines && random.Next(6) == 0) Lines(1 + random.Next(3));
        _text.Append(' ', column);
    }

    private void Lines(int count)
    {
        for (var i = 0; i < count; i++)
        {
            _text.Append(' ', random.Next(9));
            if (withComments && random.Next(2) == 0) Comment();
            _text.Append('\n');
        }
    }

    private void Comment() => _text.Append(' ', 1 + random.Next(2)).Append($"# c{++_comments};").Append(' ', random.Next(2));

    private static bool IsBlock(YamlNode node, SourceText source) =>
        node is not YamlScalar && source.Text[node.Span.Start] is not ('[' or '{');
}
