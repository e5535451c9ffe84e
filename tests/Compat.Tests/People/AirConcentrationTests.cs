namespace Compat.Tests.People;

public class AirConcentrationTests
{
    [Theory]
    [InlineData("0.05 ppm")]
    [InlineData("50 ppb")]
    [InlineData("0.2 mg/m³")]
    public void What_is_read_is_written_again(string text)
    {
        Assert.True(AirConcentration.TryParse(text, out var value));
        Assert.Equal(text, value.ToString());
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("0 ppm")]
    [InlineData("-1 ppm")]
    [InlineData("05 ppm")]
    [InlineData(".5 ppm")]
    [InlineData("5. ppm")]
    [InlineData("0,5 ppm")]
    [InlineData("1e3 ppm")]
    [InlineData("0.5ppm")]
    [InlineData("0.5 mg/m3")]
    [InlineData("0.5 ppm w/v")]
    public void Nothing_else_is_taken(string? text) => Assert.False(AirConcentration.TryParse(text, out _));
}
