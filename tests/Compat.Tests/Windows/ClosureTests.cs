namespace Compat.Tests.Windows;

/// <summary>What closes a window, on small hand-made knowledge bases.</summary>
public sealed class ClosureTests
{
    [Fact]
    public void KillsInTenMinutes_PartStandsTwo_IsTooSlow()
    {
        var closure = Closure(new() { Kills = 600, Stands = 120 });
        Assert.Equal((ClosureCode.KillsTooSlowly, 600m, 120m), (closure.Code, closure.ContactTime, closure.ExposureTime));
        Assert.Equal("lid.spared", Assert.Single(closure.Rules).Value);
        Assert.Equal("spirit.kills", Assert.Single(closure.Claims).Id);
    }

    [Theory]
    [InlineData(60, 60)]
    [InlineData(60, 74)]
    [InlineData(600, 659)]
    public void LessThanTheMarginBeyondTheContactTime_IsTooNarrow(int kills, int stands) =>
        Assert.Equal(ClosureCode.TooNarrow, Closure(new() { Kills = kills, Stands = stands }).Code);

    [Theory]
    [InlineData(60, 75)]
    [InlineData(600, 660)]
    public void ExactlyTheMarginBeyondTheContactTime_IsOpen(int kills, int stands)
    {
        var box = Assert.Single(WindowOf(new() { Kills = kills, Stands = stands }).Boxes, b => b.Method == ApplicationMethod.WetWipe);
        Assert.Equal(Interval.Exactly(kills), box.ContactTime);
        Assert.Equal(Interval.Closed(kills, stands), box.ExposureTime);
    }

    /// <summary>105 s and the margin of 15 s are 120 s: held where the part stands 120 s itself, not where it stands less only.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ContactTime_LongestWithItsMarginAtTheEndOfWhatThePartStands_IsHeldOnlyWithThatEnd(bool included)
    {
        var box = Assert.Single(WindowOf(new() { Kills = 60, Stands = 120, StandsIncluded = included }).Boxes, b => b.Method == ApplicationMethod.WetWipe);
        Assert.Equal(new Interval(60, true, 105, included), box.ContactTime);
    }

    [Theory]
    [InlineData(60, 75)]
    [InlineData(600, 660)]
    public void ContactTime_ShortestWithItsMarginWhereThePartStandsLess_IsTooNarrow(int kills, int stands) =>
        Assert.Equal(ClosureCode.TooNarrow, Closure(new() { Kills = kills, Stands = stands, StandsIncluded = false }).Code);

    [Fact]
    public void KillsByMethodsThatThePartDoesNotStand_IsOtherMethods() => Assert.Equal(ClosureCode.OtherMethods,
        Closure(new() { KillsBy = MethodLimit.Within(ApplicationMethod.Immerse), StandsBy = MethodLimit.Within(ApplicationMethod.DampWipe) }).Code);

    [Fact]
    public void KillsWhereThePartIsTooWarm_IsOtherConditions() => Assert.Equal(ClosureCode.OtherConditions,
        Closure(new() { KillsAt = AxisLimit.Within(Interval.AtLeast(25)), StandsAt = AxisLimit.Within(Interval.AtMost(20)) }).Code);

    [Fact]
    public void KillsFromTwentyDegreesOn_IsOpenAndSaysToMeasure()
    {
        var window = WindowOf(new() { KillsAt = AxisLimit.Within(Interval.AtLeast(20)) });
        Assert.All(window.Boxes, box => Assert.Equal((Interval.Closed(20, 30), true), (box.Temperature, box.MeasureTemperature)));
        Assert.NotEmpty(window.Boxes);
    }

    [Fact]
    public void AtHighLevel_WhatOnlyMaterialsStand_IsClosed() => Assert.Equal(ClosureCode.SparedByMaterialsOnly,
        Closure(new() { TouchedBy = TouchedBy.MucousMembrane, Reaches = Level.High, ClaimFor = [WindowWorkshop.Part], ByMaterial = true }).Code);

