using System.Text;
using System.Text.Json;
using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;

namespace Compat.Curation.Recorded;

/// <summary>
/// Brings a JSON text to the tree that data files are read from, each value with its place; strictly: no comment, no comma too many, no key twice.
/// </summary>
internal sealed class JsonText
{
    private readonly DiagnosticList _faults;
    private readonly byte[] _bytes;
    private int _byte;
    private int _char;

    private JsonText(DiagnosticList faults) => (_faults, _bytes) = (faults, Encoding.UTF8.GetBytes(faults.Source.Text));

    /// <summary>Reads a text; null where it could not be read to its end, with the reason.</summary>
    public static YamlNode? Read(DiagnosticList faults)
    {
        var text = new JsonText(faults);
        var json = new Utf8JsonReader(text._bytes, new JsonReaderOptions { MaxDepth = YamlReader.MaximumDepth });
        try
        {
            json.Read();
            var root = text.Value(ref json);
            json.Read();
            return root;
        }
        catch (JsonException fault)
        {
            text.Refuse(text.ByteOf(fault));
        }
        catch (InvalidOperationException)
        {
            text.Refuse((int)json.TokenStartIndex);
        }

        return null;
    }

    private YamlNode Value(ref Utf8JsonReader json)
    {
        switch (json.TokenType)
        {
            case JsonTokenType.StartObject: return Mapping(ref json);
            case JsonTokenType.StartArray: return Sequence(ref json);
            case JsonTokenType.String: return Quoted(ref json);
            default:
                var start = CharAt((int)json.TokenStartIndex);
                return new YamlScalar(Encoding.UTF8.GetString(json.ValueSpan), IsPlain: true, new TextSpan(start, json.ValueSpan.Length));
        }
    }

    private YamlMapping Mapping(ref Utf8JsonReader json)
    {
        var start = CharAt((int)json.TokenStartIndex);
        var entries = new List<YamlEntry>();
        var seen = new SeenKeys();
        while (json.Read() && json.TokenType != JsonTokenType.EndObject)
        {
            var key = Quoted(ref json);
            json.Read();
            var value = Value(ref json);
            if (seen.Add(key) is { } first)
                _faults.Add(key.Span, "duplicate-key", $"the key `{key.Text}` is written twice", null, _faults.Related("first written here", first.Span));
            else entries.Add(new(key, value));
        }

        return new(entries, TextSpan.Between(start, CharAt((int)json.TokenStartIndex) + 1));
    }

    private YamlSequence Sequence(ref Utf8JsonReader json)
    {
        var start = CharAt((int)json.TokenStartIndex);
        var items = new List<YamlNode>();
        while (json.Read() && json.TokenType != JsonTokenType.EndArray) items.Add(Value(ref json));
        return new(items, TextSpan.Between(start, CharAt((int)json.TokenStartIndex) + 1));
    }

    private YamlScalar Quoted(ref Utf8JsonReader json)
    {
        var start = CharAt((int)json.TokenStartIndex);
        var text = json.GetString()!;
        var span = TextSpan.Between(start, CharAt((int)json.TokenStartIndex + json.ValueSpan.Length + 2));
        CharacterCheck.Passes(_faults, text, span);
        return new(text, IsPlain: false, span);
    }

    /// <summary>The offset in UTF-16 units of a byte; asked in the order of the text.</summary>
    private int CharAt(int offset)
    {
        _char += Encoding.UTF8.GetCharCount(_bytes, _byte, offset - _byte);
        _byte = offset;
        return _char;
    }

    private int ByteOf(JsonException fault)
    {
        var offset = 0;
        for (var line = fault.LineNumber ?? 0; line > 0; line--) offset = Array.IndexOf(_bytes, (byte)'\n', offset) + 1;
        return Math.Clamp(offset + (int)(fault.BytePositionInLine ?? 0), 0, _bytes.Length);
    }

    private void Refuse(int offset)
    {
        var rest = Encoding.UTF8.GetString(_bytes, offset, _bytes.Length - offset);
        var at = _faults.Source.Text.Length - rest.Length;
        if (rest.Trim().TrimStart(',', ':').Length == 0)
            _faults.Add(new(_faults.Source.Text.Length, 0), "json", "the text ends too early", "it was cut, or not written to its end: write it anew");
        else _faults.Add(new(Math.Max(0, at), 1), "json", "this is no JSON from here on");
    }
}
