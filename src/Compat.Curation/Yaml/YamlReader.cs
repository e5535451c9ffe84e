using Compat.Curation.Diagnostics;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Compat.Curation.Yaml;

/// <summary>
/// Reads the strict part of YAML that data files use: one document of lists, keys and single values, and nothing that means something else than it says.
/// </summary>
/// <remarks>Time and memory are bounded: nesting is cut at <see cref="MaximumDepth"/> while scanning, values at <see cref="MaximumNodes"/>.</remarks>
internal sealed class YamlReader
{
    /// <summary>How deep lists and keys may be nested.</summary>
    public const int MaximumDepth = 64;

    /// <summary>How many values a file may hold.</summary>
    public const int MaximumNodes = 1_000_000;

    private readonly DiagnosticList _faults;
    private readonly string _text;
    private readonly Parser _parser;
    private readonly Stack<int> _open = new();
    private int _last;
    private int _nodes;

    private YamlReader(DiagnosticList faults, string text)
    {
        _faults = faults;
        _text = text;
        _parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
    }

    /// <summary>Reads a file; null where it could not be read to its end, with the reason.</summary>
    public static YamlNode? Read(DiagnosticList faults)
    {
        if (!CharacterCheck.Passes(faults, out var text)) return null;
        try
        {
            return new YamlReader(faults, text).ReadFile();
        }
        catch (StopReading)
        {
            return null;
        }
    }

    private YamlNode? ReadFile()
    {
        Next<StreamStart>();
        if (Move() is not DocumentStart)
        {
            _faults.Add(new(0, 0), "empty-file", "the file holds nothing", "write `[]` for an empty list");
            return null;
        }

        var root = ReadNode(Move());
        Next<DocumentEnd>();
        var behind = Move();
        if (behind is DocumentStart)
            _faults.Add(SpanOf(behind), "second-document", "a second document begins here", "keep one document in a file");
        return root;
    }

    private YamlNode ReadNode(ParsingEvent at)
    {
        if (++_nodes > MaximumNodes) Stop(SpanOf(at), "too-many-values", $"the file holds more than {MaximumNodes} values", "split it into several files");
        switch (at)
        {
            case AnchorAlias:
                _faults.Add(SpanOf(at), "alias", $"the alias `{_faults.Source.Excerpt(SpanOf(at))}` is refused", "write the value out where it is used");
                return new YamlRefused(SpanOf(at));
            case Scalar scalar:
                return ReadScalar(scalar);
            case SequenceStart:
                return ReadSequence((SequenceStart)at);
            case MappingStart start:
                return ReadMapping(start);
            default:
                Stop(SpanOf(at), "yaml", "a value is expected here");
                return new YamlRefused(SpanOf(at));
        }
    }

    private YamlNode ReadScalar(Scalar scalar)
    {
        var start = RefuseProperties(scalar, (int)scalar.Start.Index);
        var span = Trim(TextSpan.Between(start, (int)scalar.End.Index));
        if (!CharacterCheck.Passes(_faults, scalar.Value, span)) return new YamlRefused(span);
        return new YamlScalar(scalar.Value, scalar.Style == ScalarStyle.Plain, span);
    }

    private YamlSequence ReadSequence(SequenceStart at)
    {
        var start = Open(at);
        var items = new List<YamlNode>();
        ParsingEvent next;
        while ((next = Move()) is not SequenceEnd) items.Add(ReadNode(next));
        return new(items, Close(start, next, items.Count == 0 ? start : items[^1].Span.End));
    }

    private YamlMapping ReadMapping(MappingStart at)
    {
        var start = Open(at);
        var entries = new List<YamlEntry>();
        var seen = new SeenKeys();
        var last = start;
        ParsingEvent next;
        while ((next = Move()) is not MappingEnd)
        {
            var key = ReadNode(next);
            var value = ReadNode(Move());
            last = Math.Max(last, Math.Max(key.Span.End, value.Span.End));
            if (key is YamlRefused) continue;
            if (key is not YamlScalar name)
                _faults.Add(key.Span, "key", $"a key is a single word, read {key.Kind}");
            else if (name is { IsPlain: true, Text: "<<" })
                _faults.Add(name.Span, "merge-key", "the merge key `<<` is refused", "write the keys out where they are used");
            else if (name.Text.Length == 0)
                _faults.Add(name.Span, "key", "a key is missing before `:`");
            else if (seen.Add(name) is { } first)
                _faults.Add(
                    name.Span, "duplicate-key", $"the key `{name.Text}` is written twice", "keep one of the two",
                    _faults.Related("first written here", first.Span));
            else
                entries.Add(new(name, value));
        }

        // The scanner gives no place for a single key in a list in brackets (`[a: b]`): it is that of its key.
        var span = Close(start, next, last);
        var hasPlace = start > 0 || _open.Count == 0;
        return new(entries, hasPlace || entries.Count == 0 ? span : TextSpan.Between(entries[0].Key.Span.Start, last));
    }

