using System.Text.RegularExpressions;

namespace Compat.Curation.Text;

/// <summary>Reads dilutions: the share of a product's volume in the finished liquid.</summary>
internal static partial class DilutionText
{
    /// <summary>Reads <c>undiluted</c>, <c>1 in 50</c>, <c>1 + 49</c> or a range in % v/v, as a share above 0 to 1.</summary>
    /// <remarks>A share that is no finite decimal (1 in 30) becomes the narrow range around it, cut outward at 12 digits.</remarks>
    public static TextFault? TryRead(string text, bool takesBare, out Interval share)
    {
        share = default;
        text = text.Trim();
        if (text == "undiluted")
        {
            share = Interval.Exactly(1);
            return null;
        }

        var ratio = Ratio().Match(text);
        if (ratio.Success)
            return new($"`{text}` is read two ways",
                $"write `{ratio.Groups[1].Value} in {ratio.Groups[2].Value}` (parts in the whole) or `{ratio.Groups[1].Value} + {ratio.Groups[2].Value}` "
                    + $"(parts and parts of water)");
        var parts = Parts().Match(text);
        if (!parts.Success) return Measure.Dilution.TryRead(text, takesBare, out share);
        if (Figure.TrySplit(parts.Groups[1].Value, out var product, out _) is { } fault) return fault;
        if (Figure.TrySplit(parts.Groups[3].Value, out var rest, out _) is { } second) return second;
        var whole = parts.Groups[2].Value == "+" ? product + rest : rest;
        if (product <= 0 || whole < product) return new($"`{text}` is no dilution: the product is above 0 and at most the whole");
        share = Share(product, whole);
        return null;
    }

    private static Interval Share(decimal product, decimal whole)
    {
        var low = decimal.Round(product / whole, Figure.MaximumDigits, MidpointRounding.ToZero);
        if (low * whole == product) return Interval.Exactly(low);
        return Interval.Closed(low, low + 0.000000000001m);
    }

    [GeneratedRegex(@"^([0-9.,]+)\s*[:/]\s*([0-9.,]+)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Ratio();

    [GeneratedRegex(@"^([0-9][0-9.,eE]*)\s*(in\s|\+)\s*([0-9][0-9.,eE]*)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}
