using System.Globalization;

namespace Compat.Cli.Say;

/// <summary>Writes figures and ranges for people; a no-break space joins a figure and its unit.</summary>
internal static class FigureWording
{
    /// <summary>A strength given in percent of a basis, shown in a unit.</summary>
    public static string Strength(Interval percent, StrengthUnit? unit) =>
        unit is null ? Range(percent, "% of its basis") : Range(percent.Scale(1m / unit.PercentPerUnit), unit.Text);

    public static string Dilution(Interval share) =>
        share.IsPoint && share.Lower == 1m ? "undiluted" : Range(share.Scale(100m), "% v/v");

    public static string ExposureTime(Interval seconds)
    {
        if (seconds.IsPoint && seconds.Lower == Interval.WithoutEnd) return "without end";
        var ended = seconds.Upper == Interval.WithoutEnd
            ? new Interval(seconds.Lower, seconds.LowerIncluded, null, false)
            : seconds;
        return Range(ended, Duration);
    }

    public static string Temperature(Interval celsius) => Range(celsius, "°C");

    public static string Ph(Interval ph) => Range(ph, "");

    public static string Uses(Interval uses)
    {
        var fromOne = uses.Lower is 1m && !uses.IsPoint && uses.LowerIncluded
            ? new Interval(null, false, uses.Upper, uses.UpperIncluded)
            : uses;
        return fromOne.IsWhole ? "any number of" : Range(fromOne, "");
    }

    public static string CountOfUses(Interval uses) => uses is { IsPoint: true, Lower: 1m } ? "1\u00a0use" : Uses(uses) + "\u00a0uses";

    /// <summary>A time, in the largest of s, min, h and d that gives a whole number.</summary>
    public static string Duration(decimal seconds) => Interval.Duration(seconds).Replace(' ', '\u00a0');

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

/// <summary>Says boxes of exposures and what was taken for each axis.</summary>
internal static class ExposureWording
{
    /// <summary>The unit in which a question's strength is shown: its agent's own.</summary>
    public static StrengthUnit? Unit(Question question, Names names) => names.Unit(question.Agent);

    public static string Of(AllowedBox box, StrengthUnit? unit)
    {
        var parts = new List<string> { Words.Of(box.Method) };
        if (box.Strength is { } strength) parts.Add(Strength(strength, unit));
        if (box.Dilution is { } dilution) parts.Add(Dilution(dilution));
        AddCommon(parts, box.ExposureTime, box.Temperature, box.Ph, box.Uses);
        return string.Join("; ", parts);
    }

    public static string Of(MapCell cell, StrengthUnit? unit)
    {
        var parts = new List<string> { Words.Of(cell.Method) };
        if (unit is not null) parts.Add(Strength(cell.Strength, unit));
        AddCommon(parts, cell.ExposureTime, cell.Temperature, cell.Ph, cell.Uses);
        return string.Join("; ", parts);
    }

    public static string Asked(Question question, StrengthUnit? unit)
    {
        var parts = new List<string>();
        if (question.Method is { } method) parts.Add(Words.Of(method));
        if (question.Strength is { } strength) parts.Add("strength " + Strength(strength, unit));
        if (question.Dilution is { } dilution) parts.Add(Dilution(dilution));
        if (question.ExposureTime is { } exposureTime) parts.Add("exposure time " + FigureWording.ExposureTime(exposureTime));
        if (question.Temperature is { } temperature) parts.Add("temperature " + FigureWording.Temperature(temperature));
        if (question.Ph is { } ph) parts.Add("pH " + FigureWording.Ph(ph));
        if (question.Uses is { } uses) parts.Add(uses + "\u00a0uses");
        for (var i = 0; i < question.Acts.Count; i++) parts.Add("with " + Words.Of(question.Acts[i]));
        if (question.Serial is { } serial) parts.Add("serial number " + serial);
        parts.AddRange(NeedWording.Asked(question));
        return parts.Count == 0 ? "no axis stated" : string.Join("; ", parts);
    }

