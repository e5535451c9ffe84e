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

    /// <summary>
    /// Up to 6 a numeral includes all below; 7 and 8 alone are unsuitable for jets, and 6 includes no immersion (clause 6). Numeral 0 claims nothing; 9 stands
    /// alone.
    /// </summary>
    [Theory]
    [InlineData(ConventionKey.IngressWetWipe, "12345678")]
    [InlineData(ConventionKey.IngressSpray, "456")]
    [InlineData(ConventionKey.IngressRinse, "56")]
    [InlineData(ConventionKey.IngressImmerse, "78")]
    public void A_method_is_carried_by_the_numerals_that_were_tested_for_it(ConventionKey key, string numerals)
    {
        var range = KnowledgeBase.Shipped.Data.Conventions.Single(convention => convention.Key == key).Range;
        Assert.Equal(numerals, string.Concat(Enumerable.Range(0, 10).Where(numeral => range.Contains(numeral))));
    }

    /// <summary>A foot switch marked for immersion alone was shown no jet (clause 6), so the type that is rinsed is not 'numeral 6 or above'.</summary>
    [Fact]
    public void No_part_is_named_by_a_numeral_or_above() =>
        Assert.DoesNotContain(
            KnowledgeBase.Shipped.Data.Parts, part =>
                System.Text.RegularExpressions.Regex.IsMatch(part.Name + part.Note, "IPX[0-9] (or|and) (above|higher|more)"));

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
