using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>
/// Finds pairs of which a record of mixing is missing, hazards that stand on one member of a class without saying why, and harmless pairs that are none.
/// </summary>
internal sealed class MixingRecords(CompiledBase kb)
{
    /// <summary>How many pairs a message names before it counts the rest.</summary>
    private const int NamedAtMost = 12;

    private readonly int[][] _leaves = LeavesOf(kb.Agents);

    /// <summary>Looks at records alone, of which no rule need be known.</summary>
    public static IEnumerable<Finding> In(KnowledgeData data) => new MixingRecords(new CompiledBase(data with { Rules = [] }, [])).Find();

    public IEnumerable<Finding> Find() => Missing().Concat(OfOneMember()).Concat(NotHarmless());

    /// <summary>A record that holds at some strengths only leaves the pair open at the others: it does not count.</summary>
    private IEnumerable<Finding> Missing()
    {
        foreach (var agent in kb.Data.Agents)
        {
            foreach (var by in agent.InactivatedBy)
            {
                var pairs = _leaves[kb.Agents[agent.Id.Value]].SelectMany(one => _leaves[kb.Agents[by.Value]].Select(other => (one, other)))
                    .Where(pair => pair.one != pair.other && !IsOnRecord(pair.one, pair.other)).ToArray();
                if (pairs.Length == 0) continue;
                var named = string.Join(", ", pairs.Take(NamedAtMost).Select(pair => $"`{Id(pair.one)}` with `{Id(pair.other)}`"))
                    + (pairs.Length > NamedAtMost ? $" and {pairs.Length - NamedAtMost} more" : "");
                yield return new()
                {
                    Kind = FindingKind.MissingMixing,
                    IsFault = true,
                    Message = $"`{agent.Id}` says that `{by}` inactivates it, and nothing is on record where they meet: {named}",
                    Involved = [new(new ProblemPlace(RecordKind.Agent, agent.Id.Value, "inactivated-by"), "inactivated by it")],
                    Agent = agent.Id.Value,
                    Help = "write a hazard (`loses-activity` where nothing worse is known) or a record that says `harmless:` with the reason",
                };
            }
        }
    }

    private IEnumerable<Finding> OfOneMember()
    {
        foreach (var hazard in kb.Data.MixingHazards)
        {
            foreach (var finding in OfOneMember(hazard, hazard.Agent, hazard.AgentRestsOn, "agent")) yield return finding;
            if (hazard.WithAgent is { } with)
                foreach (var finding in OfOneMember(hazard, with, hazard.WithAgentRestsOn, "with-agent")) yield return finding;
        }
    }

    private IEnumerable<Finding> OfOneMember(MixingHazard hazard, AgentId member, MemberGround? ground, string side)
    {
        var siblings = Siblings(member);
        if (siblings.Length == 0) yield break;
        var place = new ProblemPlace(RecordKind.Mixing, hazard.Id.Value, ground is null ? side : $"rests-on.{side}");
        if (ground is null)
        {
            yield return Of(
                $"`{hazard.Id}` stands on `{member}` alone, and `{Id(kb.Agents.Parent(kb.Agents[member.Value]))}` has other members: {List(siblings)}",
                "move it to the class if they share the chemistry, else say why not: "
                    + $"`rests-on: {{ {side}: {string.Join(" | ", Words.All<MemberGround>())} }}`");
        }
        else if (ground == MemberGround.EachRecorded
            && siblings.Where(one => !IsPartner(hazard, one, side) && !HasOwn(hazard, one, side)).ToArray() is { Length: > 0 } without)
        {
            yield return Of(
                $"`{hazard.Id}` says that every other member of its class has a record of its own, and these have none: {List(without)}",
                "write theirs, move this one to the class, or say on what else it rests");
        }

        Finding Of(string message, string help) => new()
        {
            Kind = FindingKind.HazardOfOneMember,
            IsFault = true,
            Message = message,
            Involved = [new(place, "stands on one member")],
            Agent = member.Value,
            Help = help,
        };
    }

    /// <summary>Whether another member is the partner itself: it does not meet itself.</summary>
    private bool IsPartner(MixingHazard hazard, int member, string side) =>
        (side == "with-agent" ? hazard.Agent : hazard.WithAgent) is { } partner && kb.Agents[partner.Value] == member;

