using System.Globalization;
using System.Text.RegularExpressions;
using Compat.Curation.Yaml;

namespace Compat.Curation.Schemas;

/// <summary>Tells what a value without quotes would be to other YAML readers; here only the schema says what it is.</summary>
internal static partial class ScalarText
{
    /// <summary>What other readers take a value without quotes for, or null where they take it for text.</summary>
    public static string? MistakenFor(string text)
    {
        if (Truth().IsMatch(text)) return "true or false";
        if (Nothing().IsMatch(text)) return "nothing";
        return NumberLike().IsMatch(text) ? "a number" : null;
    }

    /// <summary>Reads a plain decimal number: no exponent, no leading zero, no sign but a minus, no digit that would be rounded away.</summary>
    public static bool TryReadNumber(string text, out decimal number)
    {
        number = 0;
        return text.Length <= 31 && PlainNumber().IsMatch(text)
            && decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)
            && (text.Length <= 24 || number.ToString(CultureInfo.InvariantCulture) == text);
    }

    /// <summary>A value written as true or false; null where it is neither.</summary>
    public static bool? TruthOf(YamlScalar scalar) => scalar.IsPlain && scalar.Text is "true" or "false" ? scalar.Text == "true" : null;

    /// <summary>A value written as a number; null where it is none, or not a whole one where that is asked.</summary>
    public static decimal? NumberOf(YamlScalar scalar, bool whole) =>
        scalar.IsPlain && TryReadNumber(scalar.Text, out var number) && (!whole || number == decimal.Truncate(number)) ? number : null;

    [GeneratedRegex(@"^(y|n|yes|no|on|off|true|false)\z", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Truth();

    [GeneratedRegex(@"^(~|null)\z", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Nothing();

    [GeneratedRegex(@"^[-+]?([0-9][0-9_,]*(\.[0-9_]*)?(e[-+]?[0-9]+)?|\.[0-9]+(e[-+]?[0-9]+)?|0x[0-9a-f]+|0o[0-7]+|[0-9]+(:[0-9]{1,2})+(\.[0-9]*)?|\.inf)\z|^\.?nan\z",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NumberLike();

    [GeneratedRegex(@"^-?(0|[1-9][0-9]*)(\.[0-9]+)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex PlainNumber();
}
