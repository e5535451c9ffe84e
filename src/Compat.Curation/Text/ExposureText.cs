namespace Compat.Curation.Text;

/// <summary>Reads what is written of exposures, in files and on a command line, with one set of messages.</summary>
/// <remarks>Figures are plain decimals of at most 12 digits; a figure without a sign is the value itself. Safe to call from several threads.</remarks>
public static class ExposureText
{
    /// <summary>
    /// Reads a range of exposure time (in seconds), temperature (°C), pH, uses or dilution (share of volume):
    /// <c>&lt;= 2 min</c>, <c>10..30 °C</c>, <c>7.5</c>.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="axis">The axis; strength has <see cref="TryParseStrength"/>.</param>
    /// <param name="value">The range in the unit of the axis.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is such a range.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The axis is strength.</exception>
    public static bool TryParseInterval(string text, Axis axis, out Interval value, out string? problem) =>
        Done(axis == Axis.Dilution ? DilutionText.TryRead(text, true, out value) : Measure.Of(axis).TryRead(text, true, out value), out problem);

    /// <summary>Reads a strength with its unit: <c>70 % v/v</c>, <c>&gt;= 500 ppm w/v</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="value">The strength, in the unit it is written in.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a strength.</returns>
    public static bool TryParseStrength(string text, out Strength value, out string? problem) =>
        Done(StrengthText.TryRead(text, true, out value), out problem);

    /// <summary>Reads a strength in percent of a basis; a unit of another basis is refused.</summary>
    /// <param name="text">The text.</param>
    /// <param name="basis">A unit of the basis, as the agent's record states it.</param>
    /// <param name="percent">The range in percent of the basis, exact.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is such a strength.</returns>
    public static bool TryParseStrengthIn(string text, StrengthUnit basis, out Interval percent, out string? problem) =>
        Done(StrengthText.TryReadIn(text, true, basis, "the agent", out percent), out problem);

    /// <summary>Reads a dilution: <c>undiluted</c>, <c>2 % v/v</c>, <c>1 in 50</c>, <c>1 + 49</c>; <c>1:50</c> is refused, for it is read two ways.</summary>
    /// <param name="text">The text.</param>
    /// <param name="share">The share of the product's volume, above 0 to 1; where it is no finite decimal, the narrow range around it.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a dilution.</returns>
    public static bool TryParseDilution(string text, out Interval share, out string? problem) =>
        Done(DilutionText.TryRead(text, true, out share), out problem);

    /// <summary>Reads a time: a figure and <c>s</c>, <c>min</c>, <c>h</c> or <c>d</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="seconds">The time in seconds, above 0.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a time.</returns>
    public static bool TryParseDuration(string text, out decimal seconds, out string? problem) =>
        Done(Measure.Duration.TryReadFigure(text, out seconds), out problem);

    /// <summary>Reads an amount of liquid: a figure and <c>L</c> or <c>mL</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="litres">The amount in litres, above 0.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is an amount of liquid.</returns>
    public static bool TryParseVolume(string text, out decimal litres, out string? problem) =>
        Done(Measure.Volume.TryReadFigure(text, out litres), out problem);

    /// <summary>Reads a mass: a figure and <c>kg</c> or <c>g</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="kilograms">The mass in kilograms, above 0.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a mass.</returns>
    public static bool TryParseMass(string text, out decimal kilograms, out string? problem) =>
        Done(Measure.Mass.TryReadFigure(text, out kilograms), out problem);

    /// <summary>Reads a density: a figure and <c>kg/L</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="density">The density in kg/L, 0.1 to 25.</param>
    /// <param name="problem">What is wrong; null where nothing is.</param>
    /// <returns>Whether the text is a density.</returns>
    public static bool TryParseDensity(string text, out decimal density, out string? problem) =>
        Done(Measure.Density.TryReadFigure(text, out density), out problem);

    private static bool Done(TextFault? fault, out string? problem)
    {
        problem = fault?.ToString();
        return fault is null;
    }
}
