namespace Compat.Curation.Reviewing;

/// <summary>BASE beside BASE with one edit, both with only those rules that can speak where the edit is tried.</summary>
internal sealed class EditTrial
{
    private readonly ReviewSide _without;
    private readonly ReviewSide _with;
    private readonly RuleSameness _rules;
    private readonly Dictionary<ReviewPair, PairComparison?> _pairs = [];

    private EditTrial(ReviewSide without, ReviewSide with) => (_without, _with, _rules) = (without, with, new RuleSameness(without.Kb, with.Kb));

    /// <summary>Sets up a trial; null where the edit cannot be made alone: some record would name one that is not there.</summary>
    public static EditTrial? Of(KnowledgeData data, IReadOnlyList<Site> sites, IReadOnlyCollection<RecordEdit> edits, HashSet<RuleId> rules,
        TellingSerials serials)
    {
        try
        {
            var (was, now) = (Only(data, rules), Only(EditApplication.Apply(data, edits), rules));
            var some = sites.Select(site => site with { Rules = Only(site.Rules, rules) }).ToArray();
            var (without, with) = DataReview.Sides(was, some, now, some, serials);
            return new(without, with);
        }
        catch (KeyNotFoundException)
        {
            return null;
        }
    }

    /// <summary>The changes that the edit alone makes where a change was found.</summary>
    public IReadOnlyList<CellChange> Changes(PairChanges found, CellChange change)
    {
        if (!_pairs.TryGetValue(found.Pair, out var comparison)) _pairs[found.Pair] = comparison = Comparison(found.Pair);
        return comparison?.Of(change.Box) ?? [];
    }

    private PairComparison? Comparison(ReviewPair pair)
    {
        var key = (pair.After.Kind, pair.After.Name, pair.After.Serial);
        var agent = pair.AgentId;
        if (!_without.Subjects.TryGetValue(key, out var before) || !_with.Subjects.TryGetValue(key, out var after) || _with.AgentOf(agent) is < 0) return null;
        var was = _without.AgentOf(agent);
        var comparable = was >= 0 && SubjectFacts.AreComparable(_without.Kb.Agent(was), _with.Kb.Agent(_with.AgentOf(agent)));
        return new PairComparison(_without, _with, _rules, new ReviewPair(before, after, comparable ? was : -1, _with.AgentOf(agent), agent));
    }

    private static KnowledgeData Only(KnowledgeData data, HashSet<RuleId> rules) => data with { Rules = Only(data.Rules, rules) };

    private static Rule[] Only(IReadOnlyList<Rule> all, HashSet<RuleId> rules) =>
        all.Where(rule => rules.Contains(rule.Id))
            .Select(rule => rule.Overrides.Count == 0 ? rule : rule with { Overrides = rule.Overrides.Where(rules.Contains).ToArray() }).ToArray();
}
