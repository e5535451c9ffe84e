namespace Compat.Tests.Knowledge;

public sealed class CalendarDateTests
{
    [Theory]
    [InlineData("2026-11-25", true)]
    [InlineData("2024-02-29", true)]
    [InlineData("2026-02-29", false)]
    [InlineData("2026-1-1", false)]
    [InlineData("25.11.2026", false)]
    [InlineData("2026-11-25T00:00", false)]
    [InlineData(" 2026-11-25", false)]
    [InlineData(null, false)]
    public void OnlyYearMonthDayIsADate(string? text, bool isDate)
    {
        Assert.Equal(isDate, CalendarDate.TryParse(text, out var date));
        if (isDate) Assert.Equal(text, date.ToString());
    }

    [Fact]
    public void EarlierDatesComeFirst()
    {
        var (early, late) = (new CalendarDate(2026, 1, 31), new CalendarDate(2026, 2, 1));
        Assert.True(early < late && late > early && early <= late && late >= early);
        Assert.Equal(early, new CalendarDate(2026, 1, 31));
    }

    [Fact]
    public void ADayThatIsNotCannotBeMade() => Assert.Throws<ArgumentOutOfRangeException>(() => new CalendarDate(2026, 2, 30));
}
