namespace Compat.Answers;

/// <summary>What of a window is free: chosen, or measured and kept to. Elsewhere the worst counts.</summary>
internal sealed class WindowAxes(Question question, Substance substance, bool measured, bool freeStrength)
{
    public bool ExposureTimeFree => question.ExposureTime is null;

    public bool DilutionFree => substance.DilutionTreatment == AxisTreatment.Free;

    public bool UsesFree => question.Uses is null;

    public bool StrengthFree => freeStrength && substance.Product is null;

    public bool TemperatureFree => measured && question.Temperature is null;

    /// <summary>The pH of a product is that of its record; of an agent it is measured.</summary>
    public bool PhFree => measured && question.Ph is null && substance.Product is null;

    /// <summary>What can be chosen, or measured and kept to, by any method.</summary>
    public Box<Stretch> Domain() => Box<Stretch>.Whole with
    {
        ExposureTime = ExposureTimeFree ? Stretch.Positive : Stretch.Whole,
        Dilution = DilutionFree ? Stretch.Of(substance.Dilution) : Stretch.Whole,
        Uses = UsesFree ? Stretch.Positive : Stretch.Whole,
        Strength = StrengthFree ? Stretch.Of(substance.Components[0].Strength) : Stretch.Whole,
        Temperature = TemperatureFree ? Stretch.Of(substance.Temperature) : Stretch.Whole,
        Ph = PhFree ? Stretch.Of(substance.WholePh) : Stretch.Whole,
        ContactTime = Stretch.Positive,
    };

    /// <summary>A hole on the free axes: what nobody controls counts wherever it is met.</summary>
    public Box<Stretch> Freed(Box<Stretch> hole) => Box<Stretch>.Whole with
    {
        Methods = hole.Methods,
        ExposureTime = ExposureTimeFree ? hole.ExposureTime : Stretch.Whole,
        Dilution = DilutionFree ? hole.Dilution : Stretch.Whole,
        Uses = UsesFree ? hole.Uses : Stretch.Whole,
        Strength = StrengthFree ? hole.Strength : Stretch.Whole,
        Temperature = TemperatureFree ? hole.Temperature : Stretch.Whole,
        Ph = PhFree ? hole.Ph : Stretch.Whole,
        ContactTime = hole.ContactTime,
    };
}
