using System.Globalization;

namespace Compat.Cli.Wording;

/// <summary>Writes figures and ranges for people; a no-break space joins a figure and its unit.</summary>
public static class FigureWording
{
    /// <summary>A strength given in percent of a basis, shown in a unit.</summary>
    public static string Strength(Interval percent, StrengthUnit? unit) =>
        unit is null ? Range(percent, "% of its basis") : Range(percent.Scale(1m / unit.PercentPerUnit), unit.Text);

    /// <summary>Shares of volume as % v/v.</summary>
    public static string Dilution(Interval share) =>
        share.IsPoint && share.Lower == 1m ? "undiluted" : Range(share.Scale(100m), "% v/v");

    /// <summary>An exposure time.</summary>
    public static string ExposureTime(Interval seconds)
    {
        if (seconds.IsPoint && seconds.Lower == Interval.WithoutEnd) return "without end";
        var ended = seconds.Upper == Interval.WithoutEnd
            ? new Interval(seconds.Lower, seconds.LowerIncluded, null, false)
            : seconds;
        return Range(ended, Duration);
    }

    /// <summary>Temperatures.</summary>
    public static string Temperature(Interval celsius) => Range(celsius, "°C");

    /// <summary>A pH.</summary>
    public static string Ph(Interval ph) => Range(ph, "");

    /// <summary>Uses, counted from 1.</summary>
    public static string Uses(Interval uses)
    {
        var fromOne = uses.Lower is 1m && !uses.IsPoint && uses.LowerIncluded
            ? new Interval(null, false, uses.Upper, uses.UpperIncluded)
            : uses;
        return fromOne.IsWhole ? "any number of" : Range(fromOne, "");
    }

    /// <summary>A number of uses, with the word.</summary>
    public static string CountOfUses(Interval uses) => uses is { IsPoint: true, Lower: 1m } ? "1\u00a0use" : Uses(uses) + "\u00a0uses";

    /// <summary>A time, in the largest of s, min, h and d that gives a whole number.</summary>
    public static string Duration(decimal seconds) => Interval.Duration(seconds).Replace(' ', '\u00a0');

    /// <summary>A number in plain decimals.</summary>
    public static string Number(decimal value) => value.ToString("0.##########", CultureInfo.InvariantCulture);

    private static string Range(Interval range, string unit)
    {
        var tail = unit.Length == 0 ? "" : "\u00a0" + unit.Replace(' ', '\u00a0');
        if (range is { Lower: { } low, Upper: { } high, IsPoint: false } && low > 0)
        {
            return (range.LowerIncluded ? "" : "above ") + Number(low) + " to " + (range.UpperIncluded ? "" : "below ") + Number(high) + tail;
        }

        return Range(range, value => Number(value) + tail);
    }

    private static string Range(Interval range, Func<decimal, string> figure)
    {
        if (range.IsWhole) return "any";
        if (range.IsPoint) return figure(range.Lower!.Value);
        if (range.Upper is not { } high)
            return range.Lower == 0m ? "any" : (range.LowerIncluded ? "at least " : "above ") + figure(range.Lower!.Value);
        var end = (range.UpperIncluded ? "up to " : "below ") + figure(high);
        return range.Lower is not { } low || low == 0m
            ? end
            : (range.LowerIncluded ? "" : "above ") + figure(low) + (range.UpperIncluded ? " to " : " to below ") + figure(high);
    }
}
