using Compat.Tests.RandomCases;

namespace Compat.Curation.Tests.Reviewing;

/// <summary>Two random knowledge bases, one some edits of the other, of what stands beside the rules on parts and of the trees.</summary>
internal static class RandomReach
{
    private static readonly CalendarDate Day = new(2026, 1, 1);

    /// <summary>The first seed.</summary>
    public static int First => (int)RandomSize.Seed(20261130);

    /// <summary>How many pairs are looked at.</summary>
    public static int Count => RandomSize.Checks(60);

    /// <summary>The first valid pair from a seed on.</summary>
    public static RandomReview Make(int seed)
    {
        for (var at = seed; ; at += 7919)
        {
            var random = new Random(at);
            var data = CaseMaker.Make(at, Shape.Whole).Data with { StandingRules = [] };
            data = data with
            {
                HarmlessMeetings = [Harmless("harmless-1", data, random), Harmless("harmless-2", data, random)],
                MixingHazards = Enumerable.Range(1, 4).Select(i => Hazard("mix-" + i, data, random)).ToArray(),
                Protections = Enumerable.Range(1, 2)
                    .Select(i =>
                        new Protection
                        {
                            Id = new("protect-" + i),
                            Agent = One(data.Agents, random).Id,
                            Eyes = "goggles",
                            Sources = [new("s-read")],
                            Reviewed = Day
                        }).ToArray(),
            };
            var edited = data;
            for (var i = random.Next(3); i >= 0; i--) edited = Edit(edited, random, "edited." + i);
            if (KnowledgeBase.TryBuild(data, out _).Count == 0 && KnowledgeBase.TryBuild(edited, out _).Count == 0) return new(at, data, edited, []);
        }
    }

    private static KnowledgeData Edit(KnowledgeData data, Random random, string newId) => random.Next(23) switch
    {
        0 or 1 => data with { Agents = Onto(data.Agents, random, agent => agent.Under is null ? agent : agent with { Under = One(data.Agents, random).Id }) },
        2 => data with { Parts = Onto(data.Parts, random, part => part.Under is null ? part : part with { Under = One(data.Parts, random).Id }) },
        3 => data with
        {
            Parts = Onto(data.Parts, random, part => part with
            {
                Never = random.Next(3) == 0 ? null : random.Next(2) == 0 ? [] : [One(Enum.GetValues<Act>(), random)],
            }),
        },
        4 => data with
        {
            Parts = Onto(data.Parts, random, part => part with
            {
                Geometry = One(Enum.GetValues<Geometry>(), random),
                TouchedBy = One(Enum.GetValues<TouchedBy>(), random),
                Patients = random.Next(2) == 0 ? [] : [One(Enum.GetValues<PatientGroup>(), random)],
            }),
        },
        5 => data with { MixingHazards = data.MixingHazards.Skip(1).ToArray() },
        6 => data with { MixingHazards = [.. data.MixingHazards, Hazard(newId, data, random)] },
        7 => data with { MixingHazards = data.MixingHazards.Count == 0 ? [] : Onto(data.MixingHazards, random, one => Hazard(one.Id.Value, data, random)) },
        8 => data with
        {
            MixingHazards = data.MixingHazards.Count == 0 ? [] : Onto(data.MixingHazards, random, one => one with
            {
                Severity = One(Enum.GetValues<MixingSeverity>(), random),
                OnlyWhere = random.Next(2) == 0 ? "hot" : null,
                How = random.Next(3) == 0 ? "apart" : one.How,
            }),
        },
        9 => data with { PersonRules = data.PersonRules.Skip(1).ToArray() },
        10 => data with { PersonRules = [.. data.PersonRules, Person(newId, data, random)] },
        11 => data with { PersonRules = data.PersonRules.Count == 0 ? [] : Onto(data.PersonRules, random, one => Person(one.Id.Value, data, random)) },
        12 or 13 => data with
        {
            Claims = Onto(data.Claims, random, claim => claim with
            {
                Reaches = claim.Reaches is null ? null : One([Level.Low, Level.Intermediate, Level.High], random),
                When = claim.When with { ContactTime = AxisLimit.Within(Interval.AtLeast(One([10m, 60m, 300m], random))) },
            }),
        },
        14 => data with
        {
            MixingHazards = data.MixingHazards.Count == 0 ? [] : Onto(data.MixingHazards, random, one => one with
            {
                Strength = Strength(one.Agent, data, random),
                WithStrength = Strength(one.WithAgent, data, random),
                AgentRestsOn = random.Next(2) == 0 ? Enum.GetValues<MemberGround>()[0] : null,
            }),
        },
        15 => data with
        {
            HarmlessMeetings =
                [.. data.HarmlessMeetings.Skip(random.Next(2)), .. random.Next(2) == 0 ? [Harmless(newId, data, random)] : Array.Empty<HarmlessMeeting>()],
        },
        16 => data with { Claims = Onto(data.Claims, random, claim => claim with { Where = claim.Where is null ? ClaimWhere.Machine : null }) },
        17 => data with
        {
            Agents = [.. data.Agents, new AgentClass
            {
                Id = new(newId.Replace('.', '-')),
                Name = newId,
                Under = One(data.Agents, random).Id,
                AvailableChlorine = One([0.25m, 0.6m], random),
            }],
        },
        18 or 20 or 21 => data with
        {
            Agents = Onto(data.Agents, random, agent => agent.Under is null ? agent : agent with
            {
                AvailableChlorine = random.Next(3) == 0 ? null : One([0.25m, 0.6m], random),
            }),
        },
        19 => data with
        {
            Agents = Onto(data.Agents, random, agent => agent.Under is null || agent.Basis is null ? agent : agent with
            {
                Basis = StrengthUnit.PercentOf(One([StrengthBasis.MassPerMass, StrengthBasis.VolumePerVolume], random)),
            }),
        },
        _ => data with
        {
            Claims = random.Next(2) == 0 ? data.Claims.Skip(1).ToArray() : Onto(data.Claims, random, claim => claim with
            {
                When = claim.When with
                {
                    Strength = claim.When.Strength.Statement == AxisStatement.Within ? AxisLimit.Within(Interval.AtLeast(One([1m, 20m, 70m], random)))
                        : claim.When.Strength,
                },
            }),
        },
    };

