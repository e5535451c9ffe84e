namespace Compat.Published.Tests;

/// <summary>Published worked dilutions, read off the dilution at which a concentrate meets a limit.</summary>
public sealed class DilutionTests
{
    public static TheoryData<string> Worked => RowTable.Lines("dilutions");

    [Theory]
    [MemberData(nameof(Worked))]
    public void The_strongest_dilution_within_a_limit_is_the_published_one(string row)
    {
        var cells = RowTable.Cells(row);
        var (stock, wanted, share) = (UnitConversionTests.Of(cells[1]), UnitConversionTests.Of(cells[2]), 1m / (1m + PublishedRow.Figure(cells[3])));
        var answer = TestBase.AskConcentrate(TestBase.WithOneRule(cells[0], wanted.Percent.Upper!.Value), cells[0], stock, null);
        var strongest = answer.Boxes.Max(box => box.Dilution!.Value.Upper);
        Assert.NotNull(strongest);
        Assert.InRange(strongest.Value, share * 0.99999m, share * 1.00000001m);
    }

    [Theory]
    [MemberData(nameof(Worked))]
    public void One_part_of_water_less_is_over_the_limit(string row)
    {
        var cells = RowTable.Cells(row);
        var (stock, wanted, water) = (UnitConversionTests.Of(cells[1]), UnitConversionTests.Of(cells[2]), PublishedRow.Figure(cells[3]));
        var knowledge = TestBase.WithOneRule(cells[0], wanted.Percent.Upper!.Value);
        Assert.True(TestBase.AskConcentrate(knowledge, cells[0], stock, 1m / (1m + (water * 0.98m))).Verdict <= Verdict.NotEstablished);
        Assert.True(TestBase.AskConcentrate(knowledge, cells[0], stock, 1m / (1m + (water * 1.02m))).Verdict >= Verdict.AllowedWithinLimits);
    }

    /// <summary>
    /// A litre of 0.5 % in ten litres of water gives 0.045 %, not 0.05 %: nine litres are needed (Answer on a humanitarian chlorine recipe, 2014).
    /// </summary>
    [Theory]
    [InlineData(9, true)]
    [InlineData(10, false)]
    public void Ten_litres_of_water_to_one_miss_a_tenfold_dilution(int water, bool reaches)
    {
        var knowledge = TestBase.WithOneRule("sodium-hypochlorite", 0.05m, atLeast: true);
        var answer = TestBase.AskConcentrate(knowledge, "sodium-hypochlorite", UnitConversionTests.Of("0.5 % w/v available chlorine"), 1m / (1m + water));
        Assert.Equal(reaches, answer.Verdict >= Verdict.AllowedWithinLimits);
    }
}
