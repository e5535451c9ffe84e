using Compat.Curation;
using Compat.Planning;

namespace Compat.Cli.Tests.Plans;

/// <summary>Each situation of the demo clinic, as its plan says it.</summary>
public sealed class DemoClinicTests
{
    private static readonly KnowledgeBase Kb = SiteFile.LayOver(KnowledgeBase.Shipped, Repository.Demo).KnowledgeBase!;

    public static TheoryData<string> Devices => [.. Kb.Sites.SelectMany(site => site.Devices).Select(device => device.Id.Value)];

    [Theory]
    [MemberData(nameof(Devices))]
    public void EveryDevice_HasAPlan_WithEachPartUnderOneHeading(string device)
    {
        var sheet = Plan(device);
        Assert.Equal(
            Kb.Sites.SelectMany(site => site.Devices).Single(one => one.Id.Value == device).Parts.Select(part => part.Id)
            .Order(), sheet.Parts.Select(part => part.Part.Id).Order());
        Assert.All(
            sheet.Steps.SelectMany(step => step.Answers), answer => Assert.True(answer.Verdict >= Verdict.AllowedWithinLimits, answer.Question.ToString()));
        Assert.Equal(0, CliRun.Of("plan", "--site", Repository.Demo, "--device", device, "--json").Notes.Length);
    }

    [Fact]
    public void APartThatNothingOnTheShelfDoes_CannotBeDone_WithWhyOfEveryProduct()
    {
        var part = Part(Plan("autorefractor", q => q with { Occasion = new("between-patients") }), "target-window");
        Assert.Equal((PlanHeading.CannotBeDone, PlanReason.NothingServes), (part.Heading, part.Reason));
        Assert.Equal(
            Kb.Sites.SelectMany(site => site.Products).Select(product => product.Id).Order(), part.Closed.Select(closed => closed.Product).Distinct().Order());
        Assert.Contains(part.WaysOut, way => way.Code == PlanWayOutCode.RuleNeeded);
        Assert.Contains(part.WaysOut, way => way.Code == PlanWayOutCode.Withdraw);
    }

    /// <summary>Sold as a mild quaternary wipe, which the coated screen stands; more than half of it is alcohol, which it does not.</summary>
    [Fact]
    public void TheObviousProduct_IsRefusedForAHiddenIngredient_WhichThePlanNames()
    {
        var part = Part(Plan("autorefractor", q => q with { Level = Level.Intermediate, Soil = [] }), "screen");
        var refused = part.Closed.Single(closed => closed is { Product.Value: "grey-tub-wipe", Role: PlanRole.Disinfect }).Closure!;
        Assert.Equal((ClosureCode.PartDoesNotStandIt, true), (refused.Code, refused.Forbidden));
        Assert.Equal(["isopropanol"], refused.Ingredients);
        Assert.Contains(new RuleId("display-coated.alcohol"), refused.Rules);
        var plain = part.Closed.Single(closed => closed is { Product.Value: "plain-quat-wipe", Role: PlanRole.Disinfect }).Closure!;
        Assert.Equal(ClosureCode.DoesNotKill, plain.Code);
        Assert.Contains("wipe from the grey tub (invented), as cleaner too (its isopropanol: ",
            CliRun.Of("plan", "--site", Repository.Demo, "--device", "autorefractor", "--level", "intermediate", "--soil", "none").Flat,
            StringComparison.Ordinal);
    }

    [Fact]
    public void WhatKillsLongerThanThePartStands_IsClosed_WithThePair()
    {
        var part = Part(
            Plan("autorefractor", q => q with { Occasion = new("after-outbreak"), Against = [OrganismTarget.Of(OrganismGroup.Fungi)], Soil = [] }), "screen");
        var closure = part.Closed.Single(closed => closed is { Product.Value: "plain-quat-wipe", Role: PlanRole.Disinfect }).Closure!;
        Assert.Equal((ClosureCode.KillsTooSlowly, 600m, 300m), (closure.Code, closure.ContactTime, closure.ExposureTime));
        Assert.Equal("plain-quat-wipe: fungi", Assert.Single(closure.Claims).Id);
        Assert.Contains(new RuleId("display-coated.quaternary-ammonium"), closure.Rules);
        Assert.Equal(PlanHeading.CannotBeDone, part.Heading);
    }

