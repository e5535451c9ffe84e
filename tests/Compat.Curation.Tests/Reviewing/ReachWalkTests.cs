using Compat.Curation.Reviewing;
using Compat.Deciding;
using Compat.Tests.RandomCases;
using Compat.Validation;

namespace Compat.Curation.Tests.Reviewing;

/// <summary>
/// The review against a walk that asks the library of every agent with everything it can meet, every agent on every part for every patient, and every part with
/// every act.
/// </summary>
public class ReachWalkTests
{
    private static readonly PatientGroup[] Patients = Enum.GetValues<PatientGroup>();

    [Fact]
    public void WhatMeets_IsReportedExactlyWhereTheLibraryAnswersOtherwise() => ForAll((pair, before, after, facts) =>
    {
        var agents = Both(pair.Before.Agents, pair.After.Agents, agent => agent.Id.Value).Select(id => new AgentId(id)).ToArray();
        var reported = facts.Where(fact => fact.About == RecordKind.Mixing).ToArray();
        var differing = 0;
        foreach (var first in agents)
        {
            foreach (
                var other in agents.Select(MixingPartner.Of).Concat(Enum.GetValues<SoilKind>().Select(MixingPartner.Of))
                .Concat(pair.After.Materials.Select(material => MixingPartner.Of(material.Id))))
            {
                var (was, now) = (Hazards(before, first, other), Hazards(after, first, other));
                var there = reported.Where(
                    fact => fact.Reaches.Any(place => IsOf(place, first, other) || (other.Agent is { } agent && IsOf(place, agent, MixingPartner.Of(first)))))
                    .ToArray();
                var differs = !was.SequenceEqual(now);
                if (differs) differing++;
                Assert.True(
                    differs == (there.Length > 0),
                    $"{first} with {other}: [{string.Join("; ", was)}] then, [{string.Join("; ", now)}] now, reported: "
                        + $"{string.Join("; ", there.Select(fact => fact.Text))}");
                var (spared, spares) = (Harmless(before, first, other), Harmless(after, first, other));
                foreach (var said in spares.Except(spared)) AssertTold(said, first, other, ChangeKind.Loosened);
                foreach (var said in spared.Except(spares)) AssertTold(said, first, other, ChangeKind.Tightened);
                if (Worst(before, first, other) is { } worst && !(Worst(after, first, other) <= worst))
                    Assert.Contains(there, fact => fact.Kind == ChangeKind.Loosened);
            }
        }

        return differing;

        void AssertTold(string said, AgentId first, MixingPartner other, ChangeKind kind) => Assert.True(
            facts.Any(
                fact => fact.About == RecordKind.HarmlessMeeting && fact.Kind == kind
                && fact.Reaches.Any(place => IsOf(place, first, other) || (other.Agent is { } agent && IsOf(place, agent, MixingPartner.Of(first)))))
            || EditedOnes(pair, said)
                .Any(id => facts.Any(fact => fact.Kind == kind && fact.Text.Contains($"`{id}`", StringComparison.Ordinal))), $"{said} of {first} with {other}");
    });

    [Fact]
    public void WhatPatientsMeet_IsReportedExactlyWhereTheLibraryAnswersOtherwise() => ForAll((pair, before, after, facts) =>
    {
        var differing = 0;
        var reported = facts.Where(fact => fact.About == RecordKind.PersonRule).ToArray();
        foreach (var agent in Both(pair.Before.Agents, pair.After.Agents, one => one.Id.Value))
        {
            foreach (var part in Both(pair.Before.Parts, pair.After.Parts, one => one.Id.Value).Prepend(null))
            {
                foreach (var patient in Patients)
                {
                    var (was, now) = (Speaking(before, agent, part, patient), Speaking(after, agent, part, patient));
                    var there = reported.Where(fact => fact.Reaches.Contains(new FactPlace(agent, Words.Of(patient), part))).ToArray();
                    var differs = !was.SequenceEqual(now);
                    if (differs) differing++;
                    Assert.True(
                        differs == (there.Length > 0),
                        $"{agent} on {part} for {patient}: [{string.Join("; ", was)}] then, [{string.Join("; ", now)}] now, reported: "
                            + $"{string.Join("; ", there.Select(fact => fact.Text))}");
                    foreach (var (strength, method) in Points())
                    {
                        if (!Forbids(before, agent, part, patient, strength, method) || Forbids(after, agent, part, patient, strength, method)) continue;
                        Assert.True(
                            there.Any(fact => fact.Kind == ChangeKind.Loosened),
                            $"{agent} on {part} for {patient} at {strength} by {method} was forbidden: {string.Join("; ", there.Select(fact => fact.Text))}");
                    }
                }
            }
        }

        return differing;
    });

