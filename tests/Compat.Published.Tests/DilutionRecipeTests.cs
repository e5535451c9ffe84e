using Compat.Planning;

namespace Compat.Published.Tests;

/// <summary>Published recipes: stock and water, powder and litre.</summary>
public sealed class DilutionRecipeTests
{
    public static TheoryData<string> Worked => RowTable.Lines("dilutions");

    [Theory]
    [MemberData(nameof(Worked))]
    public void The_parts_of_water_are_the_published_ones(string row)
    {
        var cells = RowTable.Cells(row);
        var recipe = Make(cells[0], cells[1], cells[2], 10m);
        var parts = (10m / recipe.StockLitres!.Value.Lower!.Value) - 1m;
        var published = PublishedRow.Figure(cells[3]);
        Assert.InRange(parts, published * 0.9999m, published * 1.0001m);
    }

    /// <summary>5.25 % sodium hypochlorite by mass in the volume counts about 5 % available chlorine, by the molar masses 70.906 and 74.442.</summary>
    [Fact]
    public void Hypochlorite_and_available_chlorine_are_told_apart()
    {
        var asItself = Make("sodium-hypochlorite", "5.25 % w/v", "1000 ppm w/v available chlorine", 1m).StockLitres!.Value.Lower!.Value;
        var asChlorine = Make("sodium-hypochlorite", "5.25 % w/v available chlorine", "1000 ppm w/v available chlorine", 1m).StockLitres!.Value.Lower!.Value;
        Assert.InRange(asChlorine / asItself, 0.9524m, 0.9526m);
    }

    /// <summary>
    /// 8.5 g of a powder with 60 % available chlorine in 10 L give about 0.05 % (common practice of humanitarian chlorine recipes; the arithmetic is exact:
    /// 8.333 g).
    /// </summary>
    [Theory]
    [InlineData("56 % w/w available chlorine", "1000 ppm w/v available chlorine", 10, 17.857)]
    [InlineData("60 % w/w available chlorine", "0.05 % w/v available chlorine", 10, 8.33333)]
    public void A_powder_is_weighed(string powder, string wanted, int litres, double grams)
    {
        var recipe = Make("sodium-dichloroisocyanurate", powder, wanted, litres, isPowder: true);
        Assert.Null(recipe.StockLitres);
        Assert.InRange((double)recipe.StockGrams!.Value.Lower!.Value, grams - 0.001, grams + 0.001);
    }

    [Theory]
    [InlineData("500 ppm w/v available chlorine")]
    [InlineData("0.05 % w/v available chlorine")]
    [InlineData("0.5 g/L available chlorine")]
    public void One_strength_in_three_units_is_one_recipe_to_the_last_digit(string wanted) =>
        Assert.Equal(
            Make("sodium-hypochlorite", "5 % w/v available chlorine", "500 mg/L available chlorine", 1m).StockLitres,
            Make("sodium-hypochlorite", "5 % w/v available chlorine", wanted, 1m).StockLitres);

    [Theory]
    [InlineData("sodium-hypochlorite", "0.5 % w/v", "1 % w/v", "cannot-strengthen")]
    [InlineData("ethanol", "60 % v/v", "70 % v/v", "cannot-strengthen")]
    [InlineData("sodium-hypochlorite", "5..6 % w/w", "1000 ppm w/v", "figure-missing")]
    [InlineData("sodium-hypochlorite", "4..8 % w/v", "0.1..0.12 % w/v", "stock-too-uncertain")]
    [InlineData("glutaraldehyde", "25 % w/v", "2 % w/v available chlorine", "figure-missing")]
    [InlineData("quaternary-ammonium", "10 % w/w", "0.25 % w/w", "by-mass")]
    [InlineData("ethanol", "120 % v/v", "70 % v/v", "outside-axis")]
    public void What_cannot_be_made_is_refused(string agent, string stock, string wanted, string code)
    {
        var question = new DilutionQuestion { Agent = new(agent), Stock = UnitConversionTests.Of(stock), Wanted = UnitConversionTests.Of(wanted), Litres = 1m };
        Assert.False(Dilution.TryMake(KnowledgeBase.Shipped, question, out _, out var problems));
        Assert.Contains(problems, problem => problem.Code == code);
    }

    private static DilutionRecipe Make(string agent, string stock, string wanted, decimal litres, bool isPowder = false)
    {
        var question = new DilutionQuestion
        {
            Agent = new(agent),
            Stock = UnitConversionTests.Of(stock),
            Wanted = UnitConversionTests.Of(wanted),
            Litres = litres,
            IsPowder = isPowder,
        };
        Assert.True(Dilution.TryMake(KnowledgeBase.Shipped, question, out var recipe, out var problems), string.Join("\n", problems));
        return recipe!;
    }
}
