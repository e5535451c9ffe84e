using Compat.Validation;

namespace Compat.Curation.Text;

/// <summary>One quantity that is measured: its units, and between which ends it lies.</summary>
/// <param name="Name">What it is called in messages.</param>
/// <param name="Units">Its units with the factor to the unit of the model; a single empty one where it has none.</param>
/// <param name="Least">The least value, in the unit of the model.</param>
/// <param name="LeastIncluded">Whether the least value itself is one.</param>
/// <param name="Most">The greatest value, itself included.</param>
/// <param name="Bounds">Its ends in words.</param>
/// <param name="Whole">Whether only whole numbers are values.</param>
internal sealed record Measure(
    string Name, IReadOnlyList<(string Unit, decimal Factor)> Units, decimal Least, bool LeastIncluded, decimal Most, string Bounds, bool Whole = false)
{
    private static readonly (string, decimal)[] NoUnit = [("", 1m)];

    public static Measure ExposureTime { get; } = new("exposure time", [("s", 1), ("min", 60), ("h", 3600), ("d", 86400)], 0, false, 1e15m, "above 0");

    public static Measure Duration { get; } = ExposureTime with { Name = "time" };

    public static Measure ContactTime { get; } = ExposureTime with { Name = "contact time" };

    /// <summary>
    /// How long a product keeps: longer than anything else that is timed, so days and weeks may be spelt out. No month: it has no one length.
    /// </summary>
    public static Measure Life { get; } = new("life",
        [("s", 1), ("min", 60), ("h", 3600), ("d", 86400), ("day", 86400), ("days", 86400), ("week", 604800), ("weeks", 604800)], 0, false, 1e15m, "above 0");

    public static Measure Hardness { get; } = new("hardness", [("mg/L CaCO3", 1)], 0, true, 10_000, "0 to 10000 mg/L CaCO3");

    public static Measure Temperature { get; } = new("temperature", [("°C", 1)], -40, true, 200, "-40..200 °C");

    public static Measure FlashPoint { get; } = Temperature with { Name = "flash point", Least = -150, Most = 500, Bounds = "-150..500 °C" };

    public static Measure Ph { get; } = new("pH", NoUnit, -1, true, 15, "-1..15");

    public static Measure Uses { get; } = new("uses", NoUnit, 1, true, 1_000_000_000, "1 to 1000000000", Whole: true);

    public static Measure Products { get; } = Uses with { Name = "products", Most = 100, Bounds = "1 to 100" };

    public static Measure Numeral { get; } = new("numerals", NoUnit, 0, true, 9, "0 to 9", Whole: true);

    public static Measure Dilution { get; } = new("dilution", [("% v/v", 0.01m)], 0, false, 1, "above 0 to 100 % v/v");

    public static Measure Density { get; } = new("density", [("kg/L", 1)], 0.1m, true, 25, "0.1..25 kg/L");

    public static Measure Share { get; } = new("share", [("%", 0.01m)], 0, false, 1, "above 0 to 100 %");

    public static Measure Part { get; } = new("a sum of shares", NoUnit, 0, false, 1, "above 0 to 1");

    public static Measure Volume { get; } = new("volume", [("L", 1), ("mL", 0.001m)], 0, false, 1_000_000, "above 0");

    public static Measure Mass { get; } = new("mass", [("kg", 1), ("g", 0.001m)], 0, false, 1_000_000, "above 0");

    /// <summary>The measure of an axis; strength has its own (<see cref="StrengthText"/>).</summary>
    public static Measure Of(Axis axis) => axis switch
    {
        Axis.ExposureTime => ExposureTime,
        Axis.Temperature => Temperature,
        Axis.Ph => Ph,
        Axis.Uses => Uses,
        Axis.Dilution => Dilution,
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };

    /// <summary>What a convention measures.</summary>
    public static Measure Of(ConventionKey key) => key switch
    {
        ConventionKey.UnstatedExposureTime or ConventionKey.DryingTime => ExposureTime,
        ConventionKey.WindowLeast => Duration,
        ConventionKey.WindowShare => Share,
        ConventionKey.MostProducts => Products,
        ConventionKey.IngressWetWipe or ConventionKey.IngressSpray or ConventionKey.IngressRinse or ConventionKey.IngressImmerse => Numeral,
        ConventionKey.UsesShare => Part,
        ConventionKey.UnstatedTemperature or ConventionKey.AssumedTemperature or ConventionKey.ClaimTemperature => Temperature,
        ConventionKey.UnstatedPh or ConventionKey.WaterPh or ConventionKey.PurifiedWaterPh => Ph,
        ConventionKey.UnstatedUses => Uses,
        ConventionKey.UnstatedDilution => Dilution,
        _ => Density,
    };

    /// <summary>Reads a range and brings it to the unit of the model.</summary>
    public TextFault? TryRead(string text, bool takesBare, out Interval range)
    {
        range = default;
        return RangeText.TryRead(text, takesBare, out var written) is { } fault
            ? fault
            : TryResolve(text, written, Factor, out range);
    }

    /// <summary>Reads a single figure.</summary>
    public TextFault? TryReadFigure(string text, out decimal value)
    {
        value = 0;
        text = text.Trim();
        if (Figure.TrySplit(text, out var number, out var unit) is { } fault) return fault;
        var end = new RangeEnd(number, unit);
        if (TryResolve(text, new(end, true, end, true), Factor, out var range) is { } second) return second;
        value = range.Lower!.Value;
        return null;
    }

    /// <summary>Brings a range to the unit of the model, by the factor of each unit, and holds it against the ends of the measure.</summary>
    public TextFault? TryResolve(string text, RangeText written, FactorOf factorOf, out Interval range)
    {
        range = default;
        decimal? low = null, high = null;
        if (written.Low is { } lowEnd)
        {
            if (factorOf(lowEnd, out var factor) is { } fault) return fault;
            low = lowEnd.Number * factor;
        }

        if (written.High is { } highEnd)
        {
            if (factorOf(highEnd, out var factor) is { } fault) return fault;
            high = highEnd.Number * factor;
        }

        var made = new Interval(low, written.LowIncluded, high, written.HighIncluded);
        if (made.IsEmpty)
        {
            return new(low > high
                ? $"`{text.Trim()}` is empty: its lower end is above its upper end"
                : $"`{text.Trim()}` is empty: no value lies in it");
        }

        if ((low is { } l && IsOutside(l, written.LowIncluded))
            || (high is { } h && (IsOutside(h, written.HighIncluded) || (h == Least && !written.HighIncluded))))
            return new($"`{text.Trim()}` reaches outside of what {Name} can be ({Bounds})");
        if (Whole && ((low is { } a && a != decimal.Truncate(a)) || (high is { } b && b != decimal.Truncate(b))))
            return new($"`{text.Trim()}`: {Name} are whole numbers");
        range = made;
        return null;
    }

    /// <summary>Finds the factor of an end's unit.</summary>
    public delegate TextFault? FactorOf(RangeEnd end, out decimal factor);

    private bool IsOutside(decimal value, bool included) =>
        value > Most || value < Least || (value == Least && included && !LeastIncluded);

    private TextFault? Factor(RangeEnd end, out decimal factor)
    {
        foreach (var (unit, known) in Units)
        {
            if (unit != end.Unit) continue;
            factor = known;
            return null;
        }

        factor = 0;
        var names = Units.Select(unit => unit.Unit).ToArray();
        if (names[0].Length == 0) return new($"{Name} {(Whole ? "have" : "has")} no unit, read `{end.Unit}`");
        var quoted = names.Select(name => $"`{name}`").ToArray();
        var listed = quoted.Length == 1 ? quoted[0] : string.Join(", ", quoted[..^1]) + " or " + quoted[^1];
        return end.Unit.Length == 0
            ? new($"{Name} without a unit", "write " + listed)
            : new($"`{end.Unit}` is no unit of {Name}", (end.Unit.Length > 1 ? NearestNames.Help(end.Unit, names) : null) ?? "write " + listed);
    }
}