    [Fact]
    public void WhatPartsStand_IsReportedExactlyWhereTheLibraryAnswersOtherwise() => ForAll((pair, before, after, facts) =>
    {
        var differing = 0;
        var reported = facts.Where(fact => fact.About == RecordKind.Part).ToArray();
        foreach (var part in Both(pair.Before.Parts, pair.After.Parts, one => one.Id.Value))
        {
            var (was, now) = (Variant(before, part), Variant(after, part));
            foreach (var act in Enum.GetValues<Act>())
            {
                var differs = was.NeverStands(act) != now.NeverStands(act);
                if (differs) differing++;
                var there = reported.Where(fact => fact.Reaches.Contains(new FactPlace(part, Words.Of(act)))).ToArray();
                Assert.True(differs == (there.Length > 0), $"{part} and {act}");
                if (was.NeverStands(act) && !now.NeverStands(act)) Assert.Contains(there, fact => fact.Kind == ChangeKind.Loosened);
            }

            var (needed, needs) = (NeedOf(before, part), NeedOf(after, part));
            foreach (var patient in Patients)
            {
                // Blood is met by a patient and lies as soil too, in one word.
                var there = reported.Where(
                    fact => fact.Reaches.Contains(new FactPlace(part, Words.Of(patient))) && !fact.Text.Contains("soiled", StringComparison.Ordinal)).ToArray();
                Assert.True((needed.Patients.Contains(patient) != needs.Patients.Contains(patient)) == (there.Length > 0), $"{part} for {patient}");
            }

            var other = was.Geometry != now.Geometry || needed.TouchedBy != needs.TouchedBy;
            Assert.True(
                !other || reported.Any(fact => fact.Reaches.Contains(new FactPlace(part))),
                $"{part}: {was.Geometry} and {now.Geometry}, {needed.TouchedBy} and {needs.TouchedBy}");
        }

        return differing;
    });

    [Fact]
    public void WhatKills_IsReportedWhereAPointIsReachedOnOneSideOnly() => ForAll((pair, before, after, facts) =>
    {
        var differing = 0;
        var reported = facts.Where(fact => fact.About == RecordKind.Claim).ToArray();
        foreach (var agent in Both(pair.Before.Agents, pair.After.Agents, one => one.Id.Value))
        {
            foreach (var part in Both(pair.Before.Parts, pair.After.Parts, one => one.Id.Value).Prepend(null))
            {
                var there = reported.Where(fact => fact.Reaches.Any(place => place.Subject == agent && (place.Part is null || place.Part == part))).ToArray();
                foreach (var (strength, method) in Points())
                {
                    foreach (var seconds in new[] { 20m, 60m, 300m, 4000m })
                    {
                        if (Reached(after, agent, part, strength, method, seconds, plain: true)
                            .Except(Reached(before, agent, part, strength, method, seconds, plain: false)).Any())
                        {
                            differing++;
                            Assert.True(
                                there.Any(fact => fact.Kind == ChangeKind.EfficacyLoosened),
                                $"{agent} on {part} at {strength}, {method}, {seconds} s reaches more");
                        }

                        if (Reached(before, agent, part, strength, method, seconds, plain: true)
                            .Except(Reached(after, agent, part, strength, method, seconds, plain: false)).Any())
                        {
                            differing++;
                            Assert.True(
                                there.Any(fact => fact.Kind == ChangeKind.Tightened), $"{agent} on {part} at {strength}, {method}, {seconds} s reaches less");
                        }
                    }
                }
            }
        }

        return differing;
    });

    /// <summary>The share of available chlorine of an agent that states one runs over that of all below it.</summary>
    [Fact]
    public void WhatAStrengthHolds_IsReportedOfAllThatStateAShareAboveTheEdit() => ForAll((pair, _, _, facts) =>
    {
        var differing = 0;
        foreach (var agent in Both(pair.Before.Agents, pair.After.Agents, one => one.Id.Value))
        {
            var differs = Share(pair.Before, agent) != Share(pair.After, agent);
            if (differs) differing++;
            var there = facts.Where(
                fact => fact.About == RecordKind.Agent && fact.Reaches.Contains(new FactPlace(agent))
                && fact.Text.StartsWith("strengths are converted by", StringComparison.Ordinal)
                && fact.Text.Contains("of available chlorine", StringComparison.Ordinal)).ToArray();
            Assert.True(differs == (there.Length > 0), $"{agent}: {Share(pair.Before, agent)} then, {Share(pair.After, agent)} now");
            Assert.All(there, fact => Assert.Equal(ChangeKind.Loosened, fact.Kind));
        }

        return differing;
    });

