namespace Compat.Space;

/// <summary>A strength, exact or uncertain in a range, in a stated unit.</summary>
/// <param name="Range">The figures, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit of the figures.</param>
public readonly record struct Strength(Interval Range, StrengthUnit Unit)
{
    /// <summary>The range in percent of the unit's basis; exact where the unit is a power of ten of it. Empty for the default value, which has no unit.</summary>
    public Interval Percent => Unit is null ? default : Range.Scale(Unit.PercentPerUnit);

    /// <summary>The strength as it is written.</summary>
    public override string ToString() => Unit is null ? Range.ToString() : Range.IsPoint ? Interval.Figure(Range.Lower!.Value) + " " + Unit.Text : Range.ToString(Unit.Text);
}
