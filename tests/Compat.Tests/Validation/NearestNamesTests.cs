using Compat.Validation;

namespace Compat.Tests.Validation;

public sealed class NearestNamesTests
{
    private static readonly string[] Known = ["isopropanol", "ethanol", "n-propanol", "hypochlorite", "water"];

    [Fact]
    public void TheNearestComesFirst() => Assert.Equal("isopropanol", NearestNames.Of("isoproponal", Known)[0]);

    [Fact]
    public void TwoSwappedLettersAreOneSlip() => Assert.Equal(["water"], NearestNames.Of("watre", Known));

    [Fact]
    public void WhatIsFarFromAllIsOfferedNothing()
    {
        Assert.Empty(NearestNames.Of("acrylate", Known));
        Assert.Null(NearestNames.Help("acrylate", Known));
    }

    [Fact]
    public void APartOfANameOffersTheWholeOne() => Assert.Contains("n-propanol", NearestNames.Of("propanol", Known));

    [Fact]
    public void TheHelpQuotesTheNames() => Assert.Equal("did you mean `water`?", NearestNames.Help("wather", Known));

    [Fact]
    public void AtMostThreeAreOffered() => Assert.Equal(3, NearestNames.Of("name-0", ["name-1", "name-2", "name-3", "name-4"]).Count);
}