    [Fact]
    public void AtHighLevel_AGuidelineThatNamesThePart_AndItsOwnRule_AreOpen() =>
        Assert.True(WindowOf(new() { TouchedBy = TouchedBy.MucousMembrane, Reaches = Level.High, ClaimFor = [WindowWorkshop.Part] }).IsOpen);

    [Fact]
    public void APersonRuleThatForbids_IsNamed()
    {
        var closure = Closure(new() { HarmsSkin = true });
        Assert.Equal(ClosureCode.HarmsPeople, closure.Code);
        Assert.Equal(["skin"], closure.Arguments);
    }

    [Theory]
    [InlineData(TouchedBy.MucousMembrane, Level.High, null, Geometry.Open, KillReasonCode.HighNeedsMore)]
    [InlineData(TouchedBy.SterileTissue, Level.High, null, Geometry.Open, KillReasonCode.SterileNeedsInstructions)]
    [InlineData(TouchedBy.MucousMembrane, Level.Low, null, Geometry.Open, KillReasonCode.NoClaim)]
    [InlineData(TouchedBy.Hand, Level.Low, "an outbreak", Geometry.Open, KillReasonCode.Refuted)]
    public void WhatIsNotShownToKill_SaysWhy(TouchedBy touched, Level reaches, string? refuted, Geometry geometry, KillReasonCode code)
    {
        var closure = Closure(new() { TouchedBy = touched, Reaches = reaches, Refuted = refuted, Geometry = geometry });
        Assert.Equal((ClosureCode.DoesNotKill, code), (closure.Code, closure.Kill[0].Code));
    }

    [Fact]
    public void ABoreIsNotReachedByWiping()
    {
        var shop = new WindowWorkshop { Geometry = Geometry.Lumen };
        Assert.Equal(KillReasonCode.NotReached, Closure(shop with { Question = shop.Question with { Method = ApplicationMethod.WetWipe } }).Kill[0].Code);
        Assert.True(WindowOf(shop with { Question = shop.Question with { Method = ApplicationMethod.Immerse } }).IsOpen);
    }

    [Theory]
    [InlineData(TouchedBy.Hand, true, false)]
    [InlineData(TouchedBy.BrokenSkin, false, true)]
    public void AHinge_IsWorkedInto_OrItsGapIsNotShown(TouchedBy touched, bool work, bool notShown)
    {
        var shop = new WindowWorkshop { Geometry = Geometry.Hinge, TouchedBy = TouchedBy.Hand };
        var question = touched == TouchedBy.Hand ? shop.Question : shop.Question with { Level = Level.Intermediate };
        var window = WindowOf(shop with { Question = question });
        Assert.True(window.IsOpen);
        Assert.Equal((work, notShown), (window.WorkIntoGap, window.GapNotShown));
    }

    [Fact]
    public void AExposureTimeAskedShorterThanTheContactTime_IsNotAllowed()
    {
        var shop = new WindowWorkshop { Kills = 60, Stands = 600 };
        var kb = shop.Build();
        Assert.Equal(Verdict.NotAllowed, kb.Ask(shop.Question with { ExposureTime = Interval.Exactly(30) }).Kill!.Verdict);
        Assert.NotEqual(Verdict.NotAllowed, kb.Ask(shop.Question with { ExposureTime = Interval.Exactly(60) }).Kill!.Verdict);
        Assert.Equal(ClosureCode.KillsTooSlowly, kb.WindowOf(shop.Question with { ExposureTime = Interval.Exactly(30) }).Closure!.Code);
    }

    private static Window WindowOf(WindowWorkshop shop) => shop.Build().WindowOf(shop.Question);

    private static WindowClosure Closure(WindowWorkshop shop) => WindowOf(shop) is { Closure: { } closure } ? closure
        : throw new InvalidOperationException("it is open");
}
