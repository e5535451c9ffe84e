using System.Globalization;
using System.Text;
using Compat.Curation.Schemas;

namespace Compat.Curation.Writing;

/// <summary>Writes records as block YAML: one key a line, lists of words in brackets, quotes only where a value needs them.</summary>
internal sealed class RecordText
{
    private readonly StringBuilder _text = new();
    private readonly string _indent;
    private bool _first;

    private RecordText(string indent, bool isItem)
    {
        _indent = indent;
        _first = isItem;
    }

    /// <summary>Writes a record as an item of a list.</summary>
    public static string Item(int depth, Action<RecordText> write)
    {
        var record = new RecordText(new string(' ', depth * 2), true);
        write(record);
        return record._text.ToString();
    }

    /// <summary>Writes a key with a value; nothing where the value is null.</summary>
    public RecordText Field(string key, string? value) => value is null ? this : Raw(key, Quoted(value));

    /// <summary>Writes a key with <c>true</c>; nothing where it is not so.</summary>
    public RecordText Flag(string key, bool isSo) => isSo ? Raw(key, "true") : this;

    /// <summary>Writes a key with a list of words; nothing where there are none.</summary>
    public RecordText List(string key, IEnumerable<string>? values)
    {
        var items = values?.ToArray() ?? [];
        return items.Length == 0 ? this : Raw(key, Words(items));
    }

    /// <summary>Writes a key with a value in braces; nothing where it has no entries.</summary>
    public RecordText Braces(string key, IEnumerable<(string Key, string? Value)> entries)
    {
        var text = Inline(entries);
        return text == "{}" ? this : Raw(key, text);
    }

    /// <summary>Writes a key with a list of which each item is written already; nothing where there are none.</summary>
    public RecordText Lines(string key, IEnumerable<string> items)
    {
        var lines = items.ToArray();
        if (lines.Length == 0) return this;
        Start().Append(key).Append(":\n");
        foreach (var line in lines) _text.Append(_indent).Append("    - ").Append(line).Append('\n');
        return this;
    }

    /// <summary>Writes a key with records below it; nothing where there are none.</summary>
    public RecordText Records<TRecord>(string key, IReadOnlyList<TRecord> records, Action<RecordText, TRecord> write)
    {
        if (records.Count == 0) return this;
        Start().Append(key).Append(":\n");
        foreach (var record in records) _text.Append(Item((_indent.Length / 2) + 2, text => write(text, record)));
        return this;
    }

    /// <summary>Writes a key with a text that is YAML already; nothing where it is null.</summary>
    public RecordText Raw(string key, string? yaml)
    {
        if (yaml is null) return this;
        Start().Append(key).Append(": ").Append(yaml).Append('\n');
        return this;
    }

    /// <summary>Entries in braces; those without a value are left out. Values are YAML already.</summary>
    public static string Inline(IEnumerable<(string Key, string? Value)> entries)
    {
        var written = entries.Where(entry => entry.Value is not null).Select(entry => $"{entry.Key}: {entry.Value}").ToArray();
        return written.Length == 0 ? "{}" : "{ " + string.Join(", ", written) + " }";
    }

    /// <summary>Words in brackets.</summary>
    public static string Words(IEnumerable<string> words) => "[" + string.Join(", ", words.Select(Quoted)) + "]";

    /// <summary>A value as YAML: quoted where it would not be read back as the same text.</summary>
    public static string Quoted(string value)
    {
        var isPlain = value.Length > 0 && value.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or ' ' or '°' or '/' or '(' or ')' or '+')
            && char.IsAsciiLetterOrDigit(value[0]) && value[^1] != ' ' && ScalarText.MistakenFor(value) is null;
        if (isPlain) return value;
        var text = new StringBuilder("\"");
        for (var i = 0; i < value.Length; i++)
        {
            var c = value[i];
            text.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when Validation.HiddenText.IsHidden(value, i, out _) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"),
                _ => c.ToString(),
            });
        }

        return text.Append('"').ToString();
    }

    private StringBuilder Start()
    {
        _text.Append(_indent).Append(_first ? "- " : "  ");
        _first = false;
        return _text;
    }
}
