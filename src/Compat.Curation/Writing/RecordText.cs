using System.Globalization;
using System.Text;
using Compat.Curation.Schemas;

namespace Compat.Curation.Writing;

/// <summary>Gathers a record key by key, to be written as block YAML or in braces: lists of words in brackets, quotes only where a value needs them.</summary>
internal sealed class RecordText
{
    /// <summary>The keys with their values: in one line, and, of what stands in lines of its own, by its indent.</summary>
    private readonly List<(string Key, Func<string?> Line, Func<string, string>? Lines)> _entries = [];

    private readonly Dictionary<string, RecordText> _within = [];

    /// <summary>Writes a record as an item of a list.</summary>
    public static string Item(int depth, Action<RecordText> write)
    {
        var (record, indent) = (new RecordText(), new string(' ', depth * 2));
        write(record);
        var text = new StringBuilder();
        foreach (var (key, line, lines) in record._entries)
        {
            if (lines is null && line() is null) continue;
            text.Append(indent + (text.Length == 0 ? "- " : "  ")).Append(key).Append(':');
            text.Append(lines is null ? " " + line() + "\n" : "\n" + lines(indent));
        }

        return text.ToString();
    }

    /// <summary>Writes a record in braces; null where it has no entries.</summary>
    public static string? Braced(Action<RecordText> write)
    {
        var record = new RecordText();
        write(record);
        return record.Line();
    }

    /// <summary>Writes a key with a value; nothing where the value is null.</summary>
    public void Field(string key, string? value) => Raw(key, value is null ? null : Quoted(value));

    /// <summary>Writes a key with <c>true</c>; nothing where it is not so.</summary>
    public void Flag(string key, bool isSo) => Raw(key, isSo ? "true" : null);

    /// <summary>Writes a key with <c>true</c> or <c>false</c>; nothing where neither is said.</summary>
    public void Truth(string key, bool? isSo) => Raw(key, isSo switch { true => "true", false => "false", _ => null });

    /// <summary>Writes a key with a list of words; nothing where there are none.</summary>
    public void List(string key, IEnumerable<string> values) => MaybeList(key, values.Any() ? values : null);

    /// <summary>Writes a key with a list of words, one without words too; nothing where it is null.</summary>
    public void MaybeList(string key, IEnumerable<string>? values) => Raw(key, values is null ? null : Words(values));

    /// <summary>Writes a key with a value in braces; nothing where it has no entries.</summary>
    public void Braces(string key, IEnumerable<(string Key, string? Value)> entries) => Raw(key, Inline(entries) is not "{}" and var text ? text : null);

    /// <summary>Writes a key with a list of which each item is written already; nothing where there are none.</summary>
    public void Lines(string key, IEnumerable<string> items)
    {
        var lines = items.ToArray();
        if (lines.Length == 0) return;
        _entries.Add((key, () => $"[{string.Join(", ", lines)}]", indent => string.Concat(lines.Select(line => $"{indent}    - {line}\n"))));
    }

    /// <summary>Writes a key with a record in braces; nothing where there is none.</summary>
    public void Record<T>(string key, T? record, Action<RecordText, T> write) where T : class =>
        Raw(key, record is null ? null : Braced(text => write(text, record)));

    /// <summary>Writes a key with records; nothing where there are none.</summary>
    /// <param name="key">The key.</param>
    /// <param name="records">The records.</param>
    /// <param name="write">Writes one.</param>
    /// <param name="inLines">Whether each key of a record stands on a line of its own; else a record stands in braces.</param>
    public void Records<T>(string key, IReadOnlyList<T> records, Action<RecordText, T> write, bool inLines)
    {
        if (!inLines) Lines(key, records.Select(one => Braced(text => write(text, one)) ?? "{}"));
        else if (records.Count > 0) _entries.Add((key, () => null, Below));

        string Below(string indent) => string.Concat(records.Select(one => Item((indent.Length / 2) + 2, text => write(text, one))));
    }

    /// <summary>A record in braces under a key of this one: the same one whenever it is asked for.</summary>
    public RecordText Within(string key)
    {
        if (_within.TryGetValue(key, out var known)) return known;
        var inner = _within[key] = new RecordText();
        _entries.Add((key, inner.Line, null));
        return inner;
    }

    /// <summary>Writes a key with a text that is YAML already; nothing where it is null.</summary>
    public void Raw(string key, string? yaml)
    {
        if (yaml is not null) _entries.Add((key, () => yaml, null));
    }

    private string? Line() => Inline(_entries.Select(one => (one.Key, one.Line()))) is not "{}" and var text ? text : null;

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
}
