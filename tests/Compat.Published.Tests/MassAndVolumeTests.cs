namespace Compat.Published.Tests;

/// <summary>Percent by mass and by volume of one liquid, joined by its published density.</summary>
public sealed class MassAndVolumeTests
{
    public static TheoryData<string> Liquids => RowTable.Lines("mass-and-volume");

    [Theory]
    [MemberData(nameof(Liquids))]
    public void A_limit_is_met_by_the_percent_that_the_tables_give(string row)
    {
        var cells = RowTable.Cells(row);
        var (label, density) = (UnitConversionTests.Of(cells[1]), PublishedRow.Figure(cells[2]));
        var (percent, tolerance) = (UnitConversionTests.Of(cells[3]).Percent.Upper!.Value, PublishedRow.Figure(cells[4]));
        Assert.True(Ask(percent + tolerance) >= Verdict.AllowedWithinLimits, "a limit just above it");
        Assert.True(Ask(percent - tolerance) <= Verdict.NotEstablished, "a limit just below it");

        Verdict Ask(decimal limit) => TestBase.AskLiquid(TestBase.WithOneRule(cells[0], limit), cells[0], label, density).Verdict;
    }

    /// <summary>Ethanol asked by itself is in water alone, whose density at each strength is published (OIML R 22).</summary>
    [Theory]
    [MemberData(nameof(Liquids))]
    public void Without_a_density_the_percent_is_read_widely_but_of_ethanol(string row)
    {
        var cells = RowTable.Cells(row);
        var (percent, tolerance) = (UnitConversionTests.Of(cells[3]).Percent.Upper!.Value, PublishedRow.Figure(cells[4]));
        var answer = TestBase.WithOneRule(cells[0], percent + tolerance).Ask(TestBase.Question(cells[0], UnitConversionTests.Of(cells[1])));
        Assert.Equal(cells[0] == "ethanol", answer.Verdict >= Verdict.AllowedWithinLimits);
    }
}