    [Fact]
    public void InstructionsThatListWhatTheShelfLacks_LeaveThePartsUndone()
    {
        var sheet = Plan("pachymeter");
        Assert.Empty(sheet.Under(PlanHeading.Done));
        var handpiece = Part(sheet, "handpiece");
        Assert.Contains(handpiece.Closed, closed => closed.Closure is { Code: ClosureCode.PartDoesNotStandIt, NotListed: true });
        Assert.DoesNotContain(handpiece.WaysOut, way => way.Code == PlanWayOutCode.GetMissing);
        Assert.Contains("the device's instructions do not list it", CliRun.Of("plan", "--site", Repository.Demo, "--device", "pachymeter").Flat,
            StringComparison.Ordinal);
    }

    [Fact]
    public void TheTonometerTip_IsDoneAtHighLevel_ByAGuidelineThatNamesIt()
    {
        var sheet = Plan("tonometer");
        var part = Part(sheet, "tip");
        Assert.Equal((PlanHeading.Done, Level.High, "tip-soak"), (part.Heading, part.Need.Level, part.Disinfectant!.Value));
        var step = sheet.Steps.Single(step => step.Order == StepOrder.Disinfect && step.Parts.Contains(part.Part.Id));
        var claims = Kb.Ask(step.Answers.Single(answer => answer.Part == part.Part.Id).Question).Kill!.Claims;
        Assert.All(claims, claim => Assert.Equal((ClaimOrigin.Published, true), (claim.Origin, claim.NamesThePart)));
        Assert.NotEmpty(claims);
    }

    [Fact]
    public void AHinge_AtIntermediateLevel_StandsUnderTheGapNotShown()
    {
        var part = Part(Plan("vision-monitor", q => q with { Level = Level.Intermediate, Soil = [] }), "occluder-arm");
        Assert.Equal((PlanHeading.GapNotShown, "plain-spirit-wipe"), (part.Heading, part.Disinfectant!.Value));
        Assert.Contains(part.WaysOut, way => way.Code == PlanWayOutCode.TakeApart);
        Assert.Contains(part.WaysOut, way => way.Code == PlanWayOutCode.WorkIn);
        var low = Part(Plan("vision-monitor", q => q with { Soil = [] }), "occluder-arm");
        Assert.Equal((PlanHeading.Done, true), (low.Heading, low.WorkIntoGap));
    }

    [Fact]
    public void InAnOutbreak_HarmToLooksIsAccepted_OnlyWhereNothingElseServes()
    {
        PlanQuestion Asked(PlanQuestion q) => q with { Occasion = new("after-outbreak"), Against = [OrganismTarget.Of(OrganismGroup.NonEnvelopedViruses)] };
        Assert.Equal(PlanHeading.CannotBeDone, Part(Plan("vision-monitor", Asked), "screen").Heading);
        var sheet = Plan("vision-monitor", q => Asked(q) with { Accept = [Consequence.Looks] });
        var part = Part(sheet, "screen");
        Assert.Equal((PlanHeading.HarmsThePart, "peroxide-wipe"), (part.Heading, part.Disinfectant!.Value));
        Assert.All(part.Accepted, damage => Assert.Equal(Consequence.Looks, damage.Consequence));
        Assert.NotEmpty(part.Accepted);
        Assert.False(sheet.IsWhole);
    }

    [Fact]
    public void ADeviceHeldAfterAnIncident_HasNoPlan()
    {
        var sheet = Plan("autorefractor", q => q with { Occasion = new("incident-hold") });
        Assert.True(sheet is { Hold: true, Parts.Count: 0, Steps.Count: 0 });
        Assert.Contains(Model.Paper.HoldLabel, sheet.Papers);
    }

