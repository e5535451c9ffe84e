using Compat.Validation;

namespace Compat.Curation.Text;

/// <summary>Reads strengths. Units of one basis convert by an exact power of ten; another basis is never guessed at.</summary>
internal static class StrengthText
{
    private static readonly Measure Fraction = new("strength", [], 0, true, 100, "0 to 100 %");
    private static readonly Measure Unlimited = new("strength", [], 0, true, 1e15m, "0 and above");

    /// <summary>Reads a strength in the unit it is written in.</summary>
    public static TextFault? TryRead(string text, bool takesBare, out Strength strength)
    {
        strength = default;
        if (RangeText.TryRead(text, takesBare, out var written) is { } fault) return fault;
        if (UnitOf(written.Low ?? written.High!, out var unit) is { } first) return first;
        var isMixed = written is { Low: { } low, High: { } high } && low.Unit != high.Unit;
        if (isMixed)
        {
            if (UnitOf(written.High!, out var other) is { } second) return second;
            if (other.Basis != unit.Basis) return new($"`{unit.Text}` and `{other.Text}` in one range are of different bases");
            unit = StrengthUnit.PercentOf(unit.Basis);
        }

        if (TryReadPercent(text, written, unit, null, out var percent) is { } wrong) return wrong;

        // In one unit the figures stay as they are written: no factor is multiplied in and out again.
        strength = new(isMixed ? percent : new Interval(written.Low?.Number, written.LowIncluded, written.High?.Number, written.HighIncluded), unit);
        return null;
    }

    /// <summary>Reads a strength in percent of the basis of an agent.</summary>
    /// <param name="text">The text.</param>
    /// <param name="takesBare">Whether a figure without a sign is the value itself.</param>
    /// <param name="basis">The unit the agent's strength is written in.</param>
    /// <param name="agent">The agent, for the message.</param>
    /// <param name="percent">The range in percent.</param>
    public static TextFault? TryReadIn(string text, bool takesBare, StrengthUnit basis, string agent, out Interval percent)
    {
        percent = default;
        return RangeText.TryRead(text, takesBare, out var written) is { } fault ? fault : TryReadPercent(text, written, basis, agent, out percent);
    }

    private static TextFault? TryReadPercent(string text, RangeText written, StrengthUnit basis, string? agent, out Interval percent)
    {
        var measure = IsFraction(basis.Basis) ? Fraction : Unlimited;
        return measure.TryResolve(text, written, Factor, out percent);

        TextFault? Factor(RangeEnd end, out decimal factor)
        {
            factor = 0;
            if (UnitOf(end, out var unit) is { } fault) return fault;
            if (agent is not null && unit == StrengthUnit.VolumesOfOxygen)
                return new($"`{unit.Text}` counts oxygen from a solution of peroxide as it is sold, not a limit", $"write the strength in `{basis.Text}`");
            if (unit.Basis != basis.Basis)
            {
                return new(
                    agent is null ? $"`{unit.Text}` is of another basis than `{basis.Text}`"
                        : $"`{unit.Text}` is of another basis than `{basis.Text}`, the one `{agent}` is written in",
                    $"write the strength in `{basis.Text}`: nothing is converted between bases here");
            }

            factor = unit.PercentPerUnit;
            return null;
        }
    }

    private static bool IsFraction(StrengthBasis basis) =>
        basis is StrengthBasis.VolumePerVolume or StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;

    private static TextFault? UnitOf(RangeEnd end, out StrengthUnit unit)
    {
        if (StrengthUnit.TryParse(end.Unit, out unit)) return null;
        var bare = end.Unit.Split(' ')[0];
        if (end.Unit.Length == 0) return new("strength without a unit", "write `% v/v`, `% w/w`, `% w/v`, `g/L`, `mg/L`, `ppm w/v` or `ppm w/w`");
        if (bare is "%" or "ppm" && !end.Unit.Contains('/', StringComparison.Ordinal))
        {
            return new(
                $"`{end.Unit}` does not say of what",
                bare == "%" ? "write `% v/v`, `% w/w` or `% w/v`" : "write `ppm w/v` (mg/L) or `ppm w/w` (mg/kg)");
        }

        var sameLetters = StrengthUnit.Texts.FirstOrDefault(text => string.Equals(text, end.Unit, StringComparison.OrdinalIgnoreCase));
        if (sameLetters is not null) return new($"`{end.Unit}` is no unit of strength", $"did you mean `{sameLetters}`?");
        return new($"`{end.Unit}` is no unit of strength", NearestNames.Help(end.Unit, StrengthUnit.Texts)
            ?? "known units: " + string.Join(", ", StrengthUnit.Texts.Select(text => $"`{text}`")));
    }
}
