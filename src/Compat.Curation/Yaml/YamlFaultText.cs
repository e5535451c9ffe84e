namespace Compat.Curation.Yaml;

/// <summary>Puts the scanner's complaints into the words of the other diagnostics.</summary>
internal static class YamlFaultText
{
    /// <summary>What is said where the scanner itself breaks off.</summary>
    public const string Unreadable = "the text cannot be read from here on";

    private static readonly (string Part, string Message, string? Help)[] Known =
    [
        ("found invalid mapping", "a `: ` or a line that is indented otherwise stands in a text",
            "put a text that holds `: ` in quotes; indent keys of one record alike"),
        ("found wrong indentation", "a quoted text goes on in a line that is not indented: its closing quote is missing",
            "write the closing quote on the same line"),
        ("did not find expected <document", "the file goes on where it should end", "check the indentation: all records of a file begin in one column"),
        ("did not find expected node content", "a value is expected here", "write it, or take the sign before it away"),
        ("invalid Unicode surrogates", "an escape writes half a character", "write the character itself"),
        ("invalid Unicode character", "an escape writes no character", "write the character itself"),
        ("invalid key indicator", "a `?` cannot stand here", "put a text that begins with `?` in quotes"),
        (Unreadable, Unreadable, "check the quotes, brackets and indentation just before it"),
        ("mapping values are not allowed", "a `: ` stands where no key can be", "quote a text that holds `: `; check the indentation"),
        ("did not find expected ',' or ']'", "a list in brackets is not closed", "write `,` between items and `]` behind the last"),
        ("did not find expected ',' or '}'", "a mapping in braces is not closed", "write `,` between entries and `}` behind the last"),
        ("did not find expected key", "a key is expected here", "check the indentation"),
        ("did not find expected '-' indicator", "a list item `- ` is expected here", "check the indentation"),
        ("could not find expected ':'", "a `:` is missing behind a key", "write `key: value`; a key is at most 1,024 characters on one line"),
        ("found unexpected end of stream", "a quoted text is not closed", "write the closing quote"),
        ("found character that cannot start any token", "no value can begin with this character", "quote the text"),
        ("unknown escape", "this escape is not known", "write the character itself, or use single quotes"),
        ("block sequence entries are not allowed", "a list item `- ` cannot stand here", "check the indentation"),
    ];

    /// <summary>Message and help for a complaint.</summary>
    public static (string Message, string? Help) Of(string complaint)
    {
        foreach (var (part, message, help) in Known)
            if (complaint.Contains(part, StringComparison.OrdinalIgnoreCase)) return (message, help);
        var text = complaint.TrimEnd('.').Replace('\'', '`');
        return (text.Length == 0 ? "this is no YAML" : char.ToLowerInvariant(text[0]) + text[1..], null);
    }
}
