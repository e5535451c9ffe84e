using Compat.Validation;

namespace Compat.Tests.Validation;

/// <summary>Each case spoils one record in one way; the problem is found by name, at its place, and alone.</summary>
public class EveryKindTests
{
    private static readonly Organism Virus = EveryKind.Data.Organisms[0];

    private static readonly Dictionary<string, (KnowledgeData Data, string Place)> Spoilt = new()
    {
        ["reserved-id"] = (EveryKind.Data with { Organisms = [Virus, Virus with { Id = new("fungi") }] }, "organism `fungi` at id"),
        ["no-source"] = (EveryKind.Data with { Organisms = [Virus with { Sources = [] }] }, "organism `invented-virus`"),
        ["unknown-source"] =
            (EveryKind.Data with { Protections = [EveryKind.Protection with { Sources = [new("sean")] }] }, "protection `alcohol` at sources.0"),
        ["no-level"] = (EveryKind.Data with { Levels = [.. EveryKind.Data.Levels.Skip(1)] }, "level `low`"),
        ["level-loses-group"] = (
            EveryKind.Data with { Levels = [.. EveryKind.Data.Levels.Take(3), EveryKind.Data.Levels[3] with { Includes = [OrganismGroup.Spores] }] },
            "level `sterile` at includes"),
        ["prions-in-level"] = (
            EveryKind.Data with
            {
                Levels = [
                .. EveryKind.Data.Levels.Take(3), EveryKind.Data.Levels[3] with { Includes = [.. EveryKind.Data.Levels[3].Includes, OrganismGroup.Prions] }]
            },
                "level `sterile` at includes"),
        ["no-contact"] = (
            EveryKind.Data with { Needs = [.. EveryKind.Data.Needs, EveryKind.Data.Needs[2] with { Id = new("more"), TouchedBy = [] }] },
            "need `more` at touched-by"),
        ["dry-and-clean"] = (
            EveryKind.Data with { Needs = [EveryKind.Data.Needs[0] with { CleanFirst = true }, .. EveryKind.Data.Needs.Skip(1)] },
            "need `nothing` at clean-first"),
        ["contact-without-need"] = (
            EveryKind.Data with { Needs = [EveryKind.Data.Needs[0] with { TouchedBy = [TouchedBy.Nobody] }, .. EveryKind.Data.Needs.Skip(1)] },
            "need `nothing`"),
        ["two-needs"] = (
            EveryKind.Data with { Needs = [.. EveryKind.Data.Needs.Take(2), EveryKind.Data.Needs[2] with { Soil = [] }] },
            "need `hand-with-blood` at touched-by"),
        ["unknown-organism"] =
            (Claims(EveryKind.Claim with { Kills = [OrganismTarget.Of(new OrganismId("invented-virs"))] }), "claim `alcohol.low` at kills.0"),
        ["listed-twice"] = (Claims(EveryKind.Claim with { Kills = [EveryKind.Claim.Kills[0], EveryKind.Claim.Kills[0]] }), "claim `alcohol.low` at kills.1"),
        ["kills-and-not"] =
            (Claims(EveryKind.Claim with { DoesNotKill = [OrganismTarget.Of(OrganismGroup.Tuberculosis)] }), "claim `alcohol.low` at does-not-kill.0"),
        ["level-without-group"] =
            (Claims(EveryKind.Claim with { DoesNotKill = [OrganismTarget.Of(OrganismGroup.VegetativeBacteria)] }), "claim `alcohol.low` at does-not-kill.0"),
        ["claims-nothing"] = (Claims(EveryKind.Claim with { Reaches = null, Kills = [] }), "claim `alcohol.low`"),
        ["reaches-cleaned"] = (Claims(EveryKind.Claim with { Reaches = Level.Cleaned }), "claim `alcohol.low` at reaches"),
        ["no-refuted"] = (Claims(EveryKind.Claim with { Refuted = " " }), "claim `alcohol.low` at refuted"),
        ["no-why"] = (Claims(EveryKind.Claim with { Why = "" }), "claim `alcohol.low` at why"),
        ["unknown-part"] = (Claims(EveryKind.Claim with { For = [new("windows")] }), "claim `alcohol.low` at for.0"),
        ["unknown-agent"] = (Claims(EveryKind.Claim with { Agent = new("alcohols") }), "claim `alcohol.low` at agent"),
        ["no-contact-time"] = (
            Claims(EveryKind.Claim with { When = EveryKind.Claim.When with { ContactTime = AxisLimit.Within(Interval.AtMost(60m)) } }),
            "claim `alcohol.low` at when.contact-time"),
        ["axis-not-named"] = (Claims(EveryKind.Claim with { When = EveryKind.Claim.When with { Strength = default } }), "claim `alcohol.low` at when"),
        ["outside-axis"] = (
            Claims(EveryKind.Claim with { When = EveryKind.Claim.When with { Ph = AxisLimit.Within(Interval.AtMost(16m)) } }),
            "claim `alcohol.low` at when.ph"),
        ["empty-interval"] = (
            Claims(EveryKind.Claim with { When = EveryKind.Claim.When with { ContactTime = AxisLimit.Within(Interval.Closed(60m, 30m)) } }),
            "claim `alcohol.low` at when.contact-time"),
        ["no-basis"] = (Claims(EveryKind.Claim with { Agent = new("water"), With = [], Bath = null }), "claim `alcohol.low` at when.strength"),
        ["no-usual-strength"] = (
            Claims(EveryKind.Claim with { Agent = new("soap"), With = [], Bath = null, When = EveryKind.Claim.When with { Strength = AxisLimit.Unstated } }),
            "claim `alcohol.low` at when.strength"),
        ["no-methods"] =
            (Claims(EveryKind.Claim with { When = EveryKind.Claim.When with { Methods = MethodLimit.Within() } }), "claim `alcohol.low` at when.methods"),
        ["no-minimum"] = (Claims(EveryKind.Claim with { Bath = new() { Minimum = Interval.AtMost(2m) } }), "claim `alcohol.low` at bath.minimum"),
        ["blend-with-itself"] = (Blend(new("isopropanol"), AxisLimit.Any), "claim `alcohol.low` at with.0.agent"),
        ["blend-without-strength"] = (Blend(new("soap"), AxisLimit.Unstated), "claim `alcohol.low` at with.0"),
        ["duplicate-id"] = (Claims(EveryKind.Claim, EveryKind.Claim), "claim `alcohol.low` at id"),
        ["one-partner"] = (Mixes(EveryKind.Hazard with { WithSoil = SoilKind.Urine }), "mixing `soap.alcohol`"),
        ["mixes-with-itself"] = (Mixes(EveryKind.Hazard with { WithAgent = new("soap"), Id = new("soap.soap") }), "mixing `soap.soap` at with-agent"),
        ["no-effect"] = (Mixes(EveryKind.Hazard with { Effects = [] }), "mixing `soap.alcohol` at effects"),
        ["nothing-and-more"] = (Mixes(EveryKind.Hazard with { SeparatedBy = [Separation.Nothing, Separation.Dry] }), "mixing `soap.alcohol` at separated-by"),
        ["no-other-agent"] = (
            Mixes(EveryKind.Hazard with { WithAgent = null, WithAgentRestsOn = null, WithMaterial = new("foam") }),
            "mixing `soap.alcohol` at when.with-strength"),
        ["no-other-agent twice"] = (
            Mixes(EveryKind.Hazard with { WithAgent = null, WithStrength = null, WithMaterial = new("foam") }), "mixing `soap.alcohol` at rests-on.with-agent"),
        ["no-basis of a hazard"] = (Mixes(EveryKind.Hazard with { WithAgent = new("water") }), "mixing `soap.alcohol` at when.with-strength"),
        ["outside-axis of a hazard"] = (Mixes(EveryKind.Hazard with { Strength = Interval.AtLeast(-1m) }), "mixing `soap.alcohol` at when.strength"),
        ["duplicate-id of a hazard"] =
            (EveryKind.Data with { HarmlessMeetings = [EveryKind.Harmless with { Id = EveryKind.Hazard.Id }] }, "harmless-meeting `soap.alcohol` at id"),
        ["no-harmless"] = (EveryKind.Data with { HarmlessMeetings = [EveryKind.Harmless with { Why = " " }] }, "harmless-meeting `soap.water` at harmless"),
        ["unknown-material"] = (
            Mixes(EveryKind.Hazard with { WithAgent = null, WithStrength = null, WithAgentRestsOn = null, WithMaterial = new("foams") }),
            "mixing `soap.alcohol` at with-material"),
        ["no-patient"] = (People(EveryKind.WithDuties with { Patients = [] }), "person-rule `soap.eye` at patients"),
        ["no-harm"] = (People(EveryKind.WithDuties with { Harm = "" }), "person-rule `soap.eye` at harm"),
        ["no-duty"] = (People(EveryKind.WithDuties with { Duties = [] }), "person-rule `soap.eye` at verdict"),
        ["duty-of-prohibition"] = (People(EveryKind.WithDuties with { Verdict = PersonVerdict.NotAllowed }), "person-rule `soap.eye` at duties"),
        ["duty-without-way"] = (People(EveryKind.WithDuties with { Duties = [new() { Kind = DutyKind.TakeOff }] }), "person-rule `soap.eye` at duties.0"),
        ["prohibition-ends of a person rule"] =
            (People(EveryKind.Occupied with { When = new() { Uses = AxisLimit.Within(Interval.AtMost(3m)) } }), "person-rule `alcohol.occupied` at when.uses"),
        ["unstated-in-prohibition"] = (People(EveryKind.WithDuties with { When = new() { Ph = AxisLimit.Unstated } }), "person-rule `soap.eye` at when.ph"),
        ["glove-holds-and-fails"] = (Protects(EveryKind.Protection with { GlovesFail = ["nitrile"] }), "protection `alcohol` at gloves.0.material"),
        ["no-concentration"] = (
            Protects(EveryKind.Protection with { Limits = [EveryKind.Protection.Limits[0] with { Value = new(1m, "percent") }] }),
            "protection `alcohol` at limits.0.value"),
        ["protects-from-nothing"] = (
            Protects(new() { Id = new("alcohol"), Agent = new("alcohol"), Sources = [new("seen")], Reviewed = EveryKind.Claim.Reviewed }),
            "protection `alcohol`"),
        ["no-phrase"] = (Words(EveryKind.Word with { Phrases = [] }), "instruction-word `mild-soap` at phrases"),
        ["duplicate-phrase"] =
            (Words(EveryKind.Word, EveryKind.Word with { Id = new("other"), Phrases = ["Mild soap"] }), "instruction-word `other` at phrases.0"),
        ["no-reason"] = (Words(EveryKind.Word with { Reason = "" }), "instruction-word `mild-soap` at reason"),
        ["no-agent"] = (Words(EveryKind.Word with { Forbids = new() }), "instruction-word `mild-soap` at forbids.agents"),
        ["permits-everything"] =
            (Words(EveryKind.Word with { Permits = new() { Agents = [AgentClass.Root] } }), "instruction-word `mild-soap` at permits.agents.0"),
        ["mixed-basis"] = (
            Words(EveryKind.Word with { Permits = EveryKind.Word.Permits! with { Agents = [new("soap"), new("alcohol")] } }),
            "instruction-word `mild-soap` at permits.when.strength"),
        ["word-without-reading"] = (Words(EveryKind.Word with { Permits = null, Forbids = null, Act = null }), "instruction-word `mild-soap`"),
        ["lists-nothing-and-permits"] = (Words(EveryKind.Word with { ListsNothing = true }), "instruction-word `mild-soap` at lists-nothing"),
        ["act-says-nothing"] = (Words(EveryKind.Word with { Act = new() }), "instruction-word `mild-soap` at act"),
        ["permission-from"] = (
            Words(EveryKind.Word with { Permits = EveryKind.Word.Permits! with { When = new() { Uses = AxisLimit.Within(Interval.AtLeast(5m)) } } }),
            "instruction-word `mild-soap` at permits.when.uses"),
        ["prohibition-ends"] = (
            Words(EveryKind.Word with { Forbids = EveryKind.Word.Forbids! with { When = new() { ExposureTime = AxisLimit.Within(Interval.AtMost(5m)) } } }),
            "instruction-word `mild-soap` at forbids.when.exposure-time"),
        ["no-name"] = (Occasions(EveryKind.Outbreak with { Name = "" }), "occasion `after-outbreak` at name"),
        ["no-adds"] = (Occasions(EveryKind.Outbreak with { Adds = [" "] }), "occasion `after-outbreak` at adds.0"),
        ["label-without-hold"] = (Occasions(EveryKind.Outbreak with { Papers = [Paper.HoldLabel] }), "occasion `after-outbreak` at papers"),
        ["hold-and-plan"] = (Occasions(EveryKind.Held with { AtLeast = Level.Low }), "occasion `held` at at-least"),
        ["convention-order"] = (
            EveryKind.Data with
            {
                Conventions = [
                .. EveryKind.Data.Conventions.Where(c => c.Key != ConventionKey.DamageOrder),
                new() { Key = ConventionKey.DamageOrder, Range = Interval.Whole, Consequences = [Consequence.Looks, Consequence.Wear], Reason = "r" }]
            },
                "convention `damage-order` at value"),
        ["convention-order twice"] = (
            EveryKind.Data with
            {
                Conventions = [
                .. EveryKind.Data.Conventions.Where(c => c.Key != ConventionKey.HazardOrder),
                new() { Key = ConventionKey.HazardOrder, Range = Interval.Whole, Hazards = [.. Enum.GetValues<Hazard>(), Hazard.Toxic], Reason = "r" }]
            },
                "convention `hazard-order` at value"),
        ["outside-axis of a convention"] = (
            EveryKind.Data with
            {
                Conventions = [
                .. EveryKind.Data.Conventions.Where(c => c.Key != ConventionKey.MostProducts),
                new() { Key = ConventionKey.MostProducts, Range = Interval.Exactly(33m), Reason = "r" }]
            }, "convention `most-products` at value"),
        ["convention-without-end"] = (
            EveryKind.Data with
            {
                Conventions = [
                .. EveryKind.Data.Conventions.Where(c => c.Key != ConventionKey.WindowLeast),
                new() { Key = ConventionKey.WindowLeast, Range = Interval.AtLeast(15m), Reason = "r" }]
            }, "convention `window-least` at value"),
        ["one-figure"] =
            (Agents("alcohol", agent => agent with { Cas = ["64-17-5", "67-63-0"], AvailableChlorine = null, Density = 0.8m }), "agent `alcohol` at density"),
        ["one-figure of chlorine"] = (
            Agents("alcohol", agent => agent with { Cas = ["64-17-5", "67-63-0"], AvailableChlorine = 0.6m, Density = null }),
            "agent `alcohol` at available-chlorine"),
        ["mark-too-weak"] = (
            EveryKind.Data with
            {
                Parts = [
                .. EveryKind.Data.Parts.Select(
                    part => part.Id.Value != "window" ? part
                    : part with { Wettest = ApplicationMethod.Rinse, WaterIngress = new() { Numeral = 7, Means = "m" } })]
            }, "part `window` at wettest"),
        ["mark-too-weak by inheritance"] = (
            EveryKind.Data with
            {
                Parts = [
                .. EveryKind.Data.Parts.Select(part => part.Id.Value != "window" ? part : part with { Wettest = null, WaterIngress = null }),
                new() { Id = new("over"), Name = "over", Under = new("window"), Wettest = ApplicationMethod.Immerse,
                WaterIngress = new() { Numeral = 7, Means = "m" }, Sources = [new("seen")] },
                new() { Id = new("below"), Name = "below", Under = new("over"), WaterIngress = new() { Numeral = 6, Means = "m" }, Sources = [new("seen")] }]
            },
                "part `below` at water-ingress.code"),
        ["rests-on-absence"] = (Rules(rule => rule with { RestsOn = [ThinGround.Absence] }), "rule `" + Permission.Id + "` at rests-on"),
        ["exceeds-test in all uses"] = (
            Rules(rule =>
                rule with
                {
                    When = rule.When with { ExposureTime = AxisLimit.Within(Interval.AtMost(600m)), Uses = AxisLimit.Within(Interval.AtMost(1009m)) },
                    Tested = new() { On = TestPiece.Coupon, Exposure = new() { ExposureTime = AxisLimit.Within(Interval.AtMost(604_800m)) } }
                }),
                    "rule `" + Permission.Id + "` at when.uses"),
    };

