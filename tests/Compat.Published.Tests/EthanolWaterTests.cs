using Compat.Planning;

namespace Compat.Published.Tests;

/// <summary>Ethanol and water: printed tables against the density formula, and recipes reckoned with it.</summary>
public sealed class EthanolWaterTests
{
    public static TheoryData<string> ByVolume => RowTable.Lines("ethanol-by-volume");

    public static TheoryData<string> ByMass => RowTable.Lines("ethanol-by-mass");

    public static TheoryData<string> WaterToAdd => RowTable.Lines("ethanol-water-to-add");

    [Theory]
    [MemberData(nameof(ByVolume))]
    public void The_printed_density_and_mass_of_a_strength_by_volume_are_met_to_the_last_digit(string row)
    {
        var cells = RowTable.Cells(row);
        var (volume, density, mass) = ((double)PublishedRow.Figure(cells[0]), (double)PublishedRow.Figure(cells[1]), (double)PublishedRow.Figure(cells[2]));
        var found = EthanolWater.MassPercent(volume);
        Assert.InRange(found, mass - 0.01, mass + 0.01);
        Assert.InRange(EthanolWater.Density(found, 20), density - 0.01, density + 0.01);
        Assert.InRange(EthanolWater.VolumePercent(found), volume - 1e-9, volume + 1e-9);
    }

    /// <summary>A question by mass is read at the printed percent by volume: to the last digit of the printed mass.</summary>
    [Theory]
    [MemberData(nameof(ByVolume))]
    public void A_question_by_mass_is_read_at_the_printed_strength_by_volume(string row)
    {
        var cells = RowTable.Cells(row);
        var (volume, mass) = (PublishedRow.Figure(cells[0]), PublishedRow.Figure(cells[2]));
        if (volume is <= 1m or >= 99m) return;
        var knowledge = TestBase.WithOneRule("ethanol", volume);
        Assert.True(knowledge.Ask(Of(mass - 0.02m)).Verdict >= Verdict.AllowedWithinLimits, "just below the limit");
        Assert.True(knowledge.Ask(Of(mass + 0.02m)).Verdict <= Verdict.NotEstablished, "just above the limit");

        Question Of(decimal percent) => TestBase.Question("ethanol", new(Interval.Exactly(percent), StrengthUnit.PercentOf(StrengthBasis.MassPerMass)));
    }

    [Theory]
    [MemberData(nameof(ByMass))]
    public void The_printed_density_of_a_strength_by_mass_is_met(string row)
    {
        var cells = RowTable.Cells(row);
        var printed = 1000 * (double)PublishedRow.Figure(cells[2]);
        var tolerance = (double)PublishedRow.Figure(cells[3]);
        Assert.InRange(
            EthanolWater.Density((double)PublishedRow.Figure(cells[0]), (double)PublishedRow.Figure(cells[1])), printed - tolerance, printed + tolerance);
    }

    /// <summary>The table counts strengths at 15 °C; they are asked by mass, for ours count at 20 °C.</summary>
    [Theory]
    [MemberData(nameof(WaterToAdd))]
    public void The_printed_water_to_add_is_met(string row)
    {
        var cells = RowTable.Cells(row);
        var (stock, wanted) = (PublishedRow.Figure(cells[0]), PublishedRow.Figure(cells[1]));
        var recipe = Make(MassPercent(stock, 15), MassPercent(wanted, 15), 1m, 15m, "% w/w");
        var water = 1000m * recipe.WaterLitres!.Value / recipe.StockLitres!.Value.Lower!.Value;
        var tolerance = PublishedRow.Figure(cells[3]);
        Assert.InRange(water, PublishedRow.Figure(cells[2]) - tolerance, PublishedRow.Figure(cells[2]) + tolerance);
        Assert.True(water > 1000m * ((stock / wanted) - 1m), "the difference of volumes would be too little water");
    }

    /// <summary>Half a litre of 95 % and half a litre of water make about 970 mL (US Pharmacopeia, Diluted Alcohol, 2007, at 25 °C).</summary>
    [Fact]
    public void A_pharmacopoeias_equal_volumes_make_less_than_a_litre()
    {
        var recipe = Make(95m, 48.9m, 1m, 25m);
        var ratio = recipe.WaterLitres!.Value / recipe.StockLitres!.Value.Lower!.Value;
        Assert.InRange(ratio, 0.98m, 1.02m);
        Assert.InRange(0.5m / recipe.StockLitres.Value.Lower!.Value, 0.965m, 0.975m);
    }

    /// <summary>8333 mL of 96 % made up to 10 L give 80 % (Guide to Local Production: WHO-recommended Handrub Formulations, 2010, Part A).</summary>
    [Fact]
    public void The_handrub_recipe_takes_its_published_volume_of_ethanol()
    {
        var stock = Make(96m, 80m, 10m, 20m).StockLitres!.Value.Lower!.Value;
        Assert.InRange(stock, 8.333m, 8.334m);
    }

    /// <summary>The formula is published for -20 to 40 °C (International alcoholometric tables, OIML R 22, 1975, general formula).</summary>
    [Theory]
    [InlineData(-20.1)]
    [InlineData(40.1)]
    public void Outside_of_its_range_the_formula_gives_nothing(double temperature) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EthanolWater.Density(50, temperature));

    /// <summary>Percent of mass of a percent of volume that is counted at another temperature than 20 °C.</summary>
    private static decimal MassPercent(decimal volumePercent, double temperature)
    {
        var (low, high) = (0.0, 100.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (middle * EthanolWater.Density(middle, temperature) / EthanolWater.Density(100, temperature) < (double)volumePercent) low = middle;
            else high = middle;
        }

        return Math.Round((decimal)high, 9);
    }

    private static DilutionRecipe Make(decimal stock, decimal wanted, decimal litres, decimal temperature, string unit = "% v/v")
    {
        var question = new DilutionQuestion
        {
            Agent = new("ethanol"),
            Stock = UnitConversionTests.Of($"{stock} {unit}"),
            Wanted = UnitConversionTests.Of($"{wanted} {unit}"),
            Litres = litres,
            Temperature = temperature,
        };
        Assert.True(Dilution.TryMake(KnowledgeBase.Shipped, question, out var recipe, out _));
        return recipe!;
    }
}
