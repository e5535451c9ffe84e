using Compat.Planning;

namespace Compat.Tests.Dilutions;

/// <summary>Of every mixture of ethanol and water the masses add up, and the volumes miss by the contraction.</summary>
public sealed class EthanolMixtureTests
{
    [Fact]
    public void MassesAddUp_VolumesMissByTheContraction()
    {
        var random = new Random(20261125);
        for (var i = 0; i < 2_000; i++)
        {
            var stock = random.Next(20, 1001) / 10m;
            var wanted = decimal.Round(stock * random.Next(5, 100) / 100m, 2);
            var temperature = random.Next(-20, 41);
            var kilograms = random.Next(1, 200) / 10m;
            var question = new DilutionQuestion
            {
                Agent = new("ethanol"),
                Stock = Percent(stock),
                Wanted = Percent(wanted),
                Kilograms = kilograms,
                Temperature = temperature,
            };
            Assert.True(Dilution.TryMake(KnowledgeBase.Shipped, question, out var recipe, out var problems), string.Join("; ", problems));
            var shown = $"{stock} to {wanted} % w/w at {temperature} °C";
            var (stockGrams, waterGrams) = (recipe!.StockGrams!.Value.Lower!.Value, recipe.WaterGrams!.Value);
            Near(kilograms * 1000m, stockGrams + waterGrams, shown);
            Near(wanted * kilograms * 10m, stockGrams * stock / 100m, shown);
            var (stockLitres, waterLitres) = (recipe.StockLitres!.Value.Lower!.Value, recipe.WaterLitres!.Value);
            Near(stockGrams, stockLitres * Density(stock, temperature), shown);
            Near(waterGrams, waterLitres * Density(0m, temperature), shown);
            var finished = kilograms * 1000m / Density(wanted, temperature);
            Assert.True(
                Math.Abs(stockLitres + waterLitres - finished - recipe.ContractionLitres) <= 0.00002m * finished || recipe.ContractionLitres == 0m, shown);
            Assert.True(recipe.ContractionLitres >= 0m, shown);
        }
    }

    private static void Near(decimal expected, decimal got, string shown) =>
        Assert.True(Math.Abs(expected - got) <= 0.00001m * Math.Max(expected, 1m), $"{got} and not {expected}: {shown}");

    private static decimal Density(decimal massPercent, int temperature) => (decimal)EthanolWater.Density((double)massPercent, temperature);

    private static Strength Percent(decimal value) => new(Interval.Exactly(value), StrengthUnit.PercentOf(StrengthBasis.MassPerMass));
}
