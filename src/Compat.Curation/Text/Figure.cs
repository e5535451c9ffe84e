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
        var match = Start().Match(text);
        if (!match.Success)
        {
            return Endless().IsMatch(text)
                ? new($"`{text}` is no figure that can be measured")
                : new(text.Length == 0 ? "a figure is missing" : $"a figure is expected, read `{text}`");
        }

        var figure = match.Value;
        unit = text[figure.Length..].TrimStart(' ');
        var digits = figure.Replace("-", "", StringComparison.Ordinal);
        if (figure[0] == '+') return new($"`{figure}` has a plus sign", "leave the sign out");
        if (figure.Contains('e', StringComparison.OrdinalIgnoreCase)) return new($"`{figure}` has an exponent", "write the figure out");
        if (figure.Contains(',', StringComparison.Ordinal)) return new($"`{figure}` has a comma", "write a decimal point, and no mark between thousands");
        if (figure.Contains(':', StringComparison.Ordinal)) return new($"`{figure}` is no figure", "write minutes and seconds as one figure with its unit");
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

    [GeneratedRegex(@"^[-+]?(?:[0-9](?:[0-9_]|,(?=[0-9])|:(?=[0-9]))*(?:\.(?!\.)[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?", RegexOptions.CultureInvariant)]
    private static partial Regex Start();

    [GeneratedRegex(@"^[-+]?\.?(inf|infinity|nan|∞)\b|^[-+]?∞", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Endless();
}
