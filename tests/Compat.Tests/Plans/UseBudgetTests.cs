using Compat.Planning;

namespace Compat.Tests.Plans;

public sealed class UseBudgetTests
{
    [Theory]
    [InlineData(5000, 5000, 2500)]
    [InlineData(3, 6, 2)]
    [InlineData(1000, 300, 230)]
    [InlineData(1, 1, 0)]
    public void SharesOfTwoLimitsAddUp(long one, long other, long runs)
    {
        var budget = new UseBudget(Mechanism.LegendWear, [new(new("cleaner"), one), new(new("wipe"), other)]);
        Assert.Equal(runs, budget.Runs);
        Assert.True(new Fraction(runs, 1).Numerator * budget.ShareOfOneRun.Numerator <= budget.ShareOfOneRun.Denominator);
    }

    [Fact]
    public void OnlyWholeDaysCount()
    {
        var budget = new UseBudget(Mechanism.LegendWear, [new(new("wipe"), 1000)]);
        Assert.Equal((1000, 83), (budget.Days(1), budget.Days(12)));
        Assert.Throws<ArgumentOutOfRangeException>(() => budget.Days(0));
    }

    [Fact]
    public void WithoutALimitThereIsNoBudget()
    {
        Assert.Throws<ArgumentException>(() => new UseBudget(Mechanism.LegendWear, []));
        Assert.Throws<ArgumentException>(() => new UseBudget(Mechanism.LegendWear, [new(new ProductId("wipe"), 0)]));
    }
}
