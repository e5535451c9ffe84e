using System.Globalization;
using System.Text.RegularExpressions;

namespace Compat.Curation.Text;

/// <summary>Reads figures: plain decimal, at most <see cref="MaximumDigits"/> significant digits.</summary>
internal static partial class Figure
{
    /// <summary>How many significant digits a figure may have, and how many behind its point.</summary>
    public const int MaximumDigits = 12;

    /// <summary>Splits a text into a figure at its start and the unit behind it.</summary>
    public static TextFault? TrySplit(string text, out decimal number, out string unit)
    {
        number = 0;
        unit = "";
        var length = LengthOf(text);
        if (length == 0)
        {
            return Endless().IsMatch(text)
                ? new($"`{text}` is no figure that can be measured")
                : new(text.Length == 0 ? "a figure is missing" : $"a figure is expected, read `{text}`");
        }

        var figure = text[..length];
        unit = text[figure.Length..].TrimStart(' ');
        var digits = figure.Replace("-", "", StringComparison.Ordinal);
        if (figure[0] == '+') return new($"`{figure}` has a plus sign", "leave the sign out");
        if (figure.Contains('e', StringComparison.OrdinalIgnoreCase)) return new($"`{figure}` has an exponent", "write the figure out");
        if (figure.Contains(',', StringComparison.Ordinal)) return new($"`{figure}` has a comma", "write a decimal point, and no mark between thousands");
        if (figure.Contains(':', StringComparison.Ordinal))
            return new($"`{figure}` is no figure", "write one figure with its unit: `90 s`, `2 % v/v`; the share of a product goes to `dilution`: `1 in 50`");
        if (figure.Contains('_', StringComparison.Ordinal)) return new($"`{figure}` has a `_` in it", "write the digits only");
        if (digits.Length > 1 && digits[0] == '0' && digits[1] != '.') return new($"`{figure}` has a leading zero", "leave it out");
        if (digits[0] == '.' || digits[^1] == '.') return new($"`{figure}` lacks a digit beside its point", "write `0.5`, not `.5`");
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var significant = digits.Replace(".", "", StringComparison.Ordinal).TrimStart('0').Length;
        if (significant > MaximumDigits || (point >= 0 && digits.Length - point - 1 > MaximumDigits))
            return new($"`{figure}` has more than {MaximumDigits} digits", "no source measures so finely: round it");
        number = decimal.Parse(figure, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return null;
    }

    /// <summary>
    /// How much of a text's start is meant as a figure, well written or not: a sign, digits with `_`, `,` or `:` among them, a point that is no `..`, an
    /// exponent.
    /// </summary>
    /// <remarks>Scanned by hand: a regular expression would be the slowest thing in the start of a question.</remarks>
    private static int LengthOf(string text)
    {
        var at = IsAt(text, 0, '-') || IsAt(text, 0, '+') ? 1 : 0;
        if (IsDigitAt(text, at))
        {
            while (IsDigitAt(text, at) || IsAt(text, at, '_') || ((IsAt(text, at, ',') || IsAt(text, at, ':')) && IsDigitAt(text, at + 1))) at++;
            if (IsAt(text, at, '.') && !IsAt(text, at + 1, '.')) at = AfterDigits(text, at + 1);
        }
        else if (IsAt(text, at, '.') && IsDigitAt(text, at + 1))
        {
            at = AfterDigits(text, at + 1);
        }
        else
        {
            return 0;
        }

        if (!IsAt(text, at, 'e') && !IsAt(text, at, 'E')) return at;
        var exponent = IsAt(text, at + 1, '-') || IsAt(text, at + 1, '+') ? at + 2 : at + 1;
        return IsDigitAt(text, exponent) ? AfterDigits(text, exponent) : at;
    }

    private static bool IsAt(string text, int at, char expected) => at < text.Length && text[at] == expected;

    private static bool IsDigitAt(string text, int at) => at < text.Length && char.IsAsciiDigit(text[at]);

    private static int AfterDigits(string text, int at)
    {
        while (IsDigitAt(text, at)) at++;
        return at;
    }

    [GeneratedRegex(@"^[-+]?\.?(inf|infinity|nan|∞)\b|^[-+]?∞", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Endless();
}
