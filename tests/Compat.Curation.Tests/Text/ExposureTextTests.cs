using Compat.Curation.Text;

namespace Compat.Curation.Tests.Text;

public sealed class ExposureTextTests
{
    [Theory]
    [InlineData("<= 70 % v/v", "<= 70 % v/v")]
    [InlineData("70 % v/v", "70 % v/v")]
    [InlineData("= 70 % v/v", "70 % v/v")]
    [InlineData("60..80 % v/v", "60..80 % v/v")]
    [InlineData("60 % v/v..80 % v/v", "60..80 % v/v")]
    [InlineData("> 60 and < 80 % v/v", "> 60 % v/v and < 80 % v/v")]
    [InlineData("> 60 % v/v and <= 80 % v/v", "> 60 % v/v and <= 80 % v/v")]
    [InlineData(">= 500 ppm w/v available chlorine", ">= 500 ppm w/v available chlorine")]
    [InlineData("500 ppm w/v..1 % w/v", "0.05..1 % w/v")]
    public void A_strength_is_read_as_written(string text, string expected)
    {
        Assert.True(ExposureText.TryParseStrength(text, out var strength, out var problem), problem);
        Assert.Equal(expected, strength.ToString());
    }

    [Theory]
    [InlineData("70", "strength without a unit; write `% v/v`, `% w/w`, `% w/v`, `g/L`, `mg/L`, `ppm w/v` or `ppm w/w`")]
    [InlineData("70 %", "`%` does not say of what; write `% v/v`, `% w/w` or `% w/v`")]
    [InlineData("500 ppm", "`ppm` does not say of what; write `ppm w/v` (mg/L) or `ppm w/w` (mg/kg)")]
    [InlineData("70 % V/V", "`% V/V` is no unit of strength; did you mean `% v/v`?")]
    [InlineData("101 % v/v", "`101 % v/v` reaches outside of what strength can be (0 to 100 %)")]
    [InlineData("-1 % v/v", "`-1 % v/v` reaches outside of what strength can be (0 to 100 %)")]
    [InlineData("< 0 % v/v", "`< 0 % v/v` reaches outside of what strength can be (0 to 100 %)")]
    [InlineData("5..2 % v/v", "`5..2 % v/v` is empty: its lower end is above its upper end")]
    [InlineData("> 5 and < 5 % v/v", "`> 5 and < 5 % v/v` is empty: no value lies in it")]
    [InlineData("NaN % v/v", "`NaN % v/v` is no figure that can be measured")]
    [InlineData("<= .inf % v/v", "`.inf % v/v` is no figure that can be measured")]
    [InlineData("1e3 % v/v", "`1e3` has an exponent; write the figure out")]
    [InlineData("010 % v/v", "`010` has a leading zero; leave it out")]
    [InlineData("0,5 % v/v", "`0,5` has a comma; write a decimal point, and no mark between thousands")]
    [InlineData("+5 % v/v", "`+5` has a plus sign; leave the sign out")]
    [InlineData(".5 % v/v", "`.5` lacks a digit beside its point; write `0.5`, not `.5`")]
    [InlineData("1.2345678901234 % v/v", "`1.2345678901234` has more than 12 digits; no source measures so finely: round it")]
    [InlineData("60-80 % v/v", "`60-80 % v/v` is no range; write both ends with `..` between them: `5..10`")]
    [InlineData("≤ 5 % v/v", "`≤` is not taken; write `<=`")]
    [InlineData("< 5 and > 3 % v/v", "`< 5 and > 3 % v/v` is no range; write the lower end first: `> 5 and < 10`")]
    [InlineData("5 % v/v..6 % w/w", "`% v/v` and `% w/w` in one range are of different bases")]
    [InlineData("", "nothing is written")]
    [InlineData("strong", "a figure is expected, read `strong`")]
    public void What_is_no_strength_is_explained(string text, string expected)
    {
        Assert.False(ExposureText.TryParseStrength(text, out _, out var problem));
        Assert.Equal(expected, problem);
    }

    [Fact]
    public void One_basis_is_converted_exactly_and_another_is_refused()
    {
        Assert.True(StrengthUnit.TryParse("% w/v", out var basis));
        Assert.True(ExposureText.TryParseStrengthIn("500 ppm w/v", basis, out var percent, out _));
        Assert.Equal(Interval.Exactly(0.05m), percent);
        Assert.True(ExposureText.TryParseStrengthIn(">= 5 g/L", basis, out percent, out _));
        Assert.Equal(Interval.AtLeast(0.5m), percent);
        Assert.False(ExposureText.TryParseStrengthIn("5 % w/w", basis, out _, out var problem));
        Assert.Equal("`% w/w` is of another basis than `% w/v`, the one `the agent` is written in; write the strength in `% w/v`: nothing is converted "
            + "between bases here", problem);
    }

