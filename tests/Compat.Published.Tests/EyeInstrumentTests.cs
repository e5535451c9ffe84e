namespace Compat.Published.Tests;

/// <summary>
/// Recommendations for Preventing Possible Transmission of HTLV-III/LAV from Tears, MMWR 34(34):533-534, 1985, recommendation 2: instruments that
/// come into direct contact with external surfaces of the eye are wiped clean, then exposed for 5 to 10 minutes to fresh hydrogen peroxide of 3 %, or to
/// bleach of 5000 ppm available chlorine.
/// </summary>
public sealed class EyeInstrumentTests
{
    [Theory]
    [InlineData("hydrogen-peroxide", "3", "% w/w")]
    [InlineData("sodium-hypochlorite", "5000", "ppm w/v available chlorine")]
    public void Five_minutes_on_a_tip_that_touches_the_eye_kill_the_virus_of_aids(string agent, string figure, string unit)
    {
        Assert.Contains(Named(agent, figure, unit, 300m), claim => claim.Needs.Contains(ClaimNeed.CleanFirst));
        Assert.Empty(Named(agent, figure, unit, 299m));
    }

    [Theory]
    [InlineData("hydrogen-peroxide", "1", "% w/w")]
    [InlineData("sodium-hypochlorite", "500", "ppm w/v available chlorine")]
    public void Weaker_liquids_are_not_named_for_such_a_tip(string agent, string figure, string unit) => Assert.Empty(Named(agent, figure, unit, 600m));

    private static IEnumerable<Claim> Named(string agent, string figure, string unit, decimal seconds) => KnowledgeBase.Shipped.Data.Claims.Where(claim =>
        claim.Agent.Value == agent && claim.For.Any(part => part.Value == "pachymeter-tip") && claim.Refuted is null && claim.Kills.Contains(Virus)
        && claim.When.Strength.Range.Contains(PublishedRow.Strength(figure, unit).Percent.Lower!.Value) && claim.When.ContactTime.Range.Contains(seconds));

    private static OrganismTarget Virus => OrganismTarget.Of(new OrganismId("human-immunodeficiency-virus"));
}