    private static void ForAll(Func<RandomReview, KnowledgeBase, KnowledgeBase, IReadOnlyList<FactChange>, int> holds)
    {
        var (first, count) = (RandomReach.First, RandomReach.Count);
        var differing = 0;
        for (var i = 0; i < count; i++)
        {
            var pair = RandomReach.Make(first + i);
            var facts = pair.Report.Groups.SelectMany(group => group.Facts).ToArray();
            try
            {
                differing += holds(pair, pair.Build(pair.Before), pair.Build(pair.After), facts);
            }
            catch (Xunit.Sdk.XunitException fault)
            {
                Assert.Fail($"{fault.Message}\nseed {first + i}\n"
                    + $"{string.Join("\n", EditList.Between(pair.Before, pair.After).All.Select(edit => $"{edit.Kind} {edit.Id} {edit.Action} {string.Join(",", edit.Fields)}"))}");
            }
        }

        Assert.True(differing >= RandomSize.Telling(8, 60), $"only {differing} places differ");
    }

    private static IEnumerable<string> Both<T>(IReadOnlyList<T> before, IReadOnlyList<T> after, Func<T, string> id) => before.Select(id)
        .Intersect(after.Select(id));

    private static IEnumerable<(decimal Strength, ApplicationMethod Method)> Points() =>
        from strength in new[] { 0.5m, 5m, 12m, 30m, 60m, 90m }
        from method in new[] { ApplicationMethod.DampWipe, ApplicationMethod.Spray, ApplicationMethod.Immerse }
        select (strength, method);

    private static bool IsOf(FactPlace place, AgentId first, MixingPartner other) => place.Subject == first.Value && place.With == other.ToString();

    private static string[] Hazards(KnowledgeBase kb, AgentId first, MixingPartner other) =>
        Mixture.TryJudge(kb, MixingPartner.Of(first), other, out var answer, out _)
        ? answer.Hazards.Select(
            one => $"{one.OnlySome} {Written(one.Hazard)} {Unit(kb, one.Hazard.Strength is null ? null : one.Hazard.Agent)} "
                + $"{Unit(kb, one.Hazard.WithStrength is null ? null : one.Hazard.WithAgent)}").Distinct().Order(StringComparer.Ordinal).ToArray() : [];

    /// <summary>In what a strength of an agent is counted.</summary>
    private static StrengthUnit? Unit(KnowledgeBase kb, AgentId? agent)
    {
        for (var at = agent; at is not null; at = kb.Data.Agents.Single(one => one.Id == at).Under)
            if (kb.Data.Agents.Single(one => one.Id == at).Basis is { } unit) return unit;
        return null;
    }

    private static string Written(MixingHazard one) =>
        $"{one.Id} {one.Severity} {string.Join(",", one.Effects.Order())} {one.OnlyWhere} {string.Join(",", one.SeparatedBy.Order())} "
            + $"{string.Join(",", one.Forms)} {one.How} {one.Agent} {one.Strength} {one.WithStrength} {one.WithAgent}{one.WithSoil}{one.WithMaterial}";

    private static string[] Harmless(KnowledgeBase kb, AgentId first, MixingPartner other) =>
        Mixture.TryJudge(kb, MixingPartner.Of(first), other, out var answer, out _) ? [.. answer.Harmless.Select(Written).Distinct()] : [];

    private static string Written(HarmlessMeeting one) => $"{one.Agent} with {one.WithAgent}";

    /// <summary>The records that say so on one side only.</summary>
    private static IEnumerable<string> EditedOnes(RandomReview pair, string said)
    {
        var (was, now) = (Ids(pair.Before), Ids(pair.After));
        return was.Except(now).Concat(now.Except(was));

        string[] Ids(KnowledgeData data) => [.. data.HarmlessMeetings.Where(one => Written(one) == said).Select(one => one.Id.Value)];
    }

    private static (decimal Least, decimal Most)? Share(KnowledgeData data, string agent)
    {
        if (data.Agents.Single(one => one.Id.Value == agent).AvailableChlorine is null) return null;
        var shares = data.Agents.Where(one => Line(one).Contains(agent)).Select(one => one.AvailableChlorine).OfType<decimal>().ToArray();
        return (shares.Min(), shares.Max());

        IEnumerable<string> Line(AgentClass one)
        {
            for (var at = one; at is not null; at = data.Agents.FirstOrDefault(other => other.Id == at.Under)) yield return at.Id.Value;
        }
    }