    private static MixingHazard Hazard(string id, KnowledgeData data, Random random)
    {
        var with = random.Next(3);
        var (agent, withAgent) = (One(data.Agents, random).Id, with == 0 ? One(data.Agents, random).Id : null);
        return new()
        {
            Id = new(id),
            Agent = agent,
            WithAgent = withAgent,
            Strength = Strength(agent, data, random),
            WithStrength = Strength(withAgent, data, random),
            WithSoil = with == 1 ? One(Enum.GetValues<SoilKind>(), random) : null,
            WithMaterial = with == 2 ? One(data.Materials, random).Id : null,
            Effects = [One([MixingEffect.ToxicGas, MixingEffect.Fire, MixingEffect.Heat], random)],
            Severity = One(Enum.GetValues<MixingSeverity>(), random),
            SeparatedBy = random.Next(2) == 0 ? [] : [Separation.Rinse],
            Why = "made at random",
            Sources = [new("s-read")],
            Reviewed = Day,
        };
    }

    private static HarmlessMeeting Harmless(string id, KnowledgeData data, Random random) =>
        new()
        {
            Id = new(id),
            Agent = One(data.Agents, random).Id,
            WithAgent = One(data.Agents, random).Id,
            Why = "made at random",
            Sources = [new("s-read")],
            Reviewed = Day,
        };

    /// <summary>Every strength of an agent, or some of one that has a basis of its own.</summary>
    private static Interval? Strength(AgentId? agent, KnowledgeData data, Random random) =>
        data.Agents.FirstOrDefault(one => one.Id == agent)?.Basis is null
            || random.Next(3) == 0 ? null : One([Interval.AtLeast(20m), Interval.AtLeast(50m), Interval.Closed(20m, 50m)], random);

    private static PersonRule Person(string id, KnowledgeData data, Random random)
    {
        var agent = One(data.Agents, random);
        var forbids = random.Next(2) == 0;
        return new()
        {
            Id = new(id),
            Agent = agent.Id,
            Patients = [One(Enum.GetValues<PatientGroup>(), random)],
            Verdict = forbids ? PersonVerdict.NotAllowed : PersonVerdict.WithDuties,
            Duties = forbids ? [] : [new Duty { Kind = DutyKind.CleanFirst }],
            For = random.Next(3) == 0 ? [One(data.Parts, random).Id] : [],
            When = new()
            {
                Strength = agent.Basis is not null && random.Next(2) == 0 ? AxisLimit.Within(Interval.AtLeast(One([1m, 20m, 50m], random))) : default,
            },
            Harm = "harm",
            Why = "made at random",
            Sources = [new("s-read")],
            Reviewed = Day,
        };
    }

    private static T[] Onto<T>(IReadOnlyList<T> list, Random random, Func<T, T> change)
    {
        var at = random.Next(list.Count);
        return list.Select((one, i) => i == at ? change(one) : one).ToArray();
    }

    private static T One<T>(IReadOnlyList<T> list, Random random) => list[random.Next(list.Count)];
}
