namespace Compat.Published.Tests;

/// <summary>Sodium hypochlorite and available chlorine are two numbers; the molar masses join them.</summary>
public sealed class AvailableChlorineTests
{
    public static TheoryData<string> Shares => RowTable.Lines("available-chlorine");

    public static TheoryData<string> Percents => RowTable.Lines("hypochlorite-percents");

    [Theory]
    [MemberData(nameof(Shares))]
    public void The_share_of_available_chlorine_is_that_of_the_molar_masses(string row)
    {
        var cells = RowTable.Cells(row);
        var share = KnowledgeBase.Shipped.Data.Agents.Single(agent => agent.Id.Value == cells[0]).AvailableChlorine;
        Assert.NotNull(share);
        Assert.InRange(
            share.Value * 100m, PublishedRow.Figure(cells[1]) - PublishedRow.Figure(cells[2]), PublishedRow.Figure(cells[1]) + PublishedRow.Figure(cells[2]));
    }

    [Theory]
    [MemberData(nameof(Percents))]
    public void The_share_gives_the_published_percent(string row)
    {
        var cells = RowTable.Cells(row);
        var share = KnowledgeBase.Shipped.Data.Agents.Single(agent => agent.Id.Value == "sodium-hypochlorite").AvailableChlorine!.Value;
        var (expected, tolerance) = (PublishedRow.Figure(cells[1]), PublishedRow.Figure(cells[2]));
        Assert.InRange(PublishedRow.Figure(cells[0]) * share, expected - tolerance, expected + tolerance);
    }

    /// <summary>
    /// 5.25 % sodium hypochlorite is 5.0004 % available chlorine (Weight, available and trade percent of hypochlorite, undated, worked example).
    /// </summary>
    [Theory]
    [InlineData("4.9 % w/v available chlorine", false)]
    [InlineData("5.0 % w/v available chlorine", false)]
    [InlineData("5.01 % w/v available chlorine", true)]
    [InlineData("5.25 % w/v available chlorine", true)]
    public void A_limit_in_available_chlorine_is_met_by_the_hypochlorite_that_gives_it(string limit, bool standsIt)
    {
        var knowledge = TestBase.WithOneRule("sodium-hypochlorite", UnitConversionTests.Of(limit).Percent.Upper!.Value);
        var answer = knowledge.Ask(TestBase.Question("sodium-hypochlorite", UnitConversionTests.Of("5.25 % w/v")));
        Assert.Equal(standsIt, answer.Verdict >= Verdict.AllowedWithinLimits);
    }

    /// <summary>One mass of sodium hypochlorite counts as less than one mass of chlorine: 70.906 / 74.442 (IUPAC abridged atomic weights).</summary>
    [Fact]
    public void Available_chlorine_is_never_judged_more_kindly_than_as_much_hypochlorite()
    {
        foreach (var material in KnowledgeBase.Shipped.Data.Materials)
        {
            foreach (var figure in new[] { 0.05m, 0.1m, 0.5m, 5.25m })
            {
                var asked = new Question
                {
                    Materials = [new MaterialSlot(material.Id)],
                    Agent = new("sodium-hypochlorite"),
                    Method = ApplicationMethod.WetWipe,
                    Ph = Interval.Exactly(11m),
                };
                var chlorine = KnowledgeBase.Shipped.Ask(asked with { Strength = new(Interval.Closed(0m, figure), Unit("% w/v available chlorine")) });
                var hypochlorite = KnowledgeBase.Shipped.Ask(asked with { Strength = new(Interval.Closed(0m, figure), Unit("% w/v")) });
                Assert.True(hypochlorite.Verdict >= chlorine.Verdict, $"{material.Id} at {figure} %: {hypochlorite.Verdict} after {chlorine.Verdict}");
            }
        }
    }

    /// <summary>
    /// Two Cl2 (141.80) in the salt (219.94) and in its dihydrate (255.97), IUPAC abridged standard atomic weights, 2021: whichever is in the bag, enough is
    /// weighed.
    /// </summary>
    [Theory]
    [InlineData("sodium-dichloroisocyanurate", 0.553969, 0.644718)]
    [InlineData("sodium-dichloroisocyanurate-dihydrate", 0.553969, 0.553969)]
    [InlineData("chloramine-t", 0.251702, 0.311460)]
    public void A_powder_that_may_be_a_hydrate_is_weighed_for_its_weakest_and_judged_for_its_strongest(string agent, double weakest, double strongest)
    {
        var question = new Compat.Planning.DilutionQuestion
        {
            Agent = new(agent),
            Stock = UnitConversionTests.Of("50 % w/w"),
            Wanted = UnitConversionTests.Of("1000 ppm w/v available chlorine"),
            Litres = 1m,
            IsPowder = true
        };
        Assert.True(Compat.Planning.Dilution.TryMake(KnowledgeBase.Shipped, question, out var recipe, out var problems), string.Join("; ", problems));
        Assert.InRange((double)recipe.StockGrams!.Value.Lower!.Value, 2 / weakest * 0.9999, 2 / weakest * 1.0001);
        Assert.InRange((double)recipe.Reached.Range.Upper!.Value, 1000 * strongest / weakest * 0.9999, 1000 * strongest / weakest * 1.0001);
        Assert.True(recipe.Reached.Range.Lower >= 1000m);
        var stock = UnitConversionTests.Of("1 % w/v");
        Assert.Equal(Verdict.NotEstablished, TestBase.WithOneRule(agent, (decimal)strongest * 0.999m).Ask(TestBase.Question(agent, stock)).Verdict);
        Assert.True(TestBase.WithOneRule(agent, (decimal)strongest * 1.001m).Ask(TestBase.Question(agent, stock)).Verdict >= Verdict.AllowedWithinLimits);
        Assert.Equal(
            Verdict.NotEstablished, TestBase.WithOneRule(agent, (decimal)weakest * 1.001m, atLeast: true).Ask(TestBase.Question(agent, stock)).Verdict);
    }

    private static StrengthUnit Unit(string text) => StrengthUnit.TryParse(text, out var unit) ? unit : throw new FormatException(text);
}