    /// <summary>What was taken for an axis the question left out, or null where it was stated.</summary>
    public static string? Of(Assumption assumption, StrengthUnit? unit)
    {
        if (assumption.Stated) return null;
        var axis = Axis(assumption.Axis);
        if (assumption.Axis is null)
            return $"{axis}: left out; you choose one of {assumption.Methods}";
        if (assumption.Axis == Space.Axis.Uses)
            return $"{axis}: left out; the answer gives the largest number that is allowed";
        var range = Range(assumption, unit);
        return assumption.Treatment switch
        {
            AxisTreatment.Free => $"{axis}: left out; you choose" + (assumption.Range.IsWhole || range == "any" ? "" : " within " + range),
            AxisTreatment.Uncertain => range == "any" || IsWhole(assumption.Axis.Value, assumption.Range)
                ? $"{axis}: left out, and no usual range is on record; the worst of all values counts"
                : $"{axis}: left out; the worst of {range} counts",
            _ => $"{axis}: {range}",
        };
    }

    public static string WouldBeAllowed(Assumption part, StrengthUnit? unit) =>
        part.Axis is null
            ? $"{part.Methods} would be allowed: state the method"
            : $"{Axis(part.Axis)} {Range(part, unit)} would be allowed: state the {Axis(part.Axis)}";

    internal static string Dilution(Interval share) => share is { IsPoint: true, Lower: 1m } ? "undiluted" : "dilution " + FigureWording.Dilution(share);

    private static bool IsWhole(Axis axis, Interval range) => range.IsWhole || axis switch
    {
        Space.Axis.Temperature => range is { Lower: null or -40m, Upper: null or 200m },
        Space.Axis.Ph => range is { Lower: null or -1m, Upper: null or 15m },
        Space.Axis.Strength => range is { Lower: null or 0m, Upper: null or 100m },
        _ => false,
    };

    private static string Axis(Axis? axis) => axis switch
    {
        null => "method",
        Space.Axis.Ph => "pH",
        _ => Words.Of(axis.Value).Replace('-', ' '),
    };

    private static string Range(Assumption assumption, StrengthUnit? unit) => assumption.Axis switch
    {
        Space.Axis.Strength => assumption.Range.IsWhole ? "any" : FigureWording.Strength(assumption.Range, unit),
        Space.Axis.Dilution => FigureWording.Dilution(assumption.Range),
        Space.Axis.ExposureTime => FigureWording.ExposureTime(assumption.Range),
        Space.Axis.Temperature => FigureWording.Temperature(assumption.Range),
        Space.Axis.Ph => FigureWording.Ph(assumption.Range),
        _ => FigureWording.Uses(assumption.Range),
    };

    private static string Strength(Strength asked, StrengthUnit? unit) =>
        unit is not null && unit.Basis == asked.Unit.Basis
            ? FigureWording.Strength(asked.Percent, unit)
            : FigureWording.Strength(asked.Percent, StrengthUnit.PercentOf(asked.Unit.Basis));

    private static string Strength(Interval percent, StrengthUnit? unit) =>
        IsWhole(Space.Axis.Strength, percent) ? "any strength" : "strength " + FigureWording.Strength(percent, unit);

    private static void AddCommon(List<string> parts, Interval exposureTime, Interval temperature, Interval ph, Interval uses)
    {
        parts.Add(exposureTime.Upper is null or Interval.WithoutEnd && exposureTime.Lower is null or 0m
            ? "any exposure time"
            : "exposure time " + FigureWording.ExposureTime(exposureTime));
        parts.Add(IsWhole(Space.Axis.Temperature, temperature) ? "any temperature" : FigureWording.Temperature(temperature));
        parts.Add(IsWhole(Space.Axis.Ph, ph) ? "any pH" : "pH " + FigureWording.Ph(ph));
        parts.Add(FigureWording.CountOfUses(uses));
    }
}
