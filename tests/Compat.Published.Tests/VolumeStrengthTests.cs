using Compat.Curation.Text;
using Compat.Planning;

namespace Compat.Published.Tests;

/// <summary>Volume strength of hydrogen peroxide: litres of oxygen that a litre gives off.</summary>
public sealed class VolumeStrengthTests
{
    /// <summary>
    /// Printed figures: 10 and 30 volumes by two teaching pages (Strength of hydrogen peroxide solution in volumes, 2010); 20, 40 and 60, rounded to whole
    /// percent, by safety sheets.
    /// </summary>
    [Theory]
    [InlineData("10 vol", 3.035, 0.005)]
    [InlineData("20 vol", 6, 0.5)]
    [InlineData("30 vol", 9.11, 0.006)]
    [InlineData("40 vol", 12, 0.5)]
    [InlineData("60 vol", 18, 0.5)]
    public void The_printed_percent_is_met(string text, double percent, double tolerance)
    {
        Assert.True(ExposureText.TryParseStrength(text, out var strength, out _));
        Assert.Equal(text, strength.ToString());
        Assert.Equal(StrengthBasis.MassPerVolume, strength.Unit.Basis);
        Assert.InRange((double)strength.Percent.Lower!.Value, percent - tolerance, percent + tolerance);
    }

    [Fact]
    public void A_question_takes_it_of_peroxide_and_of_nothing_else()
    {
        Assert.True(ExposureText.TryParseStrength("10 vol", out var ten, out _));
        Assert.True(ExposureText.TryParseStrength("3.03513 % w/v", out var percent, out _));
        var question = new Question
        {
            Materials = [new Model.MaterialSlot(new MaterialId("glass"))],
            Agent = new("hydrogen-peroxide"),
            Method = ApplicationMethod.WetWipe,
        };
        var (asked, written) = (KnowledgeBase.Shipped.Ask(question with { Strength = ten }), KnowledgeBase.Shipped.Ask(question with { Strength = percent }));
        Assert.Equal(written.Verdict, asked.Verdict);
        Assert.Equal(written.Boxes.Select(box => box.Strength), asked.Boxes.Select(box => box.Strength));
        Assert.False(KnowledgeBase.Shipped.TryAsk(question with { Agent = new("ethanol"), Strength = ten }, out _, out var problems));
        Assert.Equal("no-conversion", Assert.Single(problems).Code);
    }

    /// <summary>From 20 volumes to 10: as much water as stock.</summary>
    [Fact]
    public void A_dilution_halves_it()
    {
        Assert.True(ExposureText.TryParseStrength("20 vol", out var stock, out _));
        Assert.True(ExposureText.TryParseStrength("10 vol", out var wanted, out _));
        Assert.True(
            Dilution.TryMake(
                KnowledgeBase.Shipped, new() { Agent = new("hydrogen-peroxide"), Stock = stock, Wanted = wanted, Litres = 1m }, out var recipe, out _));
        Assert.Equal(0.5m, recipe!.StockLitres!.Value.Lower);
        Assert.False(
            Dilution.TryMake(
                KnowledgeBase.Shipped, new() { Agent = new("sodium-hypochlorite"), Stock = stock, Wanted = wanted, Litres = 1m }, out _, out var problems));
        Assert.All(problems, problem => Assert.Equal("no-conversion", problem.Code));
    }

    [Fact]
    public void A_limit_is_not_written_in_it()
    {
        Assert.False(ExposureText.TryParseStrengthIn("<= 10 vol", StrengthUnit.PercentOf(StrengthBasis.MassPerVolume), out _, out var problem));
        Assert.Contains("counts oxygen", problem, StringComparison.Ordinal);
    }
}
