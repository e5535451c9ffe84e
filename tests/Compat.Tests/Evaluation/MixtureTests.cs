namespace Compat.Tests.Evaluation;

/// <summary>Products are judged by what is in them.</summary>
public class MixtureTests
{
    private static readonly PartQuestion Coated = new("coated-window");

    private sealed record PartQuestion(string Part)
    {
        public Question With(string product, Interval? dilution = null) =>
            new() { Part = new(Part), Product = new(product), Method = ApplicationMethod.DampWipe, Dilution = dilution };
    }

    [Fact]
    public void A_soap_that_hides_alcohol_is_caught_by_the_alcohol_rule()
    {
        var kb = EyeWorkshop.With(EyeWorkshop.Mixture("mild", StrengthOf.Liquid, ("soap", 1m, 1m), ("isopropanol", 55m, 55m)));
        var answer = kb.Ask(Coated.With("mild"));
        Assert.Equal(Verdict.NotAllowed, answer.Verdict);
        Assert.Equal("isopropanol", answer.Decisive.Component);
    }

    [Fact]
    public void Two_weak_alcohols_are_judged_by_their_sum()
    {
        var kb = EyeWorkshop.With(
            EyeWorkshop.Mixture("two", StrengthOf.Liquid, ("ethanol", 3m, 3m), ("isopropanol", 3m, 3m)),
            EyeWorkshop.Mixture("one", StrengthOf.Liquid, ("ethanol", 3m, 3m)));
        var answer = kb.Ask(Coated.With("two"));
        Assert.Equal(Verdict.NotAllowed, answer.Verdict);
        Assert.Equal("alcohol", answer.Decisive.Component);
        Assert.Equal(Verdict.AllowedWithinLimits, kb.Ask(Coated.With("one")).Verdict);
    }

    [Fact]
    public void The_dilution_that_keeps_below_a_limit_is_the_exact_quotient_rounded_inward()
    {
        var kb = EyeWorkshop.With(EyeWorkshop.Mixture("stock", StrengthOf.Concentrate, ("ethanol", 20m, 30m)));
        var box = Assert.Single(kb.Ask(Coated.With("stock")).Boxes);
        Assert.Equal(new Interval(0m, false, 0.166666m, true), box.Dilution);
        Assert.Equal(Verdict.AllowedWithinLimits, kb.Ask(Coated.With("stock", Interval.Exactly(0.166666m))).Verdict);
        Assert.Equal(Verdict.NotAllowed, kb.Ask(Coated.With("stock", Interval.Exactly(0.166667m))).Verdict);
    }

    [Fact]
    public void A_strength_of_the_whole_wipe_can_be_all_in_its_liquid()
    {
        var wipe = EyeWorkshop.Mixture("wipe", StrengthOf.WholeWipe, ("ethanol", 4m, 4m));
        Assert.Equal(Verdict.NotAllowed, EyeWorkshop.With(wipe with { LiquidShare = 0.8m }).Ask(Coated.With("wipe")).Verdict);
        Assert.Equal(Verdict.AllowedWithinLimits, EyeWorkshop.With(wipe with { LiquidShare = 0.9m }).Ask(Coated.With("wipe")).Verdict);
        Assert.NotEqual(Verdict.AllowedWithinLimits, EyeWorkshop.With(wipe).Ask(Coated.With("wipe")).Verdict);
    }

    [Fact]
    public void What_is_not_declared_needs_evidence_on_the_product_except_where_it_does_not_matter()
    {
        var declared = EyeWorkshop.Mixture("declared", StrengthOf.Liquid, ("soap", 1m, 1m)) with { Composition = Composition.DeclaredHazardousOnly };
        var kb = EyeWorkshop.With(declared);
        Assert.Equal(
            Verdict.AllowedWithinLimits, kb.Ask(new Question { Part = new("window"), Product = new("declared"), Method = ApplicationMethod.DampWipe }).Verdict);
        var partial = EyeWorkshop.With(declared with { Composition = Composition.Partial });
        var answer = partial.Ask(new Question { Part = new("window"), Product = new("declared"), Method = ApplicationMethod.DampWipe });
        Assert.Equal(Verdict.NotEstablished, answer.Verdict);
        Assert.Equal(ReasonCode.CompositionNotKnown, answer.Decisive.Code);
    }

    [Fact]
    public void A_film_that_nothing_takes_off_stays_and_is_not_established()
    {
        var soap = new Question
        {
            Part = new("pad"),
            Agent = new("soap"),
            Strength = EyeWorkshop.Percent(1m, "% w/w"),
            Method = ApplicationMethod.DampWipe,
            ExposureTime = Interval.Exactly(60m),
        };
        var answer = EyeWorkshop.Base.Ask(soap);
        Assert.Equal(Verdict.NotEstablished, answer.Verdict);
        Assert.Equal(ReasonCode.ExposureTimeWithoutEnd, answer.Decisive.Code);
        Assert.Equal(Verdict.AllowedWithinLimits, EyeWorkshop.Base.Ask(soap with { Part = new("window") }).Verdict);
    }

    [Fact]
    public void What_dries_away_is_not_said_to_stay()
    {
        var answer = KnowledgeBase.Shipped.Ask(new Question { Part = new("mouse"), Agent = new("isopropanol"), Method = ApplicationMethod.DampWipe });
        Assert.Equal(Verdict.NotEstablished, answer.Verdict);
        Assert.DoesNotContain(answer.Reasons, reason => reason.Code == ReasonCode.ExposureTimeWithoutEnd);
    }

    [Fact]
    public void The_socket_stands_nothing_wet_and_heat_drying_is_never_stood()
    {
        Assert.Equal(ReasonCode.TooWet, EyeWorkshop.Base.Ask(new Question { Part = new("socket"), Agent = new("soap") }).Decisive.Code);
        Assert.Equal(
            ReasonCode.NeverActs,
            EyeWorkshop.Base.Ask(new Question { Part = new("window"), Agent = new("soap"), Acts = [Compat.Model.Act.HeatDrying] }).Decisive.Code);
    }
}
