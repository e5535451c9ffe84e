using System.Globalization;
using System.Text.RegularExpressions;
using Compat.Curation.Schemas;
using Compat.Curation.Text;

namespace Compat.Curation.Formatting;

/// <summary>
/// Spells ranges, figures and dilutions in one way: <c>&lt;= 70 % v/v</c>, <c>60..80 % v/v</c>, <c>&gt; 5 and &lt; 10</c>, <c>2 min</c>, <c>1 in 50</c>.
/// </summary>
/// <remarks>Figures keep their digits and their units: a formatter does not convert.</remarks>
internal static partial class MeasuredText
{
    private static readonly HashSet<string> Units = new(
        StrengthUnit.Texts.Concat(
            new[] { Measure.ExposureTime, Measure.Temperature, Measure.Ph, Measure.Density, Measure.Share, Measure.Volume }.SelectMany(
                one => one.Units.Select(unit => unit.Unit)))
            .Concat(["ppm", "ppb", "mg/m³"]),
        StringComparer.Ordinal);

    /// <summary>Whether a schema's place holds something measured: a short text that is no word. Free texts are longer.</summary>
    public static bool Takes(SchemaShape shape) => shape is { Type: "string", IsWord: false, IsFreeText: false };

    /// <summary>Whether a text is something measured, with a known unit or with none.</summary>
    public static bool Is(string text) => Spell(text) is not null;

    /// <summary>The one spelling of a measured text; null where it is none.</summary>
    public static string? Spell(string text)
    {
        if (Parts().Match(text) is { Success: true } parts)
        {
            var sign = parts.Groups[2].Value == "+" ? "+" : "in";
            return $"{parts.Groups[1].Value} {sign} {parts.Groups[3].Value}";
        }

        if (RangeText.TryRead(text, takesBare: true, out var range) is not null || !IsKnown(range.Low) || !IsKnown(range.High)) return null;
        var spelt = Spell(text.Trim(), range);
        return RangeText.TryRead(spelt, takesBare: true, out var again) is null && again == range ? spelt : null;
    }

    /// <summary>Whether two texts measure the same.</summary>
    public static bool AreSame(string one, string other)
    {
        if (RangeText.TryRead(one, true, out var first) is null && RangeText.TryRead(other, true, out var second) is null && first == second) return true;
        return DilutionText.TryRead(one, true, out var share) is null && DilutionText.TryRead(other, true, out var otherShare) is null && share == otherShare;
    }

    private static string Spell(string text, RangeText range)
    {
        if (range.Low is not { } low) return (range.HighIncluded ? "<= " : "< ") + Figure(range.High!);
        if (range.High is not { } high) return (range.LowIncluded ? ">= " : "> ") + Figure(low);
        var isBare = text[0] != '=' && !text.Contains("..", StringComparison.Ordinal) && !text.Contains(" and ", StringComparison.Ordinal);
        if (isBare) return Figure(low);
        if (text[0] == '=') return "= " + Figure(low);
        var first = low.Unit == high.Unit ? Number(low) : Figure(low);
        return range is { LowIncluded: true, HighIncluded: true }
            ? $"{first}..{Figure(high)}"
            : $"{(range.LowIncluded ? ">=" : ">")} {first} and {(range.HighIncluded ? "<=" : "<")} {Figure(high)}";
    }

    private static bool IsKnown(RangeEnd? end) => end is null || Units.Contains(end.Unit);

    private static string Figure(RangeEnd end) => end.Unit.Length == 0 ? Number(end) : $"{Number(end)} {end.Unit}";

    private static string Number(RangeEnd end) => end.Number.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\s*([0-9]+(?:\.[0-9]+)?)\s*(in|\+)\s*([0-9]+(?:\.[0-9]+)?)\s*\z", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}
