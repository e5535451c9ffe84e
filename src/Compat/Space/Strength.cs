namespace Compat.Space;

/// <summary>A strength, exact or uncertain in a range, in a stated unit.</summary>
/// <param name="Range">The figures, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit of the figures.</param>
public readonly record struct Strength(Interval Range, StrengthUnit Unit)
{
    /// <summary>The range in percent of the unit's basis; exact where the unit is a power of ten of it. Empty for the default value, which has no
    /// unit.</summary>
    public Interval Percent => Unit is null ? default : Range.Scale(Unit.PercentPerUnit);

    /// <summary>The strength as it is written.</summary>
    public override string ToString() => Unit is null ? Range.ToString() : Range.IsPoint ? Interval.Figure(Range.Lower!.Value) + " " + Unit.Text
        : Range.ToString(Unit.Text);
}

/// <summary>What a strength counts: which quantity of the agent in which quantity of the liquid.</summary>
public enum StrengthBasis
{
    /// <summary>Volume of agent in volume of liquid (% v/v) at 20 °C.</summary>
    VolumePerVolume,

    /// <summary>Mass of agent in mass of liquid (% w/w, ppm w/w).</summary>
    MassPerMass,

    /// <summary>Mass of agent in volume of liquid (% w/v: 1 % is 10 g/L; g/L, mg/L, ppm w/v).</summary>
    MassPerVolume,

    /// <summary>Mass of available chlorine in mass of liquid.</summary>
    AvailableChlorineMassPerMass,

    /// <summary>Mass of available chlorine in volume of liquid.</summary>
    AvailableChlorineMassPerVolume,
}

/// <summary>A unit a strength is written in: a basis and an exact power of ten of its percent; the volume strength of peroxide has a factor of its
/// own.</summary>
/// <remarks>500 ppm w/v, 0.05 % w/v and 0.5 g/L are one strength, to the last digit: the factors are powers of ten. Equal when the texts are equal.</remarks>
public sealed record StrengthUnit
{
    private static readonly StrengthUnit[] Known = Make().ToArray();

    /// <summary>
    /// Litres of oxygen at 0 °C and 101.325 kPa that a litre of hydrogen peroxide solution gives off: 2 H2O2 give one O2, so one volume is
    /// 2 × 34.0147 g/mol / 22.4140 L/mol = 3.03513 g/L. The trade rounds 10 volumes to 3 %.
    /// </summary>
    public static StrengthUnit VolumesOfOxygen { get; } = Known.First(unit => unit.Text == "vol");

    private StrengthUnit(string text, StrengthBasis basis, decimal percentPerUnit)
    {
        Text = text;
        Basis = basis;
        PercentPerUnit = percentPerUnit;
    }

    /// <summary>The unit as it is written, for example <c>ppm w/v available chlorine</c>.</summary>
    public string Text { get; }

    /// <summary>The basis it belongs to.</summary>
    public StrengthBasis Basis { get; }

    /// <summary>How much of the basis' percent one of this unit is: 1, 0.1 (g/L), 0.0001 (ppm, mg/L) or 0.303513 (volumes of oxygen).</summary>
    public decimal PercentPerUnit { get; }

    /// <summary>Whether an agent can be counted in it: volumes of oxygen are those of hydrogen peroxide, known by its CAS number, and of nothing
    /// else.</summary>
    internal bool Suits(Model.AgentClass agent) => this != VolumesOfOxygen || agent.Cas.Contains("7722-84-1");

    /// <summary>Every unit there is, as written.</summary>
    public static IReadOnlyList<string> Texts { get; } = Known.Select(unit => unit.Text).ToArray();

    /// <summary>The percent of a basis.</summary>
    public static StrengthUnit PercentOf(StrengthBasis basis) =>
        Known.FirstOrDefault(unit => unit.Basis == basis && unit.PercentPerUnit == 1m) ?? throw new ArgumentOutOfRangeException(nameof(basis));

    /// <summary>Finds a unit by its exact text.</summary>
    /// <returns>Whether there is one.</returns>
    public static bool TryParse(string? text, out StrengthUnit unit)
    {
        unit = Known.FirstOrDefault(candidate => candidate.Text == text)!;
        return unit is not null;
    }

    /// <summary>The unit as it is written.</summary>
    public override string ToString() => Text;

    private static IEnumerable<StrengthUnit> Make()
    {
        yield return new("% v/v", StrengthBasis.VolumePerVolume, 1m);
        foreach (var chlorine in new[] { false, true })
        {
            var tail = chlorine ? " available chlorine" : "";
            var inMass = chlorine ? StrengthBasis.AvailableChlorineMassPerMass : StrengthBasis.MassPerMass;
            var inVolume = chlorine ? StrengthBasis.AvailableChlorineMassPerVolume : StrengthBasis.MassPerVolume;
            yield return new("% w/w" + tail, inMass, 1m);
            yield return new("ppm w/w" + tail, inMass, 0.0001m);
            yield return new("% w/v" + tail, inVolume, 1m);
            yield return new("g/L" + tail, inVolume, 0.1m);
            yield return new("mg/L" + tail, inVolume, 0.0001m);
            yield return new("ppm w/v" + tail, inVolume, 0.0001m);
        }

        yield return new("vol", StrengthBasis.MassPerVolume, 0.303513m);
    }
}
