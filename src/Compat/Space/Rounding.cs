namespace Compat.Space;

/// <summary>Division with the result rounded in a stated direction to six significant digits, unless it is exact in fewer.</summary>
internal static class Rounding
{
    /// <summary>The finest step that a decimal can take: below it fewer than six digits are left.</summary>
    private const decimal Finest = 0.0000000000000000000000000001m;

    public static decimal Up(decimal numerator, decimal denominator, out bool exact) => Round(numerator, denominator, up: true, out exact);

    public static decimal Down(decimal numerator, decimal denominator, out bool exact) => Round(numerator, denominator, up: false, out exact);

    public static decimal Up(decimal value) => Round(value, 1m, up: true, out _, alwaysRound: true);

    public static decimal Down(decimal value) => Round(value, 1m, up: false, out _, alwaysRound: true);

    private static decimal Round(decimal numerator, decimal denominator, bool up, out bool exact, bool alwaysRound = false)
    {
        exact = true;
        if (denominator == 1m && !alwaysRound) return numerator;
        var quotient = numerator / denominator;
        if (quotient == 0m) return 0m;
        var step = 1m;
        var size = Math.Abs(quotient);
        while (size >= 1_000_000m) (size, step) = (size / 10m, step * 10m);
        while (size < 100_000m && step > Finest) (size, step) = (size * 10m, step / 10m);
        var whole = decimal.Floor(quotient / step) * step;
        exact = whole * denominator == numerator;
        if (exact) return whole;
        return up ? whole + step : whole;
    }
}
