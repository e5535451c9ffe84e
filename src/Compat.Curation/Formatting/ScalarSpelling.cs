using System.Buffers;
using System.Text;
using System.Text.RegularExpressions;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Compat.Validation;

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
    /// <param name="beforeComment">Whether a comment stands behind it: free text is then quoted, so that nobody takes the comment for its end.</param>
    public static string Of(YamlScalar value, string written, SchemaShape shape, bool inFlow, bool beforeComment)
    {
        if (shape.Type is "boolean" or "integer" or "number") return written;
        var text = MeasuredText.Takes(shape) ? MeasuredText.Spell(value.Text) ?? value.Text : value.Text;
        return CanBePlain(text, inFlow) && !(beforeComment && shape.IsFreeText) ? text : Quoted(text);
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
        if (HiddenText.Find(text, out _) >= 0) return false;
        return ScalarText.MistakenFor(text) is null && !MeasuredText.Is(text) && (text.Any(char.IsLetter) || Date().IsMatch(text));
    }

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"", text.Length + 2);
        foreach (var c in text)
        {
            if (c is '"' or '\\') quoted.Append('\\');
            quoted.Append(c);
        }

        return quoted.Append('"').ToString();
    }

    [GeneratedRegex(@"^[0-9]{4}-[0-9]{2}-[0-9]{2}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Date();
}
