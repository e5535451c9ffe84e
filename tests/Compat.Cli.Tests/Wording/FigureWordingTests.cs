
namespace Compat.Cli.Tests.Wording;

public sealed class FigureWordingTests
{
    [Theory]
    [InlineData(30, "30 s")]
    [InlineData(90, "90 s")]
    [InlineData(120, "2 min")]
    [InlineData(3600, "1 h")]
    [InlineData(5400, "90 min")]
    [InlineData(172800, "2 d")]
    [InlineData(0.5, "0.5 s")]
    public void Duration_IsInTheLargestUnitThatGivesAWholeNumber(double seconds, string expected) =>
        Assert.Equal(expected, Plain(FigureWording.Duration((decimal)seconds)));

    [Fact]
    public void Strength_IsShownInTheAgentsOwnUnit()
    {
        Assert.True(StrengthUnit.TryParse("ppm w/v available chlorine", out var ppm));
        Assert.Equal("500 to 1000 ppm w/v available chlorine", Plain(FigureWording.Strength(Interval.Closed(0.05m, 0.1m), ppm)));
        Assert.Equal("up to 1000 ppm w/v available chlorine", Plain(FigureWording.Strength(Interval.AtMost(0.1m), ppm)));
    }

    [Fact]
    public void Ranges_SayWhichEndsBelong()
    {
        Assert.Equal("70 °C", Plain(FigureWording.Temperature(Interval.Exactly(70))));
        Assert.Equal("below 70 °C", Plain(FigureWording.Temperature(Interval.Below(70))));
        Assert.Equal("above 70 °C", Plain(FigureWording.Temperature(Interval.Above(70))));
        Assert.Equal("5 to below 8", FigureWording.Ph(new Interval(5, true, 8, false)));
        Assert.Equal("above 5 to 8", FigureWording.Ph(new Interval(5, false, 8, true)));
        Assert.Equal("any", FigureWording.Ph(Interval.Whole));
    }

    [Fact]
    public void ExposureTime_WithoutEnd_IsSaid()
    {
        Assert.Equal("without end", FigureWording.ExposureTime(Interval.Exactly(Interval.WithoutEnd)));
        Assert.Equal("30 s to 2 min", Plain(FigureWording.ExposureTime(Interval.Closed(30, 120))));
    }

    [Fact]
    public void Uses_FromOne_AreAnUpperLimit()
    {
        Assert.Equal("up to 5000", FigureWording.Uses(new Interval(1, true, 5000, true)));
        Assert.Equal("any number of", FigureWording.Uses(Interval.AtLeast(1)));
    }

    private static string Plain(string text) => text.Replace('\u00a0', ' ');
}