    private int Open(NodeEvent at)
    {
        var start = (int)at.Start.Index;
        if (_open.Count == MaximumDepth)
            Stop(new(Clamp(start), 1), "too-deep", $"nested more than {MaximumDepth} deep");
        start = RefuseProperties(at, start);
        _open.Push(start);
        return start;
    }

    private TextSpan Close(int start, ParsingEvent end, int lastChild)
    {
        _open.Pop();
        var isFlow = start < _text.Length && _text[start] is ('[' or '{');
        return Trim(TextSpan.Between(start, isFlow ? (int)end.Start.Index + 1 : lastChild));
    }

    /// <summary>Reports an anchor and a tag before a value and returns where the value itself starts.</summary>
    private int RefuseProperties(NodeEvent at, int start)
    {
        if (at.Anchor.IsEmpty && at.Tag.IsEmpty) return start;
        for (var parts = 0; parts < 2 && start < _text.Length && _text[start] is ('&' or '!'); parts++)
        {
            var end = start;
            while (end < _text.Length && _text[end] is not (' ' or '\r' or '\n' or ',' or ']' or '}')) end++;
            var span = TextSpan.Between(start, end);
            if (_text[start] == '&')
                _faults.Add(span, "anchor", $"the anchor `{_faults.Source.Excerpt(span)}` is refused", "write the value out where it is used");
            else
                _faults.Add(span, "tag", $"the tag `{_faults.Source.Excerpt(span)}` is refused", "leave it out: the schema says what a value is");
            start = end;
            while (start < _text.Length && _text[start] is (' ' or '\r' or '\n')) start++;
        }

        return start;
    }

    private void Next<TEvent>() where TEvent : ParsingEvent
    {
        if (Move() is not TEvent) Stop(new(Clamp(_last), 0), "yaml", "a document is expected here");
    }

    private ParsingEvent Move()
    {
        try
        {
            if (!_parser.MoveNext()) Stop(new(Clamp(_last), 0), "yaml", "the file ends too early");
            var current = _parser.Current!;
            _last = (int)current.End.Index;
            return current;
        }
        catch (YamlException fault)
        {
            throw Malformed((int)fault.Start.Index, fault.Message);
        }
        catch (Exception fault) when (fault is not (StopReading or OutOfMemoryException))
        {
            throw Malformed(_last, YamlFaultText.Unreadable);
        }
    }

    private StopReading Malformed(int offset, string reason)
    {
        var at = Clamp(offset);
        var (message, help) = YamlFaultText.Of(reason);
        var related = _open.Count > 0 && _text[_open.Peek()] is ('[' or '{') ? _faults.Related("opened here", new(_open.Peek(), 1)) : null;
        _faults.Add(new(at, at < _text.Length && _text[at] is not ('\r' or '\n') ? 1 : 0), "yaml", message, help, related);
        return new();
    }

    private void Stop(TextSpan span, string code, string message, string? help = null)
    {
        _faults.Add(span, code, message, help);
        throw new StopReading();
    }

    private TextSpan SpanOf(ParsingEvent at) => Trim(TextSpan.Between((int)at.Start.Index, (int)at.End.Index));

    private TextSpan Trim(TextSpan span)
    {
        var end = Clamp(span.End);
        var start = Math.Min(Clamp(span.Start), end);
        while (end > start && _text[end - 1] is (' ' or '\n' or '\r')) end--;
        return TextSpan.Between(start, end);
    }

    private int Clamp(int offset) => Math.Clamp(offset, 0, _text.Length);

    private sealed class StopReading : Exception;
}
