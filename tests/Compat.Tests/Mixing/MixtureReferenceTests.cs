using Compat.Tests.Evaluation;
using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Mixing;

/// <summary>What is answered where two meet, against the reference on random records, products and strengths.</summary>
public sealed class MixtureReferenceTests
{
    private static readonly string[] Names = ["spirit", "wood-spirit", "grape-spirit", "peroxide", "weak-peroxide", "odd-peroxide", "vinegar", "brine"];

    private static readonly AgentClass[] Agents =
    [
        new() { Id = AgentClass.Root, Name = "any agent" },
        Agent("spirit", "any-agent", "% v/v"), Agent("wood-spirit", "spirit"), Agent("grape-spirit", "spirit"),
        Agent("peroxide", "any-agent", "% w/w"), Agent("weak-peroxide", "peroxide"), Agent("odd-peroxide", "peroxide"),
        Agent("vinegar", "any-agent", "% w/w"), Agent("brine", "any-agent"), Agent("water", "any-agent"),
    ];

    [Fact]
    public void Judge_RandomRecords_AgreesWithTheReference()
    {
        int outcomes = 0, narrowed = 0;
        for (var seed = 0; seed < RandomSize.Cases(share: 20); seed++)
        {
            var random = new Random(20261130 + seed);
            var (data, site) = Make(random);
            var kb = EyeWorkshop.Build(data).With(site);
            var reference = new MeetingReference(data, [site]);
            for (var i = 0; i < 20; i++)
            {
                var (one, other) = (Partner(random, site, mayBeMaterial: false), Partner(random, site, mayBeMaterial: true));
                Assert.True(Mixture.TryJudge(kb, one, other, out var answer, out var problems), string.Join("\n", problems));
                var (hold, others, outcome) = reference.Of(one, other);
                var context = $"seed {20261130 + seed}: {one} {one.Strength} with {other} {other.Strength}";
                Assert.True(hold.SequenceEqual(Ids(answer!.Hazards)), context + " hazards");
                Assert.True(others.SequenceEqual(Ids(answer.AtOtherStrengths)), context + " at other strengths");
                Assert.True(outcome == answer.Outcome, context + " outcome");
                outcomes |= 1 << (int)outcome;
                narrowed += others.Length;
            }
        }

        Assert.Equal(7, outcomes);
        Assert.True(narrowed > 10, $"{narrowed} hazards lay at other strengths");
    }

    /// <summary>
    /// Whatever is stated of strength, and whatever is on record as harmless, no hazard comes of it, and none goes that holds at every strength.
    /// </summary>
    [Fact]
    public void Judge_StrengthStatedOrHarmlessOnRecord_TakesNoHazardOfEveryStrengthAway()
    {
        for (var seed = 0; seed < RandomSize.Cases(share: 50); seed++)
        {
            var random = new Random(seed);
            var (data, site) = Make(random);
            var kb = EyeWorkshop.Build(data).With(site);
            var without = EyeWorkshop.Build(data with { HarmlessMeetings = [] }).With(site);
            var (one, other) = (Partner(random, site, mayBeMaterial: false), Partner(random, site, mayBeMaterial: true));
            var stated = Judge(kb, one, other);
            var unknown = Judge(without, Bare(one), Bare(other));
            Assert.Equal(Ids(stated.Hazards), Ids(Judge(without, one, other).Hazards));
            Assert.Subset(Ids(unknown.Hazards).ToHashSet(), Ids(stated.Hazards).ToHashSet());
            Assert.Subset(
                Ids(stated.Hazards).ToHashSet(), Ids(unknown.Hazards.Where(found => found.Hazard is { Strength: null, WithStrength: null })).ToHashSet());
        }
    }

    private static MixingPartner Bare(MixingPartner partner) => partner.Agent is { } agent ? MixingPartner.Of(agent) : partner;

    private static MixingAnswer Judge(KnowledgeBase kb, MixingPartner one, MixingPartner other) =>
        Mixture.TryJudge(kb, one, other, out var answer, out var problems) ? answer! : throw new InvalidOperationException(string.Join("\n", problems));