    private static Rule Permission => EveryKind.Data.Rules.First(rule => rule.Allows);

    private static KnowledgeData Rules(Func<Rule, Rule> spoil) =>
        EveryKind.Data with { Rules = [.. EveryKind.Data.Rules.Select(rule => rule.Id == Permission.Id ? spoil(rule) : rule)] };

    private static KnowledgeData Agents(string id, Func<AgentClass, AgentClass> spoil) =>
        EveryKind.Data with { Agents = [.. EveryKind.Data.Agents.Select(agent => agent.Id.Value == id ? spoil(agent) : agent)] };

    public static TheoryData<string> Codes => [.. Spoilt.Keys];

    [Fact]
    public void The_whole_is_sound() => Assert.Empty(KnowledgeValidation.Check(EveryKind.Data));

    [Theory]
    [MemberData(nameof(Codes))]
    public void What_is_spoilt_is_found_where_it_is(string code)
    {
        var (data, place) = Spoilt[code];
        var problem = Assert.Single(KnowledgeValidation.Check(data));
        Assert.Equal(code.Split(' ')[0], problem.Code);
        Assert.StartsWith(place + ": ", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_organism_is_answered_with_the_nearest_name() =>
        Assert.Equal("did you mean `invented-virus`?", KnowledgeValidation.Check(Spoilt["unknown-organism"].Data)[0].Help);

    [Fact]
    public void A_blend_names_other_agents_that_are_known_each_once_and_in_its_own_unit()
    {
        var soap = new ClaimPartner(new("soap"), AxisLimit.Within(Interval.AtLeast(1m)));
        Found("unknown-agent", "with.0.agent", soap with { Agent = new("soaps") });
        Found("listed-twice", "with.1.agent", soap, soap);
        Found("no-basis", "with.0.strength", new ClaimPartner(new("water"), AxisLimit.Any));
        Found("outside-axis", "with.0.strength", soap with { Strength = AxisLimit.Within(Interval.AtLeast(-1m)) });
        Found("blend-without-strength", "with.0", soap with { Strength = default });

        static void Found(string code, string field, params ClaimPartner[] with)
        {
            var problem = Assert.Single(KnowledgeValidation.Check(Claims(EveryKind.Claim with { With = with })));
            Assert.Equal((code, field), (problem.Code, problem.Place.Field));
        }
    }

    private static KnowledgeData Blend(AgentId agent, AxisLimit strength) => Claims(EveryKind.Claim with { With = [new(agent, strength)] });

    private static KnowledgeData Claims(params Claim[] claims) => EveryKind.Data with { Claims = claims };

    private static KnowledgeData Mixes(MixingHazard hazard) =>
        EveryKind.Data with { MixingHazards = [hazard, .. EveryKind.Data.MixingHazards.Skip(1)], StandingRules = [] };

    private static KnowledgeData People(PersonRule rule) => EveryKind.Data with { PersonRules = [EveryKind.Forbids, rule] };

    private static KnowledgeData Protects(Protection protection) => EveryKind.Data with { Protections = [protection] };

    private static KnowledgeData Occasions(Occasion occasion) => EveryKind.Data with { Occasions = [occasion] };

    private static KnowledgeData Words(params InstructionWord[] words) => EveryKind.Data with { InstructionWords = words };
}