    /// <summary>Whether a hazard is on record of another member with the same partner.</summary>
    private bool HasOwn(MixingHazard hazard, int member, string side)
    {
        if (side == "with-agent") return IsHazard(member, kb.Agents[hazard.Agent.Value]);
        if (hazard.WithAgent is { } with) return IsHazard(member, kb.Agents[with.Value]);
        return kb.Data.MixingHazards.Any(other => Reach.Names(kb, other.Agent, member) && other.WithAgent is null && other.WithSoil == hazard.WithSoil
            && (hazard.WithMaterial is not { } material
                || (other.WithMaterial is { } above && kb.Materials.IsAtOrBelow(kb.Materials[material.Value], kb.Materials[above.Value]))));
    }

    private IEnumerable<Finding> NotHarmless()
    {
        foreach (var meeting in kb.Data.HarmlessMeetings)
        {
            foreach (var hazard in kb.Data.MixingHazards.Where(hazard => Overlap(meeting, hazard)))
            {
                yield return new()
                {
                    Kind = FindingKind.HarmlessBesideHazard,
                    IsFault = true,
                    Message = $"`{meeting.Id}` says that nothing harmful happens, and `{hazard.Id}` says what does",
                    Involved = [new(new ProblemPlace(RecordKind.HarmlessMeeting, meeting.Id.Value, "harmless"), "harmless"),
                        new(new ProblemPlace(RecordKind.Mixing, hazard.Id.Value), "a hazard")],
                    Agent = meeting.Agent.Value,
                    Help = "the hazard holds all the same; narrow or remove one of the two",
                };
            }
        }
    }

    /// <summary>Whether two records have a pair in common.</summary>
    private bool Overlap(HarmlessMeeting meeting, MixingHazard hazard)
    {
        if (meeting.WithAgent is { } with)
            return hazard.WithAgent is { } other
                && ((Meet(meeting.Agent, hazard.Agent) && Meet(with, other)) || (Meet(meeting.Agent, other) && Meet(with, hazard.Agent)));
        return hazard.WithAgent is null && Meet(meeting.Agent, hazard.Agent) && meeting.WithSoil == hazard.WithSoil
            && (meeting.WithMaterial, hazard.WithMaterial) switch
            {
                (null, null) => true,
                ({ } one, { } other) => Meet(kb.Materials, kb.Materials[one.Value], kb.Materials[other.Value]),
                _ => false,
            };
    }

    private bool Meet(AgentId one, AgentId other) => Meet(kb.Agents, kb.Agents[one.Value], kb.Agents[other.Value]);

    private static bool Meet(Tree tree, int one, int other) => tree.IsAtOrBelow(one, other) || tree.IsAtOrBelow(other, one);

    private bool IsOnRecord(int one, int other) =>
        kb.Data.MixingHazards
            .Any(hazard => hazard.Strength is null && hazard.WithStrength is null && Reach.OfPair(kb, hazard.Agent, hazard.WithAgent, one, other))
        || kb.Data.HarmlessMeetings.Any(meeting => Reach.OfPair(kb, meeting.Agent, meeting.WithAgent, one, other));

    private bool IsHazard(int one, int other) => kb.Data.MixingHazards.Any(hazard => Reach.OfPair(kb, hazard.Agent, hazard.WithAgent, one, other));

    /// <summary>The other members of the class that an agent belongs to; the root is no class.</summary>
    private int[] Siblings(AgentId agent)
    {
        var node = kb.Agents[agent.Value];
        var parent = kb.Agents.Parent(node);
        return parent < 0 || parent == kb.Agents[AgentClass.Root.Value] ? []
            : [.. Enumerable.Range(0, kb.Agents.Count).Where(one => one != node && kb.Agents.Parent(one) == parent)];
    }

    private string List(IEnumerable<int> agents) => string.Join(", ", agents.Select(one => $"`{Id(one)}`"));

    private AgentId Id(int node) => kb.Data.Agents[node].Id;

    private static int[][] LeavesOf(Tree agents)
    {
        var leaves = Enumerable.Range(0, agents.Count).Where(node => Enumerable.Range(0, agents.Count).All(one => agents.Parent(one) != node)).ToArray();
        return [.. Enumerable.Range(0, agents.Count).Select(node => leaves.Where(leaf => agents.IsAtOrBelow(leaf, node)).ToArray())];
    }
}
