using Compat.Validation;

namespace Compat.Tests.Validation;

/// <summary>The data keeps what its standing rules demand of claims, patients, binding and mixing.</summary>
public class StandingFactTests
{
    private static readonly Claim Bare = EveryKind.Claim with { With = [], For = [], Reaches = Level.Intermediate };

    [Fact]
    public void A_published_claim_of_the_bare_agent_may_not_reach_above()
    {
        Breaks(Bare, Level.Low, "claim `alcohol.low` at reaches");
        Breaks(Bare with { Agent = new("ethanol") }, Level.Low, "claim `alcohol.low` at reaches");
        foreach (var kind in new[] { ClaimKind.Paper, ClaimKind.Guideline, ClaimKind.Standard })
            Breaks(Bare with { Kind = kind, For = [new("window")] }, Level.Low, "claim `alcohol.low` at reaches");
        Breaks(Bare with { When = Bare.When with { Strength = AxisLimit.Unstated } }, Level.Low, "claim `alcohol.low` at reaches");
        Breaks(Bare with { Reaches = null }, Level.Cleaned, "claim `alcohol.low` at kills");
    }

    [Fact]
    public void What_is_no_published_claim_of_the_bare_agent_in_that_box_may()
    {
        Keeps(Bare, Level.Intermediate);
        Keeps(Bare with { Kind = ClaimKind.Label }, Level.Low);
        Keeps(Bare with { With = EveryKind.Claim.With }, Level.Low);
        Keeps(Bare with { Refuted = "an outbreak" }, Level.Low);
        Keeps(Bare with { Reaches = null }, Level.Low);
        Keeps(Bare with { When = Bare.When with { Strength = AxisLimit.Within(Interval.Above(90m)) } }, Level.Low);
    }

    [Fact]
    public void A_person_rule_must_forbid_as_widely_as_demanded()
    {
        var demand = EveryKind.Standing("eye") with { Patient = PatientGroup.Eye, When = new() { Strength = AxisLimit.Within(Interval.AtLeast(5m)) } };
        Assert.Empty(Of(demand, EveryKind.Forbids));
        Assert.Empty(Of(demand with { Agent = new("ethanol") }, EveryKind.Forbids));
        Assert.Empty(Of(demand with { Part = new("coated-window") }, EveryKind.Forbids with { For = [new("window")] }));
        foreach (var rule in new[]
        {
            EveryKind.Forbids with { Patients = [PatientGroup.Newborn] },
            EveryKind.Forbids with { Agent = new("ethanol") },
            EveryKind.Forbids with { Occupied = true },
            EveryKind.Forbids with { For = [new("window")] },
            EveryKind.Forbids with { When = new() { Strength = AxisLimit.Within(Interval.AtLeast(6m)) } },
            EveryKind.Forbids with { Verdict = PersonVerdict.WithDuties, Duties = [new() { Kind = DutyKind.KeepWet }] },
        })
            Assert.Equal("standing-rule `eye`", Where(Assert.Single(Of(demand, rule))));
        Assert.Equal("standing-rule `eye`", Where(Assert.Single(Of(demand with { When = ExposureBox.Unbounded }, EveryKind.Forbids))));
    }

    [Fact]
    public void The_record_of_the_agent_says_what_binds_it()
    {
        Assert.Empty(Of(EveryKind.Standing("bound") with { Agent = new("soap"), BoundBy = "Hard water" }));
        Assert.Empty(Of(EveryKind.Standing("bound") with { Agent = new("isopropanol"), BoundBy = "water" }));
        Assert.Equal("standing-rule `bound` at bound-by",
            Where(Assert.Single(Of(EveryKind.Standing("bound") with { Agent = new("soap"), BoundBy = "cotton" }))));
    }

    [Fact]
    public void A_hazard_of_mixing_is_on_record_in_either_order()
    {
        Assert.Empty(Of(EveryKind.Standing("mix") with { Agent = new("soap"), MixingWith = new("ethanol") }));
        Assert.Empty(Of(EveryKind.Standing("mix") with { Agent = new("ethanol"), MixingWith = new("soap") }));
        Assert.Equal("standing-rule `mix` at mixing-with",
            Where(Assert.Single(Of(EveryKind.Standing("mix") with { Agent = new("soap"), MixingWith = new("water") }))));
        Assert.Equal("standing-rule `mix` at mixing-with-soil",
            Where(Assert.Single(Of(EveryKind.Standing("mix") with { Agent = new("soap"), MixingWithSoil = SoilKind.Urine }))));
    }

    [Theory]
    [InlineData("one-demand")]
    [InlineData("target-of-fact")]
    [InlineData("axis-of-no-claim")]
    [InlineData("when-of-fact")]
    [InlineData("unknown-agent")]
    public void A_demand_that_makes_no_sense_is_refused(string code)
    {
        var above = EveryKind.Standing("odd") with { NeverAbove = Level.High };
        var odd = code switch
        {
            "one-demand" => above with { BoundBy = "hard water" },
            "target-of-fact" => above with { Material = new("glass") },
            "axis-of-no-claim" => above with { When = new() { Uses = AxisLimit.Within(Interval.AtMost(5m)) } },
            "when-of-fact" => EveryKind.Standing("odd") with { Agent = new("soap"), BoundBy = "hard water", When = new() { Ph = AxisLimit.Any } },
            _ => above with { Agent = new("alcohols") },
        };
        Assert.Equal(code, Assert.Single(Of(odd)).Code);
    }

    private static void Breaks(Claim claim, Level most, string where)
    {
        var problem = Assert.Single(Above(claim, most));
        Assert.Equal("breaks-standing-rule", problem.Code);
        Assert.Equal(where, Where(problem));
        Assert.Equal("for good", problem.Help);
    }

    private static void Keeps(Claim claim, Level most) => Assert.Empty(Above(claim, most));

    private static IReadOnlyList<Problem> Above(Claim claim, Level most) => KnowledgeValidation.Check(EveryKind.Data with
    {
        Claims = [claim],
        StandingRules = [EveryKind.Standing("above") with { NeverAbove = most, When = new() { Strength = AxisLimit.Within(Interval.AtMost(90m)) } }],
    });

    private static IReadOnlyList<Problem> Of(StandingRule standing, params PersonRule[] people) =>
        KnowledgeValidation.Check(EveryKind.Data with { StandingRules = [standing], PersonRules = people });

    private static string Where(Problem problem) => problem.ToString().Split(": ")[0];
}
