using Compat.Curation.Checking;

namespace Compat.Curation.Reviewing;

/// <summary>Compares the decision maps of one subject and one agent in two knowledge bases whose axes are cut alike: exactly, cell by cell, only where they can differ.</summary>
/// <remarks>What is answered of a number of uses holds for every use up to it: where more uses could be answered better than fewer, the worst of them counts.</remarks>
internal sealed class PairComparison
{
    private const int Uses = (int)Axis.Uses;
    private readonly PairSide? _before;
    private readonly PairSide _after;
    private readonly CellBox _domain;
    private readonly bool _factsDiffer;
    private readonly bool[] _telling;
    private readonly bool _rises;
    private int _visited;

    public PairComparison(ReviewSide before, ReviewSide after, RuleSameness rules, ReviewPair pair)
    {
        _after = new PairSide(after, pair.After, pair.AgentAfter);
        _domain = after.Ground.DomainOf(after.Ground.SpeakerOf(pair.AgentAfter));
        _before = pair.AgentBefore < 0 ? null : new PairSide(before, pair.Before, pair.AgentBefore);
        _factsDiffer = _before is null || !SubjectFacts.AreSame(before, pair.Before, after, pair.After)
            || !SubjectFacts.AreSame(before.Kb.Agent(pair.AgentBefore), after.Kb.Agent(pair.AgentAfter));
        _telling = new bool[CountBefore + _after.Count];
        Array.Fill(_telling, true);
        if (_before is not null && !_factsDiffer) MarkTelling(_before, rules);
        _rises = _before is { RisesWithUses: true } || _after.RisesWithUses;
    }

    private int CountBefore => _before?.Count ?? 0;

    /// <summary>Whether anything can differ: another fact, or a rule that one side has alone or that says something else.</summary>
    public bool CanDiffer => _factsDiffer || _telling.Any(one => one);

    /// <summary>Whether facts of the subject or the agent differ.</summary>
    public bool FactsDiffer => _factsDiffer;

    /// <summary>All rules that can speak here on either side.</summary>
    public IEnumerable<RuleId> Rules => Enumerable.Range(0, _telling.Length).Select(i => RuleAt(i).Rule.Id).Distinct();

    /// <summary>Every box of cells in which the answers differ.</summary>
    /// <param name="method">The method.</param>
    /// <param name="within">Where to look; null for everywhere.</param>
    /// <exception cref="TooManyBoxesException">There are too many boxes to look at.</exception>
    public IReadOnlyList<CellChange> Of(ApplicationMethod method, CellBox? within = null)
    {
        var found = new List<CellChange>();
        var (was, now) = (_before is null ? new CellAnswer { Verdict = Verdict.NotEstablished } : _before.Barrier(method), _after.Barrier(method));
        if (!CanDiffer || (was is not null && now is not null && !CellChange.Differ(was, now))) return found;
        var open = Enumerable.Range(0, _telling.Length).Where(i => RuleAt(i).Methods.Contains(method) && (i < CountBefore ? was is null : now is null)).ToList();
        _visited = 0;
        Cut(within ?? _domain, open, [], []);
        return found;

        void Cut(CellBox box, List<int> candidates, List<int> covering, List<int> ofFewerUses)
        {
            if (++_visited > Subtraction.MostBoxes) throw new TooManyBoxesException();
            var covers = new List<int>(covering);
            var crossing = new List<int>();
            var fewer = _rises ? ofFewerUses.Where(i => MeetsColumn(BoxAt(i), box)).ToList() : [];
            foreach (var i in candidates)
            {
                var rule = BoxAt(i);
                if (box.LiesIn(rule)) covers.Add(i);
                else if (rule.Intersect(box) is not null) crossing.Add(i);
                else if (_rises && MeetsColumn(rule, box)) fewer.Add(i);
            }

            var first = crossing.FindIndex(i => _telling[i]);
            if (!_factsDiffer && first < 0 && !covers.Exists(i => _telling[i]) && !fewer.Exists(i => _telling[i])) return;
            var along = crossing.Count > 0 ? BoxAt(crossing[Math.Max(first, 0)])
                : fewer.Select(i => BoxAt(i).With(Uses, box.Low[Uses], box.High[Uses])).FirstOrDefault(column => !box.LiesIn(column));
            if (along is null)
            {
                Look(box, covers, fewer);
                return;
            }

            var (axis, lastOfLower) = box.Edge(along);
            Cut(box.With(axis, box.Low[axis], lastOfLower), crossing, covers, fewer);
            Cut(box.With(axis, lastOfLower + 1, box.High[axis]), crossing, covers, fewer);
        }

        void Look(CellBox box, List<int> covers, List<int> fewer)
        {
            var before = was ?? Worst(box, covers, fewer, covering => _before!.Of(covering.Where(i => i < CountBefore)));
            var after = now ?? Worst(box, covers, fewer, covering => _after.Of(covering.Where(i => i >= CountBefore).Select(i => i - CountBefore)));
            if (_before is null && !after.IsAllowed) return; // of a new agent only what it is allowed is a change
            if (!CellChange.Differ(before, after)) return;
            found.Add(new(method, box, before, after) { Telling = covers.Concat(fewer).Where(i => _telling[i]).Select(i => RuleAt(i).Rule.Id).Distinct().ToArray() });
        }
    }

    /// <summary>Whether a rule meets a box or what lies below it on the axis of uses.</summary>
    private bool MeetsColumn(CellBox rule, CellBox box) => rule.Intersect(box.With(Uses, _domain.Low[Uses], box.High[Uses])) is not null;

    /// <summary>The worst answer of a box and of all fewer uses.</summary>
    private CellAnswer Worst(CellBox box, List<int> covers, List<int> fewer, Func<IEnumerable<int>, CellAnswer> answerOf)
    {
        var worst = answerOf(covers);
        if (!_rises || box.Low[Uses] == _domain.Low[Uses]) return worst;
        var column = covers.Concat(fewer).ToArray();
        var starts = column.SelectMany(i => new[] { BoxAt(i).Low[Uses], BoxAt(i).High[Uses] + 1 }).Append(_domain.Low[Uses]).Where(at => at >= _domain.Low[Uses] && at < box.Low[Uses]).Distinct();
        foreach (var at in starts)
        {
            var answer = answerOf(column.Where(i => BoxAt(i).Low[Uses] <= at && BoxAt(i).High[Uses] >= at));
            if (answer.Verdict < worst.Verdict) worst = answer;
        }

        return worst;
    }

    private CompiledRule RuleAt(int i) => i < CountBefore ? _before!.RuleAt(i) : _after.RuleAt(i - CountBefore);

    private CellBox BoxAt(int i) => i < CountBefore ? _before!.BoxAt(i) : _after.BoxAt(i - CountBefore);

    /// <summary>A candidate tells nothing where the other side has it too: the same rule, exposure times and voices.</summary>
    private void MarkTelling(PairSide one, RuleSameness rules)
    {
        var marks = new Dictionary<string, int>();
        for (var i = 0; i < one.Count; i++)
            if (!rules.IsChanged(rules.NumberOf(one.RuleAt(i), isBefore: true))) marks[one.MarkOf(i)] = i;
        for (var i = 0; i < _after.Count; i++)
        {
            if (!marks.TryGetValue(_after.MarkOf(i), out var match)) continue;
            _telling[match] = _telling[CountBefore + i] = false;
        }
    }
}
