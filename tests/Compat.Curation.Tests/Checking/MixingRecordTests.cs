using Compat.Curation.Checking;

namespace Compat.Curation.Tests.Checking;

/// <summary>What the check says of mixing, against a walk over every pair of agents, on the shipped data with faults put into it.</summary>
public sealed class MixingRecordTests
{
    private static readonly KnowledgeData Data = KnowledgeBase.Shipped.Data with { Rules = [], StandingRules = [] };
    private static readonly Dictionary<string, AgentClass> Agents = Data.Agents.ToDictionary(agent => agent.Id.Value);

    [Fact]
    public void Find_ShippedData_FindsNothing() => Assert.Empty(Findings(Data));

    /// <summary>Taking any one record of a pair that an agent's record implies away is seen where the walk sees it, and nowhere else.</summary>
    [Fact]
    public void Find_EachRecordTakenAway_NamesThePairsTheWalkFinds()
    {
        var seen = 0;
        var implied = Implied(Data).ToArray();
        foreach (var gone in Data.MixingHazards.Where(hazard => hazard.WithAgent is not null))
        {
            var data = Data with { MixingHazards = [.. Data.MixingHazards.Where(hazard => hazard != gone)] };
            var walked = Uncovered(data, implied);
            Assert.Equal(walked, Missing(data));
            seen += walked.Length;
        }

        Assert.True(seen > 20, $"{seen} agents lost a record");
    }

    /// <summary>A hazard narrowed to some strengths leaves the others without a record.</summary>
    [Fact]
    public void Find_RecordNarrowedToStrengths_IsMissing()
    {
        var data = Data with
        {
            MixingHazards = [
                .. Data.MixingHazards.Select(
                    hazard => hazard.Id.Value == "chlorine-releasing.alkylamine" ? hazard with { WithStrength = Interval.AtLeast(50m) } : hazard)],
        };
        Assert.Equal(["alkylamine", "chlorine-releasing"], Uncovered(data, Implied(data)));
        Assert.Equal(["alkylamine", "chlorine-releasing"], Missing(data));
    }

    /// <summary>Every hazard that is moved down to one member of its class is found, unless that is the only one.</summary>
    [Fact]
    public void Find_HazardMovedToOneMember_IsFoundWhereTheClassHasOthers()
    {
        var moved = 0;
        foreach (var hazard in Data.MixingHazards)
        {
            var members = Data.Agents.Where(agent => agent.Under == hazard.Agent).ToArray();
            if (members.Length < 2) continue;
            var one = hazard with { Agent = members[0].Id, AgentRestsOn = null };
            var found = Findings(Data with { MixingHazards = [.. Data.MixingHazards.Where(other => other != hazard), one] });
            Assert.Contains(
                found, finding => finding.Kind == FindingKind.HazardOfOneMember
                && finding.Involved[0].Place == new Compat.Validation.ProblemPlace(Compat.Validation.RecordKind.Mixing, hazard.Id.Value, "agent"));
            moved++;
        }

        Assert.True(moved > 30, $"{moved} hazards stand on a class");
    }

    /// <summary>Taking away what it says that a hazard on a member rests on is found for each; the walk knows which are such.</summary>
    [Fact]
    public void Find_NothingSaidOfWhatItRestsOn_IsFoundForEveryMemberOfAClass()
    {
        var silent = Data with { MixingHazards = [.. Data.MixingHazards.Select(hazard => hazard with { AgentRestsOn = null, WithAgentRestsOn = null })] };
        var walked = silent.MixingHazards.SelectMany(
            hazard => new[] { (hazard.Id, Side: "agent", Of: hazard.Agent), (hazard.Id, Side: "with-agent", Of: hazard.WithAgent!) })
            .Where(one => one.Of is not null && Agents[one.Of.Value].Under is { } parent && parent.Value != "any-agent"
                && Agents.Values.Count(agent => agent.Under == parent) > 1)
            .Select(one => $"{one.Id} {one.Side}").Order(StringComparer.Ordinal).ToArray();
        Assert.Equal(
            walked, Findings(silent).Select(finding => $"{finding.Involved[0].Place.Id} {finding.Involved[0].Place.Field}").Order(StringComparer.Ordinal));
        Assert.True(walked.Length > 50, $"{walked.Length} sides of hazards are members of a class");
    }

    /// <summary>A harmless record laid over the pair of any hazard is found.</summary>
    [Fact]
    public void Find_HarmlessLaidOverAHazard_IsFoundWithThatHazard()
    {
        foreach (var hazard in Data.MixingHazards)
        {
            var meeting = new HarmlessMeeting
            {
                Id = new("laid-over"),
                Agent = hazard.Agent,
                WithAgent = hazard.WithAgent,
                WithSoil = hazard.WithSoil,
                WithMaterial = hazard.WithMaterial,
                Why = "invented",
                Sources = hazard.Sources,
                Reviewed = hazard.Reviewed,
            };
            var found = Findings(Data with { HarmlessMeetings = [meeting] }).Where(finding => finding.Kind == FindingKind.HarmlessBesideHazard);
            Assert.Contains(found, finding => finding.Involved[1].Place.Id == hazard.Id.Value);
        }
    }

    private static Finding[] Findings(KnowledgeData data) => [.. MixingRecords.In(data)];

    /// <summary>The agents of whose implied pairs the check finds some without a record.</summary>
    private static string[] Missing(KnowledgeData data) =>
        [.. Findings(data).Where(finding => finding.Kind == FindingKind.MissingMixing).Select(finding => finding.Involved[0].Place.Id).Distinct()
            .Order(StringComparer.Ordinal)];

    /// <summary>The agents of whose implied pairs the walk finds some without a record.</summary>
    private static string[] Uncovered(KnowledgeData data, IEnumerable<(string Declared, string One, string Other)> implied) =>
        [.. implied.Where(pair => !data.MixingHazards.Any(hazard => Covers(hazard, pair.One, pair.Other))).Select(pair => pair.Declared).Distinct()
            .Order(StringComparer.Ordinal)];

    /// <summary>The pairs of narrowest agents of which one's line says that the other's line inactivates it.</summary>
    private static IEnumerable<(string Declared, string One, string Other)> Implied(KnowledgeData data)
    {
        var leaves = data.Agents.Where(agent => data.Agents.All(other => other.Under != agent.Id)).Select(agent => agent.Id.Value).ToArray();
        foreach (var one in leaves)
            foreach (var other in leaves)
                if (one != other)
                    foreach (var above in Line(one))
                        if (Agents[above].InactivatedBy.Any(by => Line(other).Contains(by.Value))) yield return (above, one, other);
    }

    private static bool Covers(MixingHazard hazard, string one, string other) => hazard is { Strength: null, WithStrength: null, WithAgent: { } with }
        && ((Line(one).Contains(hazard.Agent.Value) && Line(other).Contains(with.Value))
            || (Line(other).Contains(hazard.Agent.Value) && Line(one).Contains(with.Value)));

    private static IEnumerable<string> Line(string id)
    {
        for (var at = id; at is not null; at = Agents[at].Under?.Value) yield return at;
    }
}