    /// <summary>What is said once for all parts is said of none again, and no product's reason is lost to it.</summary>
    [Theory]
    [MemberData(nameof(Devices))]
    public void AReasonThatHoldsOfEveryPart_IsSaidOnce(string device)
    {
        var sheet = Plan(device, q => q with { Level = Level.Intermediate, Soil = [] });
        var names = new Names(Kb);
        var words = new PlanWording(sheet, names);
        foreach (var heading in Enum.GetValues<PlanHeading>())
        {
            var parts = sheet.Under(heading).Where(part => part.Closed.Count > 0).ToArray();
            var everywhere = words.Everywhere(heading);
            Assert.True(parts.Length > 1 || everywhere.Count == 0);
            var alone = parts.Select(part => new ClosedWording([part], words, names)).ToArray();
            Assert.All(alone, one => Assert.Empty(one.Everywhere));
            foreach (var part in parts)
            {
                var said = words.Of(part).Concat(everywhere).ToArray();
                Assert.All(part.Closed, closed => Assert.Contains(said, line => line.Contains(words.Product(closed.Product), StringComparison.Ordinal)));
                Assert.Empty(everywhere.Intersect(words.Of(part)));
            }
        }
    }

    [Fact]
    public void ALabelClaim_IsNoWayOut_ForWhatNeverKills()
    {
        var claims = Kb.Sites.SelectMany(site => site.Devices)
            .SelectMany(device => Plan(device.Id.Value, q => q with { Level = Level.Intermediate, Soil = [] }).Parts)
            .SelectMany(part => part.WaysOut).Where(way => way.Code == PlanWayOutCode.ClaimNeeded).Select(way => way.Product!.Value).Distinct().ToArray();
        Assert.NotEmpty(claims);
        Assert.DoesNotContain("neutral-concentrate", claims);
    }

    /// <summary>Two rules may both ask that a part be dried: with a soft cloth, and in whatever way. A person reads the stricter alone.</summary>
    [Theory]
    [MemberData(nameof(Devices))]
    public void AStep_AsksNoPartTwiceForWhatAStricterDutyMeets(string device)
    {
        foreach (var step in Plan(device).Steps)
            foreach (var part in step.Parts)
            {
                var duties = step.Duties.Where(one => one.Parts.Contains(part)).Select(one => one.Duty)
                    .Where(duty => duty.Kind is DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry).ToArray();
                Assert.All(
                    duties, duty => Assert.DoesNotContain(duties, other => !ReferenceEquals(other, duty) && other.Kind == duty.Kind && other.Note == duty.Note
                    && other.Ways.All(duty.Ways.Contains) && (duty.Within is null || other.Within <= duty.Within)));
            }
    }

    /// <summary>The mixing line is all a person has: it must lead back to the dilution that was judged.</summary>
    [Fact]
    public void WhatTheSheetSaysToMix_IsTheDilutionThatWasJudged()
    {
        var mixed = 0;
        foreach (var device in Kb.Sites.SelectMany(site => site.Devices))
        {
            using var plan = System.Text.Json.JsonDocument.Parse(CliRun.Of("plan", "--site", Repository.Demo, "--device", device.Id.Value, "--json").Output);
            foreach (var step in plan.RootElement.GetProperty("steps").EnumerateArray())
            {
                var line = step.GetProperty("details").EnumerateArray().Select(one => one.GetString()!)
                    .FirstOrDefault(one => one.StartsWith("mix ", StringComparison.Ordinal));
                if (line is null) continue;
                var millilitres = decimal.Parse(line.Split(' ', '\u00a0')[1], System.Globalization.CultureInfo.InvariantCulture);
                var sheet = Plan(device.Id.Value);
                var judged = sheet.Steps.Single(one => one.Number == step.GetProperty("number").GetInt32());
                Assert.Equal(judged.Setting!.Dilution, millilitres / 1000m);
                Assert.All(judged.Answers, answer => Assert.True(answer.Question.Dilution!.Value.Contains(millilitres / 1000m)));
                mixed++;
            }
        }

        Assert.True(mixed > 0, "no step of the demo mixes anything");
    }

    private static PlanSheet Plan(string device, Func<PlanQuestion, PlanQuestion>? change = null)
    {
        var question = new PlanQuestion { Device = new(device) };
        return Kb.PlanOf(change is null ? question : change(question));
    }

    private static PlannedPart Part(PlanSheet sheet, string id) => sheet.Parts.Single(part => part.Part.Id.Value == id);
}
