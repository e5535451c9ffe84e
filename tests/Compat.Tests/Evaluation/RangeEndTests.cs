namespace Compat.Tests.Evaluation;

/// <summary>What holds at the very end of a range, where a wrong comparison would show nowhere else.</summary>
public sealed class RangeEndTests
{
    private static readonly Question Wiped = new()
    {
        Method = ApplicationMethod.DampWipe,
        ExposureTime = Interval.Exactly(60m),
        Temperature = Interval.Exactly(20m),
        Uses = 1,
        OnlyPart = true,
    };

    [Fact]
    public void Permission_NarrowWithADutyThePartCannotMeet_CountsBesideAWiderOne()
    {
        // The window stands a wet wipe at most: a soap that must be taken off by immersing cannot be taken off there.
        var window = RuleTarget.On(new PartId("window"));
        var wide = EyeWorkshop.Allowed("window.soap", window, "soap", EyeWorkshop.Wipe(AxisLimit.Within(Interval.AtMost(10m))));
        var narrow = EyeWorkshop.Allowed("window.soap-strong", window, "soap", EyeWorkshop.Wipe(AxisLimit.Within(Interval.Closed(5m, 10m)))) with
        {
            Duties = [new() { Kind = DutyKind.TakeOff, Ways = [new() { Method = ApplicationMethod.Immerse }] }],
        };
        var kb = EyeWorkshop.Build(EyeWorkshop.Data with { Rules = [.. EyeWorkshop.Data.Rules, wide, narrow] });
        var question = Wiped with { Part = new("window"), Agent = new("soap"), Strength = EyeWorkshop.Percent(7m, "% w/w"), Ph = Interval.Exactly(7m) };
        Assert.Equal(Verdict.NotEstablished, kb.Ask(question).Verdict);
        Assert.Equal(Verdict.NotEstablished, kb.VerdictOf(kb.Prepare(question)));
    }

    [Theory]
    [InlineData(false, Verdict.NotEstablished)]
    [InlineData(true, Verdict.Allowed)]
    public void Permission_EndsAtTheDryingTime_HoldsThereOnlyWithItsEnd(bool endIncluded, Verdict expected)
    {
        // Nothing ends an exposure time in a slit but drying, which takes at most 300 s.
        var slit = new PartType
        {
            Id = new("slit"),
            Name = "slit",
            Under = PartType.Root,
            Materials = [new(new MaterialId("glass"))],
            MaterialsKnown = true,
            Wettest = ApplicationMethod.WetWipe,
            Geometry = Geometry.Crevice,
        };
        var box = EyeWorkshop.Wipe(AxisLimit.Within(Interval.AtMost(80m))) with { ExposureTime = AxisLimit.Within(new(null, false, 300m, endIncluded)) };
        var permission = EyeWorkshop.Allowed("slit.alcohol", RuleTarget.On(slit.Id), "alcohol", box) with { WholeClass = true };
        var kb = EyeWorkshop.Build(EyeWorkshop.Data with
        {
            Parts = [.. EyeWorkshop.Data.Parts, slit],
            Rules = [.. EyeWorkshop.Data.Rules.Where(r => r.Id.Value != "glass.alcohol"), permission],
        });
        var question = Wiped with { Part = slit.Id, Agent = new("isopropanol"), Strength = EyeWorkshop.Percent(70m), Ph = Interval.Exactly(7m) };
        Assert.Equal(expected, kb.Ask(question).Verdict);
        Assert.Equal(expected, kb.VerdictOf(kb.Prepare(question)));
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public void Ingredient_UpperEndDilutedToWhereAProhibitionBegins_ReachesItOnlyWithItsEnd(bool endIncluded, bool forbidden)
    {
        // Alcohol clouds the coating from 5 % on; at half strength the ingredient goes up to 5 %.
        var answer = Diluted(new(1m, true, 10m, endIncluded), EyeWorkshop.Data);
        Assert.Equal(forbidden, answer.Verdict == Verdict.NotAllowed);
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public void Ingredient_LowerEndDilutedToWhereAProhibitionEnds_ReachesItOnlyWithItsEnd(bool endIncluded, bool forbidden)
    {
        var weakClouds = Clouding(Interval.AtMost(5m));
        var answer = Diluted(new(10m, endIncluded, 20m, true), weakClouds);
        Assert.Equal(forbidden, answer.Verdict == Verdict.NotAllowed);
    }

    [Theory]
    [InlineData("5.71429", true)]
    [InlineData("5.7143", false)]
    public void WholeWipe_ShareThatDividesUnevenly_IsRoundedUp(string clouds, bool forbidden)
    {
        // 4 % of a wipe that is seven tenths liquid: 5.714285… % in the liquid.
        var from = decimal.Parse(clouds, System.Globalization.CultureInfo.InvariantCulture);
        var wipe = EyeWorkshop.Mixture("wipe", StrengthOf.WholeWipe, ("ethanol", 4m, 4m)) with { LiquidShare = 0.7m };
        var kb = EyeWorkshop.Build(Clouding(Interval.AtLeast(from))).With(new Site { Id = new("shelf"), Name = "shelf", Products = [wipe] });
        Assert.Equal(forbidden, kb.Ask(Wiped with { Part = new("coated-window"), Product = wipe.Id }).Verdict == Verdict.NotAllowed);
    }

    private static Answer Diluted(Interval ethanol, KnowledgeData data)
    {
        var product = EyeWorkshop.Mixture("stock", StrengthOf.Concentrate) with
        {
            Ingredients = [new() { Agent = new("ethanol"), Strength = new Strength(ethanol, EyeWorkshop.Unit("% v/v")) }],
            Ph = [new(Interval.Exactly(7m), PhState.Concentrate), new(Interval.Exactly(7m), PhState.InUse)],
        };
        var kb = EyeWorkshop.Build(data).With(new Site { Id = new("shelf"), Name = "shelf", Products = [product] });
        return kb.Ask(Wiped with { Part = new("coated-window"), Product = product.Id, Dilution = Interval.Exactly(0.5m) });
    }

    /// <summary>The workshop, where alcohol clouds the coating at other strengths.</summary>
    private static KnowledgeData Clouding(Interval strengths) => EyeWorkshop.Data with
    {
        StandingRules = [],
        Rules = EyeWorkshop.Data.Rules.Where(r => r.Id.Value != "thin-coating.alcohol-weak")
            .Select(r => r.Id.Value == "thin-coating.alcohol" ? r with { When = r.When with { Strength = AxisLimit.Within(strengths) } } : r).ToArray(),
    };
}
