using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>Spells single values: on one line, without quotes where the text would be read back as it is, else in double quotes.</summary>
internal static partial class ScalarSpelling
{
    private const string Indicators = "-?:,[]{}#&*!|>'\"%@`<=~";
    private static readonly SearchValues<char> FlowSigns = SearchValues.Create(",[]{}:");

    /// <summary>A value as it is written.</summary>
    /// <param name="value">The value.</param>
    /// <param name="written">Its text in the file, quotes included.</param>
    /// <param name="shape">What the schema says of it.</param>
    /// <param name="inFlow">Whether it stands in brackets or braces.</param>
    public static string Of(YamlScalar value, string written, SchemaShape shape, bool inFlow)
    {
        if (shape.Type is "boolean" or "integer" or "number") return written;
        var text = MeasuredText.Takes(shape) ? MeasuredText.Spell(value.Text) ?? value.Text : value.Text;
        return CanBePlain(text, inFlow) ? text : Quoted(text);
    }

    /// <summary>A key as it is written.</summary>
    public static string OfKey(YamlScalar key) => CanBePlain(key.Text, inFlow: true) ? key.Text : Quoted(key.Text);

    /// <summary>The comment behind the sign of a text over several lines (<c>|</c>, <c>&gt;</c>); null where there is none.</summary>
    public static string? HeadComment(string written)
    {
        if (written.Length == 0 || written[0] is not ('|' or '>')) return null;
        var line = written.Split('\n')[0];
        var at = line.IndexOf(" #", StringComparison.Ordinal);
        return at < 0 ? null : line[(at + 1)..].TrimEnd(' ');
    }

    /// <summary>Whether a text without quotes is read back as that text, here and by other readers, and is nothing measured.</summary>
    /// <remarks>Figures and signs without a letter, a CAS number for example, are quoted: others take some for dates or times. Dates are not.</remarks>
    private static bool CanBePlain(string text, bool inFlow)
    {
        if (text.Length == 0 || text[0] == ' ' || text[^1] is ' ' or ':' || Indicators.Contains(text[0], StringComparison.Ordinal)) return false;
        if (text.Contains(": ", StringComparison.Ordinal) || text.Contains(" #", StringComparison.Ordinal)) return false;
        if (inFlow && text.AsSpan().ContainsAny(FlowSigns)) return false;
        for (var i = 0; i < text.Length; i++)
            if (DiagnosticText.IsUnprintable(text[i]) || IsLoneSurrogate(text, i)) return false;
        return ScalarText.MistakenFor(text) is null && !MeasuredText.Is(text) && (text.Any(char.IsLetter) || Date().IsMatch(text));
    }

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"", text.Length + 2);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            quoted.Append(c switch
            {
                '"' => "\\\"",
                '\\' => "\\\\",
                '\n' => "\\n",
                '\r' => "\\r",
                '\t' => "\\t",
                _ when DiagnosticText.IsUnprintable(c) || IsLoneSurrogate(text, i) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"),
                _ => c.ToString(),
            });
        }

        return quoted.Append('"').ToString();
    }

    [GeneratedRegex(@"^[0-9]{4}-[0-9]{2}-[0-9]{2}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Date();

    private static bool IsLoneSurrogate(string text, int at) =>
        (char.IsHighSurrogate(text[at]) && (at + 1 == text.Length || !char.IsLowSurrogate(text[at + 1])))
        || (char.IsLowSurrogate(text[at]) && (at == 0 || !char.IsHighSurrogate(text[at - 1])));
}
