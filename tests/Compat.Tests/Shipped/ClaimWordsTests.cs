using System.Text.RegularExpressions;

namespace Compat.Tests.Shipped;

/// <summary>A claim whose own words speak of a machine, or of a formulated liquid, says so in its fields too.</summary>
public sealed class ClaimWordsTests
{
    private static readonly Regex Machine = new(@"\b(machine|automat\w*|washer|reprocessor)\b", RegexOptions.IgnoreCase);
    private static readonly Regex Formulated = new(@"\b(improved|accelerated|formulation|formulated|proprietary|blend)\b", RegexOptions.IgnoreCase);

    [Fact]
    public void ShippedClaims_SpeakOfMachinesAndFormulations_InTheirFields() =>
        Assert.Empty(KnowledgeBase.Shipped.Data.Claims.Where(Conceals).Select(claim => claim.Id.Value));

    [Theory]
    [InlineData("Five minutes hold for an automated reprocessor.", true)]
    [InlineData("A washer holds the temperature.", true)]
    [InlineData("The improved formulation kills in a minute.", true)]
    [InlineData("Wiped on, it kills in a minute.", false)]
    public void AClaim_WhoseWordsAloneSayIt_IsFound(string why, bool conceals)
    {
        var claim = KnowledgeBase.Shipped.Data.Claims.First(one => one is { Refuted: null, Where: null, With.Count: 0 }) with { Why = why };
        Assert.Equal(conceals, Conceals(claim));
    }

    private static bool Conceals(Claim claim) => claim.Refuted is null
        && ((claim.Where is null && Machine.IsMatch(claim.Why)) || (claim.With.Count == 0 && Formulated.IsMatch(claim.Why)));
}
