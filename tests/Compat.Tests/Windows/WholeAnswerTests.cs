namespace Compat.Tests.Windows;

/// <summary>What is needed, whether it is killed and whether people are harmed, on the shipped data.</summary>
public sealed class WholeAnswerTests
{
    private static readonly KnowledgeBase Kb = KnowledgeBase.Shipped;

    /// <summary>Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), table 1 and section on a rational approach.</summary>
    [Theory]
    [InlineData(TouchedBy.Hand, Level.Low)]
    [InlineData(TouchedBy.IntactSkin, Level.Low)]
    [InlineData(TouchedBy.BrokenSkin, Level.High)]
    [InlineData(TouchedBy.MucousMembrane, Level.High)]
    [InlineData(TouchedBy.SterileTissue, Level.Sterile)]
    public void Need_FollowsThePublishedClassification(TouchedBy contact, Level level) =>
        Assert.Equal(level, Kb.NeedOf(new Question { Part = new("handle"), TouchedBy = contact, Soil = [] }).Level);

    /// <summary>Same guideline, on blood on noncritical surfaces; a site's policy table on visible blood.</summary>
    [Fact]
    public void Need_BloodOnWhatHandsTouch_IsCleanedFirstThenIntermediate()
    {
        var need = Kb.NeedOf(new Question { Part = new("handle"), TouchedBy = TouchedBy.Hand, Soil = [SoilKind.Blood] });
        Assert.Equal(Level.Intermediate, need.Level);
        Assert.True(need.CleanFirst);
    }

    [Fact]
    public void Need_AskedLevelOnlyRaises()
    {
        var question = new Question { Part = new("handle"), TouchedBy = TouchedBy.MucousMembrane, Soil = [] };
        Assert.Equal(Level.High, Kb.NeedOf(question with { Level = Level.Low }).Level);
        Assert.Equal(Level.Sterile, Kb.NeedOf(question with { Level = Level.Sterile }).Level);
    }

    [Fact]
    public void Need_WhatNobodyTouches_IsKeptDry_AndSoiledGoesToTheEngineer()
    {
        var clean = Kb.NeedOf(new Question { Part = new("handle"), TouchedBy = TouchedBy.Internal, Soil = [] });
        Assert.True(clean is { KeptDry: true, SoiledWhereDry: false });
        Assert.True(Kb.NeedOf(new Question { Part = new("handle"), TouchedBy = TouchedBy.Internal, Soil = [SoilKind.Dust] }).SoiledWhereDry);
    }

    /// <summary>Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), quaternary ammonium compounds: low-level disinfectants.</summary>
    [Fact]
    public void Ask_QuaternaryOnWhatTouchesMucousMembrane_IsNotAllowedForKill()
    {
        var answer = Kb.Ask(new Question { Part = new("trolley-frame"), Agent = new("benzalkonium-chloride"), TouchedBy = TouchedBy.MucousMembrane });
        Assert.Equal(Verdict.NotAllowed, answer.Verdict);
        Assert.Equal(Verdict.NotAllowed, answer.Kill!.Verdict);
        Assert.Equal(KillReasonCode.NeverAbove, answer.Kill.Reasons[0].Code);
        Assert.NotEqual(Verdict.NotAllowed, answer.PartVerdict);
    }

    [Fact]
    public void Ask_Prions_IsNotComputed()
    {
        var answer = Kb.Ask(new Question { Part = new("handle"), Agent = new("isopropanol"), Against = [OrganismTarget.Of(OrganismGroup.Prions)] });
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.Prions), (answer.Verdict, answer.Kill!.Reasons[0].Code));
        Assert.Null(answer.Window);
    }

    /// <summary>Same guideline: phenolics are not used on infant bassinets and incubators; hyperbilirubinaemia in newborns.</summary>
    [Fact]
    public void Ask_IncubatorHoodAndPhenolic_IsNotAllowedByPersonRule()
    {
        var answer = Kb.Ask(new Question { Part = new("incubator-hood"), Agent = new("ortho-phenylphenol"), Soil = [] });
        Assert.Equal(Verdict.NotAllowed, answer.People!.Verdict);
        Assert.Contains(answer.People.Forbidding, id => id.Value.StartsWith("phenol", StringComparison.Ordinal));
    }

    private static Strength Percent(decimal value) => new(Interval.Exactly(value), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume));
}
