namespace Compat.Published.Tests;

/// <summary>Units of strength: powers of ten convert to the last digit, and equal strengths get equal answers.</summary>
public sealed class UnitConversionTests
{
    public static TheoryData<string> Equalities => RowTable.Lines("unit-conversions");

    [Theory]
    [MemberData(nameof(Equalities))]
    public void Two_ways_of_writing_one_strength_are_equal_to_the_last_digit(string row)
    {
        var cells = RowTable.Cells(row);
        var (one, other) = (Of(cells[0]), Of(cells[1]));
        Assert.Equal(one.Unit.Basis, other.Unit.Basis);
        Assert.Equal(Interval.Exactly(PublishedRow.Figure(cells[2])), one.Percent);
        Assert.Equal(one.Percent, other.Percent);
    }

    /// <summary>1 ppm is 1 mg/L is 0.0001 % w/v (Chlorine, NaDCC, household use, 2018, table).</summary>
    [Theory]
    [InlineData("500 ppm w/v available chlorine")]
    [InlineData("0.05 % w/v available chlorine")]
    [InlineData("0.5 g/L available chlorine")]
    [InlineData("500 mg/L available chlorine")]
    public void Every_way_of_writing_500_ppm_chlorine_gets_the_same_answers(string text)
    {
        foreach (var material in new[] { "stainless-steel-304", "cotton", "polycarbonate", "silicone-rubber", "brass" })
        {
            var asked = new Question
            {
                Materials = [new MaterialSlot(new MaterialId(material))],
                Agent = new("sodium-hypochlorite"),
                Strength = Of("500 ppm w/v available chlorine"),
                Method = ApplicationMethod.DampWipe,
            };
            var expected = KnowledgeBase.Shipped.Ask(asked);
            var answer = KnowledgeBase.Shipped.Ask(asked with { Strength = Of(text) });
            Assert.Equal(expected.Verdict, answer.Verdict);
            Assert.Equal(expected.Boxes.Select(box => (box.Strength, box.ExposureTime)), answer.Boxes.Select(box => (box.Strength, box.ExposureTime)));
        }
    }

    /// <summary>Mass of a volume needs a published density: ethanol at 20 °C weighs 0.78924 kg/L (OIML R 22, 1975, table).</summary>
    [Fact]
    public void The_density_of_ethanol_is_the_published_one() =>
        Assert.Equal(0.78924m, KnowledgeBase.Shipped.Data.Agents.Single(agent => agent.Id.Value == "ethanol").Density);

    internal static Strength Of(string text)
    {
        var words = text.Split(' ', 2);
        return PublishedRow.Strength(words[0], words[1]);
    }
}
