using Compat.Exposures;
using Compat.Knowledge;

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
        Assert.InRange(share.Value * 100m, PublishedRow.Figure(cells[1]) - PublishedRow.Figure(cells[2]), PublishedRow.Figure(cells[1]) + PublishedRow.Figure(cells[2]));
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

    /// <summary>5.25 % sodium hypochlorite is 5.0004 % available chlorine (Weight, available and trade percent of hypochlorite, undated, worked example).</summary>
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
                var asked = new Question { Materials = [new MaterialSlot(material.Id)], Agent = new("sodium-hypochlorite"), Method = ApplicationMethod.WetWipe, Ph = Interval.Exactly(11m) };
                var chlorine = KnowledgeBase.Shipped.Ask(asked with { Strength = new(Interval.Closed(0m, figure), Unit("% w/v available chlorine")) });
                var hypochlorite = KnowledgeBase.Shipped.Ask(asked with { Strength = new(Interval.Closed(0m, figure), Unit("% w/v")) });
                Assert.True(hypochlorite.Verdict >= chlorine.Verdict, $"{material.Id} at {figure} %: {hypochlorite.Verdict} after {chlorine.Verdict}");
            }
        }
    }

    private static StrengthUnit Unit(string text) => StrengthUnit.TryParse(text, out var unit) ? unit : throw new FormatException(text);
}
