using static Compat.Tests.Kill.KillWorkshop;

namespace Compat.Tests.Kill;

/// <summary>What kills, case by case as the specification says it.</summary>
public sealed class KillTests
{
    private static readonly Claim Low = Claim("spirit.low", Spirit, Level.Low), Intermediate = Claim("spirit.intermediate", Spirit, Level.Intermediate);

    [Theory]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public void ACloth_ThatBindsTheProductOrAnAgentInIt_ShowsNothingByWiping(bool product, bool agent)
    {
        var shop = new KillWorkshop
        {
            Claims = [Low],
            SpiritBoundBy = agent ? ["cotton"] : [],
            Product = Liquid(Spirit) with { BoundByCloths = product ? ["cotton"] : [] },
        };
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.ClothBinds), Of(shop.Ask(q => q with { Cloth = "cotton" })));
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask(q => q with { Cloth = "polyester" })).Code);
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask(q => q with { Cloth = "cotton", Method = ApplicationMethod.Immerse })).Code);
    }

    [Fact]
    public void AProductWithALabelClaim_IsNotJudgedByWhatIsPublishedOfItsIngredient()
    {
        var shop = new KillWorkshop { Claims = [Intermediate], Product = Liquid(Spirit) with { LabelClaims = [Label("low", Level.Low)] } };
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask()).Code);
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.LabelClaimsLess), Of(shop.Ask(Asking(Level.Intermediate))));
        Assert.Equal(KillReasonCode.ClaimsMeet, Of((shop with { Product = Liquid(Spirit) }).Ask(Asking(Level.Intermediate))).Code);
    }

    [Fact]
    public void ALabelClaimWithoutAStandardOrRegistration_IsNone_AndLeavesNoOther()
    {
        var shop = new KillWorkshop
        {
            Claims = [Intermediate],
            Product = Liquid(Spirit) with { LabelClaims = [Label("bare", Level.Intermediate) with { ShownBy = [] }] },
        };
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.LabelClaimsLess), Of(shop.Ask()));
    }

    /// <summary>Of what the label says, as much is reached as each of its tests shows by the method asked.</summary>
    [Theory]
    [InlineData("all", ApplicationMethod.WetWipe, Verdict.Allowed, KillReasonCode.ClaimsMeet)]
    [InlineData("bacteria", ApplicationMethod.WetWipe, Verdict.NotAllowed, KillReasonCode.TestsShowLess)]
    [InlineData("bacteria, fungi", ApplicationMethod.WetWipe, Verdict.Allowed, KillReasonCode.ClaimsMeet)]
    [InlineData("household", ApplicationMethod.WetWipe, Verdict.NotAllowed, KillReasonCode.TestsShowLess)]
    [InlineData("hands", ApplicationMethod.WetWipe, Verdict.NotAllowed, KillReasonCode.TestsShowLess)]
    [InlineData("wiping", ApplicationMethod.WetWipe, Verdict.Allowed, KillReasonCode.ClaimsMeet)]
    [InlineData("wiping", ApplicationMethod.Spray, Verdict.NotEstablished, KillReasonCode.OutsideClaims)]
    [InlineData("instruments", ApplicationMethod.Immerse, Verdict.Allowed, KillReasonCode.ClaimsMeet)]
    [InlineData("instruments", ApplicationMethod.WetWipe, Verdict.NotEstablished, KillReasonCode.OutsideClaims)]
    [InlineData("suspension", ApplicationMethod.Immerse, Verdict.Allowed, KillReasonCode.ClaimsMeet)]
    [InlineData("suspension", ApplicationMethod.WetWipe, Verdict.AllowedWithinLimits, KillReasonCode.SuspensionOnly)]
    [InlineData("suspension, bacteria", ApplicationMethod.WetWipe, Verdict.Allowed, KillReasonCode.ClaimsMeet)]
    public void ALabelClaim_ReachesNoFurtherThanItsTests(string tests, ApplicationMethod method, Verdict verdict, KillReasonCode code)
    {
        var shop = new KillWorkshop
        {
            Tests =
            [
                Wiped with { Code = new("all") },
                Wiped with { Code = new("bacteria"), Shows = [OrganismTarget.Of(OrganismGroup.VegetativeBacteria)] },
                Wiped with { Code = new("fungi"), Shows = [OrganismTarget.Of(OrganismGroup.Fungi)] },
                Wiped with { Code = new("household"), Field = TestField.FoodAndHousehold },
                Wiped with { Code = new("hands"), On = [TestedOn.Skin] },
                Wiped with { Code = new("wiping"), Wiping = true },
                Wiped with { Code = new("instruments"), On = [TestedOn.Instruments] },
                Wiped with { Code = new("suspension"), Step = TestStep.Suspension },
            ],
            Product = Liquid(Spirit) with
            {
                LabelClaims = [Label("intermediate", Level.Intermediate) with { ShownBy = tests.Split(", ").Select(test => new TestCode(test)).ToArray() }],
            },
        };
        var kill = shop.Ask(
            q => Asking(Level.Intermediate)(q) with { Method = method, ExposureTime = Interval.Exactly(120m), Temperature = Interval.Exactly(20m) }).Kill!;
        Assert.Equal(verdict, kill.Verdict);
        Assert.Contains(kill.Reasons, reason => reason.Code == code);
    }

    [Fact]
    public void ALabelClaim_WhoseTestsShowLess_SaysWhatTheyDoNotShow()
    {
        var household = Wiped with { Code = new("EN 2"), Field = TestField.FoodAndHousehold };
        var bacteria = Wiped with { Code = new("EN 3"), Shows = [OrganismTarget.Of(OrganismGroup.VegetativeBacteria)] };
        var shop = new KillWorkshop
        {
            Tests = [household, bacteria],
            Product = Liquid(Spirit) with { LabelClaims = [Label("middle", Level.Intermediate) with { ShownBy = [household.Code, bacteria.Code] }] },
        };
        Assert.Equal(["mix", "intermediate", "mix: middle", "fungi", "EN 2"], shop.Ask(Asking(Level.Intermediate)).Kill!.Reasons[0].Arguments);
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask(Asking(Level.Low))).Code);
    }

    /// <summary>A registration says that some authority has seen tests. It makes nothing plain, and adds nothing where tests say it too.</summary>
    [Fact]
    public void ARegistrationAlone_IsWithinLimits_AndSaysSo()
    {
        var registered = Label("registered", Level.Low) with { ShownBy = [], Registration = new("an office", "12-3") };
        Answer Ask(params LabelClaim[] claims) => (new KillWorkshop { Product = Liquid(Spirit) with { LabelClaims = claims } })
            .Ask(q => Asking(Level.Low)(q) with { ExposureTime = Interval.Exactly(120m), Temperature = Interval.Exactly(20m) });
        var alone = Ask(registered).Kill!;
        Assert.Equal(Verdict.AllowedWithinLimits, alone.Verdict);
        Assert.Equal(["mix: registered", "an office", "12-3"], Assert.Single(alone.Reasons, reason => reason.Code == KillReasonCode.RegisteredOnly).Arguments);
        var both = Ask(registered, Label("tested", Level.Low)).Kill!;
        Assert.Equal(Verdict.Allowed, both.Verdict);
        Assert.DoesNotContain(both.Reasons, reason => reason.Code == KillReasonCode.RegisteredOnly);
    }

    [Fact]
    public void ClaimsOfTwoIngredients_NeverAddUp()
    {
        var fungi = OrganismTarget.Of(OrganismGroup.Fungi);
        var shop = new KillWorkshop { Claims = [Low, Claim("soap.fungi", Soap, null, fungi)], Product = Liquid(Spirit, Soap) };
        Assert.Equal(Verdict.NotEstablished, Of(shop.Ask(Against(fungi))).Verdict);
        Assert.Equal(KillReasonCode.ClaimsMeet, Of((shop with { Claims = [Low, Claim("spirit.fungi", Spirit, null, fungi)] }).Ask(Against(fungi))).Code);
    }

    [Fact]
    public void AClaimOfABlend_SpeaksWhereThePartnerIsInTheLiquid()
    {
        var shop = new KillWorkshop { Claims = [Low with { With = [new(Soap, default)] }] };
        Assert.Equal((Verdict.NotEstablished, KillReasonCode.NoClaim), Of(shop.Ask()));
        Assert.Equal(KillReasonCode.ClaimsMeet, Of((shop with { Product = Liquid(Spirit, Soap) }).Ask()).Code);
    }

    [Theory]
    [InlineData(null, 5, false, true)]
    [InlineData(null, 5, true, false)]
    [InlineData(5, null, false, true)]
    [InlineData(5, null, true, false)]
    public void ClaimOfABlend_PartnerRangeWithOpenEnd_HoldsAnIngredientWithThatEndOpenOnly(int? from, int? to, bool endIncluded, bool meets)
    {
        var there = new Strength(new(from, endIncluded, to, endIncluded), StrengthUnit.PercentOf(StrengthBasis.MassPerMass));
        var shop = new KillWorkshop
        {
            SoapBasis = there.Unit,
            Claims = [Low with { With = [new(Soap, AxisLimit.Within(new(from, false, to, false)))] }],
            Product = Liquid(Spirit) with { Ingredients = [new() { Agent = Spirit }, new() { Agent = Soap, Strength = there }] },
        };
        Assert.Equal(meets, Of(shop.Ask()).Code == KillReasonCode.ClaimsMeet);
    }

    [Fact]
    public void AnEdition_SpeaksUntilAnotherReplacesIt()
    {
        var first = new InstructionsEdition { Id = new("first"), Reaches = [new() { Agent = Spirit, Reaches = Level.High, When = Low.When }] };
        var shop = new KillWorkshop { Editions = [first] }.OnDevice;
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask(Asking(Level.High))).Code);
        Assert.Equal(
            (Verdict.NotEstablished, KillReasonCode.NoClaim),
            Of((shop with { Editions = [first, new() { Id = new("second"), Replaces = [first.Id] }] }).Ask(Asking(Level.High))));
    }

    /// <summary>Without a serial number it is not known whether the edition covers this one.</summary>
    [Theory]
    [InlineData(null, false)]
    [InlineData("A150", true)]
    [InlineData("A250", false)]
    public void AnEdition_SpeaksForTheSerialNumbersItCovers(string? serial, bool meets)
    {
        Assert.True(SerialRange.TryParse("A100..A199", out var range));
        var shop = new KillWorkshop
        {
            Editions = [
            new() { Id = new("first"), Serials = [range], Reaches = [new() { Agent = Spirit, Reaches = Level.Low, When = Low.When }] }]
        }.OnDevice;
        var number = serial is not null && SerialNumber.TryParse(serial, out var parsed) ? parsed : (SerialNumber?)null;
        Assert.Equal(meets, Of(shop.Ask(q => q with { Serial = number })).Code == KillReasonCode.ClaimsMeet);
    }

    [Theory]
    [InlineData(50, 90, true)]
    [InlineData(90, 150, false)]
    [InlineData(150, 200, false)]
    public void AConcentrate_InWaterHarderThanItsLabelAllows_HasNoClaim(int from, int to, bool meets)
    {
        var shop = new KillWorkshop
        {
            Here = new() { Hardness = Interval.Closed(from, to) },
            Product = Liquid(Spirit) with
            {
                StrengthOf = StrengthOf.Concentrate,
                Dilution = Interval.Closed(0.1m, 1m),
                MostHardness = 100m,
                LabelClaims = [Label("low", Level.Low)],
            },
        };
        Assert.Equal(meets ? KillReasonCode.ClaimsMeet : KillReasonCode.WaterTooHard, Of(shop.Ask()).Code);
        if (!meets) Assert.Equal(Verdict.NotEstablished, Of(shop.Ask()).Verdict);
    }

    [Fact]
    public void AStandingRule_KeepsTheBareAgentBelow_ButNotALabel()
    {
        var shop = new KillWorkshop { Claims = [Low], Standing = [NeverAbove(Spirit, Level.Low)] };
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.NeverAbove), Of(shop.Ask(Asking(Level.Intermediate))));
        Assert.Equal(
            KillReasonCode.ClaimsMeet,
            Of((shop with { Product = Liquid(Spirit) with { LabelClaims = [Label("more", Level.Intermediate)] } }).Ask(Asking(Level.Intermediate))).Code);
    }

    [Fact]
    public void WhatAClaimSaysIsNotKilled_IsRefused()
    {
        var shop = new KillWorkshop { Claims = [Low with { DoesNotKill = [Spores] }] };
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.DoesNotKill), Of(shop.Ask(Against(Spores))));
        Assert.Equal((Verdict.NotEstablished, KillReasonCode.NoClaim), Of((shop with { Claims = [Low] }).Ask(Against(Spores))));
    }

    [Fact]
    public void AClaimThatHoldsInAMachineOnly_ServesNobodyByHand_AndIsNamed()
    {
        var machine = Intermediate with { Where = ClaimWhere.Machine };
        var alone = new KillWorkshop { Claims = [machine] }.Ask().Kill!;
        Assert.Equal((Verdict.NotEstablished, KillReasonCode.NoClaim), (alone.Verdict, alone.Reasons[0].Code));
        Assert.Equal([machine.Id.Value], Assert.Single(alone.Reasons, reason => reason.Code == KillReasonCode.MachineOnly).Arguments);
        var slower = new KillWorkshop
        {
            Claims = [machine, Claim("spirit.by-hand", Spirit, Level.Intermediate) with
            {
                When = Low.When with { ContactTime = AxisLimit.Within(Interval.AtLeast(600m)) },
            }],
        };
        var tooShort = slower.Ask(q => q with { ExposureTime = Interval.Exactly(120m) }).Kill!;
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.WindowClosed), (tooShort.Verdict, tooShort.Reasons[0].Code));
        Assert.Contains(tooShort.Reasons, reason => reason.Code == KillReasonCode.MachineOnly);
        Assert.DoesNotContain(new KillWorkshop { Claims = [machine, Low] }.Ask().Kill!.Reasons, reason => reason.Code == KillReasonCode.MachineOnly);
    }

    /// <summary>Refuted by immersion for up to ten minutes at room temperature: at that and at all that is weaker it says no.</summary>
    [Theory]
    [InlineData(ApplicationMethod.Immerse, 600, 20, true)]
    [InlineData(ApplicationMethod.DampWipe, 30, 5, true)]
    [InlineData(ApplicationMethod.Immerse, 601, 20, false)]
    [InlineData(ApplicationMethod.Immerse, 600, 26, false)]
    public void ARefutedClaim_BindsInItsBoxAndAtAllThatIsWeaker(ApplicationMethod method, int exposureTime, int temperature, bool binds)
    {
        var refuted = Low with
        {
            Refuted = "an outbreak",
            When = Low.When with
            {
                ContactTime = AxisLimit.Within(Interval.Closed(300m, 600m)),
                Temperature = AxisLimit.Within(Interval.Closed(15m, 25m)),
                Methods = MethodLimit.Within(ApplicationMethod.Immerse),
            },
        };
        var shop = new KillWorkshop { Claims = [refuted] };
        var kill = shop.Ask(q => q with { Method = method, ExposureTime = Interval.Exactly(exposureTime), Temperature = Interval.Exactly(temperature) }).Kill!;
        Assert.Equal(binds ? Verdict.NotAllowed : Verdict.NotEstablished, kill.Verdict);
        Assert.Equal(binds ? KillReasonCode.Refuted : KillReasonCode.NoClaim, kill.Reasons[0].Code);
    }

    /// <summary>What was refuted says no where another claim would serve at a longer time only.</summary>
    [Fact]
    public void ARefutedClaim_BindsBesideOneThatServesElsewhere()
    {
        var refuted = Claim("spirit.refuted", Spirit, Level.Low) with
        {
            Refuted = "an outbreak",
            When = Low.When with { Methods = MethodLimit.Within(ApplicationMethod.WetWipe) },
        };
        var shop = new KillWorkshop { Claims = [refuted, Low with { When = Low.When with { Methods = MethodLimit.Within(ApplicationMethod.Immerse) } }] };
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.Refuted), Of(shop.Ask()));
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask(q => q with { Method = ApplicationMethod.Immerse })).Code);
    }

    [Fact]
    public void AnOrganismThatNeedsAClaimOfItsOwn_IsNotMetByItsGroup()
    {
        var group = new KillWorkshop { Claims = [Claim("spirit.viruses", Spirit, Level.Low, Viruses)] };
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(group.Ask(Against(Known))).Code);
        Assert.Equal(Verdict.NotEstablished, Of(group.Ask(Against(Tough))).Verdict);
        Assert.Equal(KillReasonCode.ClaimsMeet, Of((group with { Claims = [Claim("spirit.tough", Spirit, Level.Low, Tough)] }).Ask(Against(Tough))).Code);
    }

    [Fact]
    public void TheGroupButNotOneOfIt_MeetsTheGroup_NamesTheOne_AndDoesNotMeetIt()
    {
        var but = Claim("spirit.viruses", Spirit, Level.Low, Viruses) with { DoesNotKill = [Known] };
        var shop = new KillWorkshop { Claims = [but] };
        Assert.Equal((Verdict.NotAllowed, KillReasonCode.DoesNotKill), Of(shop.Ask(Against(Known))));
        var group = shop.Ask(Against(Viruses)).Kill!;
        Assert.Equal(Verdict.AllowedWithinLimits, group.Verdict);
        Assert.Equal([Known.Organism!.Value, "spirit.viruses"], Assert.Single(group.Reasons, reason => reason.Code == KillReasonCode.NotCovered).Arguments);
        Assert.DoesNotContain(shop.Ask().Kill!.Reasons, reason => reason.Code == KillReasonCode.NotCovered);
    }

    [Fact]
    public void WhatOneClaimLeavesOut_AnotherMayKill()
    {
        var shop = new KillWorkshop
        {
            Claims =
                [Claim("spirit.viruses", Spirit, Level.Low, Viruses) with { DoesNotKill = [Known] }, Claim("spirit.known", Spirit, Level.Low, Known, Viruses)],
        };
        Assert.Equal(KillReasonCode.ClaimsMeet, Of(shop.Ask(Against(Known))).Code);
        Assert.DoesNotContain(shop.Ask(Against(Viruses)).Kill!.Reasons, reason => reason.Code == KillReasonCode.NotCovered);
    }

    private static (Verdict Verdict, KillReasonCode Code) Of(Answer answer) => (answer.Kill!.Verdict, answer.Kill.Reasons[0].Code);

    private static Func<Question, Question> Asking(Level level) => question => question with { Level = level };

    private static Func<Question, Question> Against(OrganismTarget target) => question => question with { Against = [target] };
}
