using Compat.Exposures;

namespace Compat.Published.Tests;

/// <summary>Protection against water: IEC 60529, 2013, second characteristic numeral and clause 6.</summary>
public sealed class WaterIngressTests
{
    public static TheoryData<string> Parts => [.. KnowledgeBase.Shipped.Data.Parts.Select(part => part.Id.Value)];

    /// <summary>Numeral 0 means that nothing is claimed (second characteristic numeral): a part of which nothing is known takes nothing wet.</summary>
    [Theory]
    [InlineData(ApplicationMethod.DampWipe)]
    [InlineData(ApplicationMethod.WetWipe)]
    [InlineData(ApplicationMethod.Spray)]
    [InlineData(ApplicationMethod.Rinse)]
    [InlineData(ApplicationMethod.Immerse)]
    public void A_part_without_a_claim_takes_no_water(ApplicationMethod method) =>
        Assert.Equal(Verdict.NotAllowed, Ask("any-part", method));

    /// <summary>Immersion is a claim of its own (numerals 7 and 8; clause 6): a part not said to stand it is not immersed.</summary>
    [Theory]
    [MemberData(nameof(Parts))]
    public void Only_a_part_said_to_stand_immersion_is_immersed(string part)
    {
        var verdict = Ask(part, ApplicationMethod.Immerse);
        Assert.True(Wettest(part) == ApplicationMethod.Immerse || verdict == Verdict.NotAllowed, $"{part}: {verdict}");
    }

    /// <summary>The tests use fresh water (clause 6): that water is allowed says nothing of acetone.</summary>
    [Theory]
    [MemberData(nameof(Parts))]
    public void A_claim_against_water_is_none_against_a_solvent(string part)
    {
        var answer = KnowledgeBase.Shipped.Ask(new Question { Part = new(part), Agent = new("acetone") });
        Assert.True(answer.Verdict <= Verdict.NotEstablished, $"{part}: {answer.Verdict}");
    }

    private static Verdict Ask(string part, ApplicationMethod method) =>
        KnowledgeBase.Shipped.Ask(new Question { Part = new(part), Agent = new("water"), Method = method }).Verdict;

    private static ApplicationMethod? Wettest(string part)
    {
        for (var id = new PartId(part); id is not null;)
        {
            var type = KnowledgeBase.Shipped.Data.Parts.Single(candidate => candidate.Id == id);
            if (type.Wettest is { } wettest) return wettest;
            id = type.Under;
        }

        return null;
    }
}
