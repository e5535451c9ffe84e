using Compat.Planning;

namespace Compat.Tests.Baths;

/// <summary>
/// Least strengths and reuse days: Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), table 4 of the
/// chemical sterilants and high-level disinfectants (glutaraldehyde of 2 % and more: 14 to 30 days, least 1.0 to 1.5 %; ortho-phthalaldehyde 0.55 %: 14 days,
/// least 0.3 %;
/// hydrogen peroxide 7.5 %: 21 days, least 6 %).
/// </summary>
public sealed class BathTests
{
    private static readonly CalendarDate Today = new(2026, 11, 25);

    [Theory]
    [InlineData("glutaraldehyde.high.45-min", 1.5, 14)]
    [InlineData("ortho-phthalaldehyde.high.12-min", 0.3, 14)]
    [InlineData("hydrogen-peroxide.high.30-min", 6, 21)]
    public void GoodToTheLastDayAndTheLeastStrength_AndNoFurther(string claim, double least, int days)
    {
        var question = Full(claim, (decimal)least) with { Activated = Today.AddDays(-days), Opened = Today.AddDays(-days) };
        Assert.Equal(BathVerdict.Use, Judge(question).Verdict);
        Assert.Equal(Today, Judge(question).LastDay);
        Assert.Equal(
            BathReasonCode.PastReuse, Judge(question with { Activated = Today.AddDays(-days - 1), Opened = Today.AddDays(-days - 1) }).Reasons[0].Code);
        var weak = Judge(question with { Measured = In(claim, (decimal)least - 0.01m) });
        Assert.Equal((BathVerdict.Discard, BathReasonCode.TooWeak), (weak.Verdict, weak.Reasons[0].Code));
    }

    [Fact]
    public void AnUncertainStrengthCountsAtItsLeast()
    {
        var question = Full("glutaraldehyde.high.45-min", 1.5m) with
        {
            Measured = new(Interval.Closed(1.4m, 1.8m), StrengthUnit.PercentOf(StrengthBasis.MassPerVolume)),
        };
        Assert.Equal(BathVerdict.Discard, Judge(question).Verdict);
    }

    [Fact]
    public void WhatIsNotKnownIsNeverGood()
    {
        var question = Full("glutaraldehyde.high.45-min", 2m);
        Assert.Equal(BathReasonCode.NotTestedToday, Unknown(question with { Measured = null }));
        Assert.Equal(BathReasonCode.NotTestedToday, Unknown(question with { Measured = null, Tested = Today.AddDays(-1), TestPassed = true }));
        Assert.Equal(BathReasonCode.DayNotKnown, Unknown(question with { Activated = null, Opened = null }));
        Assert.Equal(BathReasonCode.DayNotKnown, Unknown(question with { Expires = null }));
        Assert.Equal(BathVerdict.Use, Judge(question with { Measured = null, Tested = Today, TestPassed = true }).Verdict);
        Assert.Equal(BathVerdict.Discard, Judge(question with { Measured = null, Tested = Today, TestPassed = false }).Verdict);
        Assert.Equal(BathReasonCode.PastExpiry, Judge(question with { Expires = Today.AddDays(-1) }).Reasons[0].Code);
        Assert.Equal(BathReasonCode.Refilled, Judge(question with { Refilled = true }).Reasons[0].Code);

        static BathReasonCode Unknown(BathQuestion question)
        {
            var answer = Judge(question);
            Assert.Equal(BathVerdict.NotKnown, answer.Verdict);
            return answer.Reasons[0].Code;
        }
    }

    /// <summary>The day printed on a lot speaks of the closed bottle: where no life of the liquid is on record, a bath is not good until then.</summary>
    [Theory]
    [InlineData("peracetic-acid.sterile.50-c")]
    [InlineData("glutaraldehyde.with-phenate.high")]
    public void APrintedDayAloneKeepsNoBath(string claim)
    {
        var question = Full(claim, 2m) with { Measured = null };
        var answer = Judge(question);
        Assert.Equal((BathVerdict.NotKnown, BathReasonCode.NothingOnRecord), (answer.Verdict, answer.Reasons[0].Code));
        Assert.Equal(BathVerdict.Use, Judge(question with { Tub = true }).Verdict);
    }

    /// <summary>Without a least strength on record, what is weaker than the claim was shown at is not what it speaks of.</summary>
    [Theory]
    [InlineData(7.35, BathVerdict.Use)]
    [InlineData(7.3, BathVerdict.Discard)]
    public void WeakerThanItsClaimIsNoBathOfIt(double measured, BathVerdict expected) =>
        Assert.Equal(
            expected,
            Judge(Full("hydrogen-peroxide.with-peracetic-acid.high",
            7.35m) with
            { Measured = In("hydrogen-peroxide.with-peracetic-acid.high", (decimal)measured) }).Verdict);

    [Fact]
    public void DaysThatCannotBeAreRefused()
    {
        var question = Full("glutaraldehyde.high.45-min", 2m) with
        {
            Activated = Today.AddDays(1),
            Opened = Today.AddDays(2),
            Claim = new ClaimId("glutaraldehyde.high.46-min"),
        };
        Assert.False(Bath.TryJudge(KnowledgeBase.Shipped, question, out _, out var problems));
        Assert.Equal(["day-to-come", "day-to-come", "days-out-of-order", "unknown-claim"], problems.Select(p => p.Code).Order(StringComparer.Ordinal));
    }

    private static BathQuestion Full(string claim, decimal measured) => new()
    {
        Claim = new(claim),
        Today = Today,
        Measured = In(claim, measured),
        Activated = Today.AddDays(-2),
        Opened = Today.AddDays(-2),
        Expires = Today.AddDays(100),
    };

    private static Strength In(string claim, decimal value) =>
        new(Interval.Exactly(value),
            StrengthUnit.PercentOf(claim.StartsWith("hydrogen", StringComparison.Ordinal) ? StrengthBasis.MassPerMass : StrengthBasis.MassPerVolume));

    private static BathAnswer Judge(BathQuestion question)
    {
        Assert.True(Bath.TryJudge(KnowledgeBase.Shipped, question, out var answer, out var problems), string.Join("; ", problems));
        return answer!;
    }
}
