namespace Compat.Tests.Space;

public sealed class StrengthUnitTests
{
    [Fact]
    public void OneStrengthInFourUnitsIsTheSameToTheLastDigit()
    {
        var written = new[] { (500m, "ppm w/v"), (0.05m, "% w/v"), (0.5m, "g/L"), (500m, "mg/L") };
        Assert.All(written, w => Assert.Equal(Interval.Exactly(0.05m), Percent(w.Item1, w.Item2)));
        Assert.Single(written.Select(w => Percent(w.Item1, w.Item2)).Distinct());
    }

    [Fact]
    public void ABoundaryIsNotMovedByItsUnit()
    {
        for (var ppm = 1; ppm <= 2_000; ppm++)
            Assert.True(Interval.AtMost(ppm * 0.0001m).Contains(Percent(ppm, "ppm w/w").Upper!.Value));
    }

    [Fact]
    public void ABarePpmOrPercentIsNoUnit()
    {
        Assert.False(StrengthUnit.TryParse("ppm", out _));
        Assert.False(StrengthUnit.TryParse("%", out _));
        Assert.False(StrengthUnit.TryParse(null, out _));
    }

    [Fact]
    public void AvailableChlorineIsABasisOfItsOwn()
    {
        Assert.True(StrengthUnit.TryParse("ppm w/v available chlorine", out var chlorine));
        Assert.True(StrengthUnit.TryParse("ppm w/v", out var plain));
        Assert.NotEqual(plain.Basis, chlorine.Basis);
        Assert.Equal(plain.PercentPerUnit, chlorine.PercentPerUnit);
    }

    [Fact]
    public void EveryUnitIsFoundByItsText() => Assert.All(StrengthUnit.Texts, text =>
    {
        Assert.True(StrengthUnit.TryParse(text, out var unit));
        Assert.Equal(text, unit.ToString());
    });

    private static Interval Percent(decimal value, string unit)
    {
        Assert.True(StrengthUnit.TryParse(unit, out var known));
        return new Strength(Interval.Exactly(value), known).Percent;
    }
}