    private static string[] Ids(IEnumerable<FoundHazard> found) => [.. found.Select(one => one.Hazard.Id.Value).Distinct().Order(StringComparer.Ordinal)];

    private static AgentClass Agent(string id, string under, string? basis = null) =>
        new() { Id = new(id), Name = id, Under = new(under), Basis = basis is null ? null : EyeWorkshop.Unit(basis) };

    private static AgentId Any(Random random) => new(Names[random.Next(Names.Length)]);

    private static Interval? Box(Random random, AgentId? agent) => agent is null || agent.Value == "brine" || random.Next(2) == 0 ? null
        : random.Next(
            3) switch
        {
            0 => Interval.AtLeast(random.Next(1, 60)),
            1 => Interval.Above(random.Next(1, 60)),
            _ =>
                Interval.Closed(random.Next(1, 20), random.Next(20, 60))
        };

    private static (KnowledgeData Data, Site Site) Make(Random random)
    {
        var hazards = Enumerable.Range(0, random.Next(1, 7)).Select(i =>
        {
            var (agent, with) = (Any(random), random.Next(4) == 0 ? null : Any(random));
            if (with == agent) with = new("water");
            return new MixingHazard
            {
                Id = new("h" + i),
                Agent = agent,
                WithAgent = with,
                WithSoil = with is null && i % 2 == 0 ? SoilKind.Blood : null,
                WithMaterial = with is null && i % 2 == 1 ? new("foam") : null,
                Strength = Box(random, agent),
                WithStrength = with?.Value == "water" ? null : Box(random, with),
                Effects = [MixingEffect.Heat],
                Severity = MixingSeverity.Avoid,
                Why = "seen",
                Sources = [new("seen")],
                Reviewed = EyeWorkshop.Day,
            };
        });
        var harmless = Enumerable.Range(0, random.Next(0, 5)).Select(i =>
        {
            var (agent, with) = (Any(random), Any(random));
            return new HarmlessMeeting
            {
                Id = new("m" + i),
                Agent = agent,
                WithAgent = with == agent ? new("water") : with,
                Why = "seen",
                Sources = [new("seen")],
                Reviewed = EyeWorkshop.Day,
            };
        });
        var data = EyeWorkshop.Data with { Agents = Agents, Rules = [], StandingRules = [], MixingHazards = [.. hazards], HarmlessMeetings = [.. harmless] };
        var products = Enumerable.Range(0, 3).Select(i => new Product
        {
            Id = new("p" + i),
            Name = "p" + i,
            Composition = random.Next(4) == 0 ? Composition.Partial : Composition.Full,
            StrengthOf = random.Next(3) == 0 ? StrengthOf.Concentrate : StrengthOf.Liquid,
            Ingredients = [
                .. Enumerable.Range(0, random.Next(1, 4)).Select(_ => Any(random)).Distinct()
                .Select(agent => new Ingredient { Agent = agent, Strength = Figure(random, agent) })],
        });
        return (data, new Site { Id = new("shelf"), Name = "shelf", Products = [.. products] });
    }

    private static Strength? Figure(Random random, AgentId agent)
    {
        if (agent.Value == "brine" || random.Next(4) == 0) return null;
        var low = random.Next(0, 30);
        return new Strength(
            Interval.Closed(low, low + random.Next(0, 10)), EyeWorkshop.Unit(agent.Value.EndsWith("spirit", StringComparison.Ordinal) ? "% v/v" : "% w/w"));
    }

    private static MixingPartner Partner(Random random, Site site, bool mayBeMaterial)
    {
        if (mayBeMaterial && random.Next(6) == 0) return random.Next(2) == 0 ? MixingPartner.Of(SoilKind.Blood) : MixingPartner.Of(new MaterialId("foam"));
        if (random.Next(2) == 0) return MixingPartner.Of(site.Products[random.Next(site.Products.Count)].Id);
        var agent = Any(random);
        return Figure(random, agent) is { } strength ? MixingPartner.Of(agent, strength) : MixingPartner.Of(agent);
    }
}
