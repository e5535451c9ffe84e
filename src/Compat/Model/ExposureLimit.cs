using System.Globalization;

namespace Compat.Model;

/// <summary>Over which time a limit of exposure is measured.</summary>
public enum LimitKind
{
    /// <summary>Never above it.</summary>
    Ceiling,

    /// <summary>The mean of fifteen minutes.</summary>
    FifteenMinutes,

    /// <summary>The mean of a working day of eight hours.</summary>
    EightHours,
}

/// <summary>How much of a substance is in the air.</summary>
/// <param name="Value">The figure, above 0.</param>
/// <param name="Unit">Its unit, one of <see cref="Units"/>.</param>
public readonly record struct AirConcentration(decimal Value, string Unit)
{
    /// <summary>The units there are: parts by volume in a million and in a thousand million, mass in volume.</summary>
    public static IReadOnlyList<string> Units { get; } = ["ppm", "ppb", "mg/m³"];

    /// <summary>Reads <c>0.05 ppm</c> or <c>0.2 mg/m³</c>: a plain decimal above 0, a space, a unit.</summary>
    /// <returns>Whether the text is such a concentration.</returns>
    public static bool TryParse(string? text, out AirConcentration concentration)
    {
        concentration = default;
        var space = text?.IndexOf(' ') ?? -1;
        if (space <= 0 || !Units.Contains(text!.Substring(space + 1))) return false;
        var figure = text.Substring(0, space);
        if (figure.Length > 1 && figure[0] == '0' && figure[1] != '.') return false;
        if (figure[0] == '.' || figure[figure.Length - 1] == '.') return false;
        if (!decimal.TryParse(figure, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) || value <= 0m) return false;
        concentration = new(value, text.Substring(space + 1));
        return true;
    }

    /// <summary>The concentration as it is written.</summary>
    public override string ToString() => Interval.Figure(Value) + " " + Unit;
}

/// <summary>A limit of exposure of staff to what is in the air.</summary>
public sealed record ExposureLimit
{
    /// <summary>Over which time.</summary>
    public required LimitKind Kind { get; init; }

    /// <summary>How much.</summary>
    public required AirConcentration Value { get; init; }

    /// <summary>Whose limit it is.</summary>
    public required string By { get; init; }

    /// <summary>Its source.</summary>
    public required SourceId Source { get; init; }
}