    [Theory]
    [InlineData(Axis.ExposureTime, "<= 2 min", "<= 120")]
    [InlineData(Axis.ExposureTime, "30 s..2 min", "30..120")]
    [InlineData(Axis.ExposureTime, "> 1 d", "> 86400")]
    [InlineData(Axis.Temperature, "10..30 °C", "10..30")]
    [InlineData(Axis.Temperature, "-40 °C", "= -40")]
    [InlineData(Axis.Ph, "< 8.5", "< 8.5")]
    [InlineData(Axis.Ph, "-1..15", "-1..15")]
    [InlineData(Axis.Uses, "<= 5000", "<= 5000")]
    [InlineData(Axis.Dilution, "1..2 % v/v", "0.01..0.02")]
    [InlineData(Axis.Dilution, "undiluted", "= 1")]
    public void An_axis_is_read_in_its_unit(Axis axis, string text, string expected)
    {
        Assert.True(ExposureText.TryParseInterval(text, axis, out var value, out var problem), problem);
        Assert.Equal(expected, value.ToString());
    }

    [Theory]
    [InlineData(Axis.ExposureTime, "2", "exposure time without a unit; write `s`, `min`, `h` or `d`")]
    [InlineData(
        Axis.ExposureTime, "12:30",
        "`12:30` is no figure; write one figure with its unit: `90 s`, `2 % v/v`; the share of a product goes to `dilution`: `1 in 50`")]
    [InlineData(Axis.ExposureTime, "0 s", "`0 s` reaches outside of what exposure time can be (above 0)")]
    [InlineData(Axis.ExposureTime, "< 0 s", "`< 0 s` reaches outside of what exposure time can be (above 0)")]
    [InlineData(Axis.Temperature, "37", "temperature without a unit; write `°C`")]
    [InlineData(Axis.Temperature, "37 °F", "`°F` is no unit of temperature; did you mean `°C`?")]
    [InlineData(Axis.Temperature, "-41 °C", "`-41 °C` reaches outside of what temperature can be (-40..200 °C)")]
    [InlineData(Axis.Ph, "15.1", "`15.1` reaches outside of what pH can be (-1..15)")]
    [InlineData(Axis.Ph, "7 pH", "pH has no unit, read `pH`")]
    [InlineData(Axis.Uses, "0.5", "`0.5` reaches outside of what uses can be (1 to 1000000000)")]
    [InlineData(Axis.Uses, "1.5", "`1.5`: uses are whole numbers")]
    [InlineData(Axis.Dilution, "0 % v/v", "`0 % v/v` reaches outside of what dilution can be (above 0 to 100 % v/v)")]
    [InlineData(Axis.Dilution, "101 % v/v", "`101 % v/v` reaches outside of what dilution can be (above 0 to 100 % v/v)")]
    [InlineData(Axis.Dilution, "1:50", "`1:50` is read two ways; write `1 in 50` (parts in the whole) or `1 + 50` (parts and parts of water)")]
    [InlineData(Axis.Dilution, "1 / 50", "`1 / 50` is read two ways; write `1 in 50` (parts in the whole) or `1 + 50` (parts and parts of water)")]
    [InlineData(Axis.Dilution, "50 in 1", "`50 in 1` is no dilution: the product is above 0 and at most the whole")]
    public void What_is_no_value_of_an_axis_is_explained(Axis axis, string text, string expected)
    {
        Assert.False(ExposureText.TryParseInterval(text, axis, out _, out var problem));
        Assert.Equal(expected, problem);
    }

    [Fact]
    public void A_dilution_is_a_share_of_the_whole()
    {
        Assert.True(ExposureText.TryParseDilution("1 in 50", out var share, out _));
        Assert.Equal(Interval.Exactly(0.02m), share);
        Assert.True(ExposureText.TryParseDilution("1 + 49", out share, out _));
        Assert.Equal(Interval.Exactly(0.02m), share);
        Assert.True(ExposureText.TryParseDilution("1 in 30", out share, out _));
        Assert.Equal(Interval.Closed(0.033333333333m, 0.033333333334m), share);
    }

    [Fact]
    public void A_time_is_read_in_seconds()
    {
        Assert.True(ExposureText.TryParseDuration("1.5 min", out var seconds, out _));
        Assert.Equal(90m, seconds);
        Assert.False(ExposureText.TryParseDuration("<= 2 min", out _, out var problem));
        Assert.Equal("a figure is expected, read `<= 2 min`", problem);
    }

    [Fact]
    public void What_a_range_prints_is_read_back()
    {
        foreach (
            var range in new[] { Interval.AtMost(5), Interval.Below(5.25m), Interval.AtLeast(5), Interval.Above(5), Interval.Closed(5, 6),
            new Interval(5, false, 6, true), Interval.Exactly(5) })
        {
            Assert.True(ExposureText.TryParseInterval(range.ToString("°C"), Axis.Temperature, out var read, out var problem), problem);
            Assert.Equal(range, read);
        }
    }
}