    private static MixingSeverity? Worst(KnowledgeBase kb, AgentId first, MixingPartner other) =>
        Mixture.TryJudge(kb, MixingPartner.Of(first), other, out var answer, out _) ? answer.Worst : null;

    private static Question Asked(string agent, string? part, PatientGroup patient) => new()
    {
        Agent = new(agent),
        Part = part is null ? null : new PartId(part),
        Materials = part is null ? [new MaterialSlot(Material.Root)] : [],
        Patients = [patient],
        TouchedBy = TouchedBy.Hand,
        Occupied = true,
        Temperature = Interval.Closed(-500, 5000),
        Ph = Interval.Closed(-1, 15),
    };

    private static IReadOnlyList<PersonRuleOnAxes> Rules(KnowledgeBase kb, string agent, string? part, PatientGroup patient)
    {
        var question = Asked(agent, part, patient);
        var substance = SubstanceResolver.Resolve(kb.Compiled, question) with
        {
            Components = [SubstanceResolver.Resolve(kb.Compiled, question).Components[0] with { Strength = Interval.Whole }],
        };
        return new PeopleGround(kb.Compiled, question, substance, PartResolver.Variants(kb.Compiled, question), NeedMaker.Of(kb.Compiled, question)).Rules();
    }

    private static string[] Speaking(KnowledgeBase kb, string agent, string? part, PatientGroup patient) =>
        Rules(kb, agent, part, patient).Select(one => one.Rule).Distinct()
            .Select(rule =>
                $"{rule.Id} {rule.Verdict} {rule.Occupied} {string.Join(",", rule.Duties.Select(duty => duty.Kind))} {rule.Harm} {rule.When} "
                    + $"{string.Join(",", rule.Patients.Order())} {string.Join(",", rule.For)} {rule.Agent} "
                    + $"{Unit(kb, rule.When.Strength.Statement == AxisStatement.Within ? rule.Agent : null)}").Order(StringComparer.Ordinal).ToArray();

    private static bool Forbids(KnowledgeBase kb, string agent, string? part, PatientGroup patient, decimal strength, ApplicationMethod method) =>
        Rules(kb, agent, part, patient)
            .Any(one => one.Rule.Verdict == PersonVerdict.NotAllowed && one.Methods.Contains(method) && Holds(one.Rule.When.Strength, strength)
            && Holds(one.Rule.When.ExposureTime, 60m) && Holds(one.Rule.When.Temperature, 20m));

    private static bool Holds(AxisLimit limit, decimal value) => limit.Statement != AxisStatement.Within || limit.Range.Contains(value);

    private static PartVariant Variant(KnowledgeBase kb, string part) => PartResolver.Variants(kb.Compiled, new Question { Part = new(part) })[0];

    private static Need NeedOf(KnowledgeBase kb, string part) => NeedMaker.Of(kb.Compiled, new Question { Part = new(part) });

    /// <summary>What is reached at a point; by claims that need nothing and name nothing beside, or by any.</summary>
    private static IEnumerable<string> Reached(
        KnowledgeBase kb, string agent, string? part, decimal strength, ApplicationMethod method, decimal seconds, bool plain)
    {
        foreach (var claim in kb.Data.Claims)
        {
            if (claim.Refuted is not null || claim.Where is not null || (plain && claim.Needs.Count + claim.With.Count + claim.For.Count > 0)) continue;
            if (!kb.Compiled.Agents.IsAtOrBelow(kb.Compiled.Agents[agent], kb.Compiled.Agents[claim.Agent.Value])) continue;
            if (claim.For.Count > 0
                && (part is null || !claim.For.Any(type => kb.Compiled.Parts.IsAtOrBelow(kb.Compiled.Parts[part], kb.Compiled.Parts[type.Value])))) continue;
            var methods = claim.When.Methods.Statement switch
            {
                AxisStatement.Within => claim.When.Methods.Methods,
                AxisStatement.Unstated => kb.Data.Conventions.First(one => one.Key == ConventionKey.ClaimMethods).Methods,
                _ => MethodSet.All
            };
            if (!methods.Contains(method) || !Holds(claim.When.Strength, strength) || !Holds(claim.When.ContactTime, seconds)) continue;
            var temperature = claim.When.Temperature.Statement == AxisStatement.Unstated
                ? AxisLimit.Within(kb.Data.Conventions.First(one => one.Key == ConventionKey.ClaimTemperature).Range) : claim.When.Temperature;
            if (!Holds(temperature, 22m) || !Holds(claim.When.Ph, 7m)) continue;
            foreach (var target in claim.Kills) yield return target.ToString();
            for (var level = claim.Reaches; level > Level.Cleaned; level--) yield return Words.Of(level.Value);
        }
    }
}
