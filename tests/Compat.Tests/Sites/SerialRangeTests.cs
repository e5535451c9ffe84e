namespace Compat.Tests.Sites;

public sealed class SerialRangeTests
{
    [Theory]
    [InlineData("AB100..AB199", "AB100", true)]
    [InlineData("AB100..AB199", "AB199", true)]
    [InlineData("AB100..AB199", "AB99", false)]
    [InlineData("AB100..AB199", "AB200", false)]
    [InlineData("AB100..AB199", "CD150", false)]
    [InlineData("AB100..AB199", "ab150", false)]
    [InlineData("AB200..", "AB999999", true)]
    [InlineData("AB7", "AB007", true)]
    [InlineData("AB7", "AB8", false)]
    [InlineData("1..9", "5", true)]
    public void ARangeHoldsTheSerialNumbersOfItsPrefixBetweenItsEnds(string range, string serial, bool holds)
    {
        Assert.True(SerialRange.TryParse(range, out var parsed));
        Assert.True(SerialNumber.TryParse(serial, out var number));
        Assert.Equal(holds, parsed.Contains(number));
    }

    [Theory]
    [InlineData("AB200..AB100")]
    [InlineData("AB1..CD9")]
    [InlineData("AB")]
    [InlineData("..AB9")]
    [InlineData("AB 1")]
    [InlineData("AB1234567890123456789")]
    [InlineData("")]
    [InlineData(null)]
    public void WhatHoldsNoSerialNumberIsNoRange(string? text) => Assert.False(SerialRange.TryParse(text, out _));

    [Theory]
    [InlineData("AB100..AB199")]
    [InlineData("AB200..")]
    [InlineData("AB7")]
    public void ItIsWrittenAsItIsRead(string text)
    {
        Assert.True(SerialRange.TryParse(text, out var range));
        Assert.Equal(text, range.ToString());
    }
}
