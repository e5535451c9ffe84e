using System.Globalization;
using System.Text.RegularExpressions;
using Compat.Curation.Diagnostics;
using Compat.Validation;

namespace Compat.Curation.Yaml;

/// <summary>Refuses characters that cannot be seen or that editors and YAML count differently.</summary>
internal static partial class CharacterCheck
{
    /// <summary>Checks a file.</summary>
    /// <param name="faults">The file, and where faults go.</param>
    /// <param name="text">The text to read on with, tabs behind other characters read as spaces.</param>
    /// <returns>Whether the text can be read on.</returns>
    public static bool Passes(DiagnosticList faults, out string text)
    {
        text = faults.Source.Text;
        var passes = true;
        var tabs = false;
        var atStart = true;
        for (var i = 0; i < text.Length && !faults.IsFull; i++)
        {
            var c = text[i];
            if (c is '\n' or '\r')
            {
                atStart = true;
            }
            else if (c == '\t')
            {
                var end = i + 1;
                while (end < text.Length && text[end] == '\t') end++;
                faults.Add(
                    TextSpan.Between(i, end),
                    "tab",
                    atStart ? "a tab in the indentation" : "a tab",
                    "use spaces");
                if (atStart) passes = false;
                tabs = true;
                i = end - 1;
            }
            else if (HiddenText.IsHidden(text, i, out var length))
            {
                Refuse(faults, new(i, length), text, i);
                passes = false;
                i += length - 1;
            }
            else if (c != ' ')
            {
                atStart = false;
                i += length - 1;
            }
        }

        if (tabs) text = text.Replace('\t', ' ');
        return passes && !faults.IsFull;
    }

    /// <summary>
    /// Refuses a value that holds a hidden character: written as an escape, or as a text of several lines. No text of a record may have a line break.
    /// </summary>
    /// <param name="faults">The file, and where faults go.</param>
    /// <param name="value">The value, escapes undone.</param>
    /// <param name="span">Where it stands, quotes included.</param>
    /// <returns>Whether there is none.</returns>
    public static bool Passes(DiagnosticList faults, string value, TextSpan span)
    {
        var at = HiddenText.Find(value, out _);
        if (at < 0) return true;
        var written = faults.Source.Excerpt(span);
        if (HiddenText.Find(written, out var length) is var raw and >= 0 && written[raw] is not ('\r' or '\n'))
        {
            Refuse(faults, new(span.Start + raw, length), written, raw);
            return false;
        }

        foreach (var escape in Escape().EnumerateMatches(written))
        {
            if (!Hides(written.AsSpan(escape.Index, escape.Length))) continue;
            Refuse(faults, new(span.Start + escape.Index, escape.Length), value, at);
            return false;
        }

        faults.Add(span with { Length = Math.Min(1, span.Length) }, "character", "a text of several lines", "write it on one line");
        return false;
    }

    private static void Refuse(DiagnosticList faults, TextSpan span, string text, int at) =>
        faults.Add(span, "character", $"the character {HiddenText.NameAt(text, at)} cannot be seen", "leave it out");

    /// <summary>Whether an escape writes a hidden character; a backslash, a quote and a slash can be written as escapes too.</summary>
    private static bool Hides(ReadOnlySpan<char> escape)
    {
        if (escape.Length == 2) return !"\\\"/' ".Contains(escape[1], StringComparison.Ordinal);
        return !int.TryParse(escape[2..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var code)
            || code is > 0x10FFFF or (>= 0xD800 and <= 0xDFFF)
            || HiddenText.Find(char.ConvertFromUtf32(code), out _) >= 0;
    }

    [GeneratedRegex(@"\\(x[0-9A-Fa-f]{2}|u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|[^\r\n])", RegexOptions.CultureInvariant)]
    private static partial Regex Escape();
}
