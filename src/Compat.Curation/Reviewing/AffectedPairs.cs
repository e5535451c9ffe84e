namespace Compat.Curation.Reviewing;

/// <summary>A subject and an agent whose answers may differ.</summary>
/// <param name="Before">The subject in BASE.</param>
/// <param name="After">The subject in HEAD.</param>
/// <param name="AgentBefore">The agent in BASE; -1 where there is none whose strengths can be compared.</param>
/// <param name="AgentAfter">The agent in HEAD.</param>
/// <param name="AgentId">The id of the agent.</param>
internal sealed record ReviewPair(ReviewSubject Before, ReviewSubject After, int AgentBefore, int AgentAfter, string AgentId)
{
    /// <summary>Whether BASE has the agent, in another unit perhaps.</summary>
    public bool WasThere { get; init; }

    /// <summary>Whether BASE has no such subject: then it is the one of HEAD on both sides, and nothing of it was established before.</summary>
    public bool IsNewSubject { get; init; }
}

/// <summary>
/// Finds the subjects and agents whose answers can differ at all, so that only these are compared: a superset, found from rules and facts alone.
/// </summary>
internal sealed class AffectedPairs(ReviewSide before, ReviewSide after, RuleSameness rules)
{
    private readonly Dictionary<int, string[]> _reached = [];

    public IReadOnlyList<ReviewPair> Find()
    {
        var everywhere = after.Kb.Data.Agents.Select(agent => agent.Id.Value).Where(IsEverywhere).ToHashSet();
        var numbered = Numbered();
        var pairs = new List<ReviewPair>();
        foreach (var (key, subject) in after.Subjects)
        {
            if (!before.Subjects.TryGetValue(key, out var former))
            {
                pairs.AddRange(after.Kb.Data.Agents
                    .Select(agent => new ReviewPair(subject, subject, -1, after.AgentOf(agent.Id.Value), agent.Id.Value) { IsNewSubject = true }));
                continue;
            }

            IEnumerable<string> agents;
            if (!SubjectFacts.AreSame(before, former, after, subject))
            {
                agents = after.Kb.Data.Agents.Select(agent => agent.Id.Value);
            }
            else
            {
                var (was, now) = (SubjectFacts.Reaching(before, former, rules), SubjectFacts.Reaching(after, subject, rules));
                var telling = was.Union(now).Where(entry => !was.Contains(entry) || !now.Contains(entry) || rules.IsChanged((int)(entry & uint.MaxValue)))
                    .Select(entry => (int)(entry & uint.MaxValue)).ToHashSet();
                agents = telling.SelectMany(number => Reached(number, numbered[number])).Concat(everywhere).Distinct();
            }

            foreach (var agent in agents)
            {
                if (after.AgentOf(agent) is >= 0 and var node)
                    pairs.Add(new(former, subject, Comparable(agent, node), node, agent) { WasThere = before.AgentOf(agent) >= 0 });
            }
        }

        return pairs;
    }

    /// <summary>Whether an agent is new, has moved, has other facts, or is one that dries away in another time: then it is compared on every subject.</summary>
    private bool IsEverywhere(string id)
    {
        var (was, now) = (before.AgentOf(id), after.AgentOf(id));
        return was < 0 || !SubjectFacts.AreSame(before.Kb.Agent(was), after.Kb.Agent(now)) || !before.LineOf(was).SequenceEqual(after.LineOf(now))
            || (after.Kb.Agent(now).Leaves == Residue.Nothing && !DryingTime(before).Equals(DryingTime(after)));
    }

    private static Interval DryingTime(ReviewSide side) => side.Kb.Convention(ConventionKey.DryingTime).Range;

    private int Comparable(string id, int node)
    {
        var was = before.AgentOf(id);
        return was >= 0 && SubjectFacts.AreComparable(before.Kb.Agent(was), after.Kb.Agent(node)) ? was : -1;
    }

    /// <summary>The rules of each number, one a side.</summary>
    private Dictionary<int, List<(ReviewSide Side, CompiledRule Rule)>> Numbered()
    {
        var found = new Dictionary<int, List<(ReviewSide, CompiledRule)>>();
        foreach (var side in new[] { before, after })
        {
            foreach (var rule in side.Kb.Rules)
            {
                var number = rules.NumberOf(rule, side.IsBefore);
                if (found.TryGetValue(number, out var list)) list.Add((side, rule));
                else found[number] = [(side, rule)];
            }
        }

        return found;
    }

    private string[] Reached(int number, List<(ReviewSide Side, CompiledRule Rule)> sides)
    {
        if (!_reached.TryGetValue(number, out var agents))
            _reached[number] = agents = sides.SelectMany(one => one.Side.Ground.Reached(one.Rule).Select(agent => one.Side.Kb.Data.Agents[agent].Id.Value))
                .Distinct().ToArray();
        return agents;
    }
}
