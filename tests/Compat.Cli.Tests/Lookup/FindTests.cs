namespace Compat.Cli.Tests.Lookup;

public sealed class FindTests
{
    [Theory]
    [InlineData("bleach", "sodium-hypochlorite", "also called `bleach`")]
    [InlineData("Quats", "quaternary-ammonium", "also called")]
    [InlineData("ipa", "isopropanol", "also called `IPA`")]
    [InlineData("meths", "denatured-ethanol", "also called `meths`")]
    [InlineData("wheels", "castor", "also called `wheel`")]
    [InlineData("64-17-5", "ethanol", "its CAS number is 64-17-5")]
    [InlineData("thrush", "candida-albicans", "also called `thrush`")]
    [InlineData("membrane keypad", "keypad-membrane", "its name")]
    public void Find_WhatPeopleSay_IsFirst(string said, string id, string why)
    {
        var run = CliRun.Of("find", said);
        Assert.Equal(0, run.Code);
        Assert.StartsWith(id + " ", run.Output, StringComparison.Ordinal);
        Assert.Contains(why, run.Flat[..Math.Min(200, run.Flat.Length)], StringComparison.Ordinal);
    }

    [Fact]
    public void Find_Screen_ListsScreensByTheWordBeforePieces()
    {
        var run = CliRun.Of("find", "screen");
        Assert.Contains("display-coated ", run.Output, StringComparison.Ordinal);
        Assert.Contains("touch-screen-glass ", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("isopropanoll", "isopropanol")]
    [InlineData("glutaraldeyde", "glutaraldehyde")]
    [InlineData("policarbonate", "polycarbonate")]
    public void Find_Misspelt_ListsWhatIsNearAndSaysSo(string said, string id)
    {
        var run = CliRun.Of("find", said);
        Assert.Equal(1, run.Code);
        Assert.StartsWith(id + " ", run.Output, StringComparison.Ordinal);
        Assert.Contains($"nothing is called `{said}`", run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_Agent_ListsProductsThatHoldIt()
    {
        var run = CliRun.Of("find", "quat", "--site", Repository.Demo);
        Assert.Contains("it holds benzalkonium-chloride", run.Flat, StringComparison.Ordinal);
        Assert.Contains("two-spirit-wipe", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_Part_ListsDevicesThatHaveIt() =>
        Assert.Contains("its part castors is one", CliRun.Of("find", "wheel", "--site", Repository.Demo).Flat, StringComparison.Ordinal);

    [Theory]
    [InlineData("67-63-1", "no CAS number")]
    [InlineData("200-661-8", "no EC number")]
    public void Find_NumberWithWrongCheckDigit_IsBadInput(string said, string message)
    {
        var run = CliRun.Of("find", said);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void Find_EcNumber_LeadsToItsSubstance() =>
        Assert.Contains("isopropanol (agents): its EC number is 200-661-7", CliRun.Of("find", "200-661-7").Flat, StringComparison.Ordinal);

    [Fact]
    public void Find_EcNumberNotOnRecord_PointsAtTheCasNumber()
    {
        var run = CliRun.Of("find", "999-999-2");
        Assert.Equal(1, run.Code);
        Assert.Contains("try the CAS number", run.FlatNotes, StringComparison.Ordinal);
    }
}
