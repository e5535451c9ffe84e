using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>
/// What stands in brackets and braces: on one line, or, where a line ends behind the opening sign or a comment stands inside, each item on its own.
/// </summary>
internal sealed partial class LayoutPass
{
    /// <param name="node">The list or mapping.</param>
    /// <param name="shape">What the schema says of it.</param>
    /// <param name="inner">The column of its items where each has its line; the closing sign stands one step further out.</param>
    private void Flow(YamlNode node, SchemaShape shape, int inner)
    {
        var isList = node is YamlSequence;
        TextSpan[] items = node is YamlSequence list
            ? [.. list.Items.Select(item => item.Span)]
            : [.. ((YamlMapping)node).Entries.Select(entry => TextSpan.Between(entry.Key.Span.Start, entry.Value.Span.End))];
        var isBroken = IsBroken(node.Span, items);
        var pad = isBroken ? null : isList || items.Length == 0 ? "" : " ";
        Take(isList ? '[' : '{', "", inner);
        for (var i = 0; i < items.Length; i++)
        {
            if (i == 0) Advance(items[i].Start, pad, inner);
            else AdvanceOverComma(items[i].Start, isBroken ? null : " ", inner);
            if (node is YamlSequence sequence) Item(sequence.Items[i], shape.Items ?? SchemaShape.Nothing, inner);
            else Entry(((YamlMapping)node).Entries[i], shape, inner);
        }

        var close = node.Span.End - 1;
        if (items.Length > 0 && NextSign(_at) < close) AdvanceOverComma(close, pad, inner - Step, inner);
        else Advance(close, pad, inner - Step, inner);
        _at++;
    }

    private void Item(YamlNode item, SchemaShape shape, int inner)
    {
        if (item is not YamlMapping { Entries: [var pair] } || IsFlow(item))
        {
            Inside(item, shape, inner);
            return;
        }

        // A single key with its value in a list needs no braces to be a mapping; it is written with them.
        _edits.Add(new(new(_at, 0), "{ "));
        Entry(pair, shape.For(item), inner);
        _edits.Add(new(new(_at, 0), " }"));
    }

    private void Entry(YamlEntry entry, SchemaShape shape, int inner)
    {
        Key(entry.Key);
        Take(':', "", inner);
        Advance(entry.Value.Span.Start, " ", inner + Step);
        Inside(entry.Value, shape.Of(entry.Key.Text), inner);
    }

    private void Inside(YamlNode node, SchemaShape shape, int inner)
    {
        shape = shape.For(node);
        if (node is YamlScalar scalar) Scalar(scalar, shape, inFlow: true);
        else Flow(node, shape, inner + Step);
    }

    /// <summary>Goes on to a place behind a comma, which is written directly behind what stands before it, and behind the last item not at all.</summary>
    private void AdvanceOverComma(int start, string? inline, int column, int? behindLast = null)
    {
        var comma = NextSign(_at);
        if (comma >= start || _text[comma] != ',') throw new CannotFormatException(new(Math.Min(comma, _text.Length - 1), 1));
        var gap = Gap.Read(_text[_at..comma] + _text[(comma + 1)..start], false, false);
        Write(gap, behindLast is null ? "," : "", start, inline, column, behindLast);
    }

    private bool IsBroken(TextSpan whole, TextSpan[] items)
    {
        var at = whole.Start + 1;
        foreach (var item in items)
        {
            var gap = _text.AsSpan(at, item.Start - at);
            if (gap.Contains('#') || (at == whole.Start + 1 && gap.Contains('\n'))) return true;
            at = item.End;
        }

        return _text.AsSpan(at, whole.End - 1 - at).Contains('#');
    }
}
