using System.Text;

namespace Compat.Curation.Reviewing;

/// <summary>What differs between the decision maps of one subject and agent.</summary>
/// <param name="Pair">The subject and agent.</param>
/// <param name="Changes">The boxes in which the answers differ.</param>
/// <param name="Rules">All rules that can speak of them on either side.</param>
internal sealed record PairChanges(ReviewPair Pair, IReadOnlyList<CellChange> Changes, IReadOnlyList<RuleId> Rules);

/// <summary>Compares the decision maps of one subject and one agent in two knowledge bases: exactly, box by box, only where they can differ.</summary>
/// <remarks>What is answered of a number of uses holds for every use up to it: the worst of them counts.</remarks>
internal sealed class PairComparison
{
    private readonly PairSide? _before;
    private readonly PairSide _after;
    private readonly Box<Stretch> _domain;
    private readonly bool _factsDiffer;
    private readonly bool[] _telling;

    public PairComparison(ReviewSide before, ReviewSide after, RuleSameness rules, ReviewPair pair)
    {
        _after = new PairSide(after, pair.After, pair.AgentAfter);
        _domain = after.Ground.SpeakerOf(pair.AgentAfter).Domain;
        _before = pair.AgentBefore < 0 ? null : new PairSide(before, pair.Before, pair.AgentBefore);
        _factsDiffer = _before is null || !SubjectFacts.AreSame(before, pair.Before, after, pair.After)
            || !SubjectFacts.AreSame(before.Kb.Agent(pair.AgentBefore), after.Kb.Agent(pair.AgentAfter));
        _telling = new bool[CountBefore + _after.Count];
        Array.Fill(_telling, true);
        if (_before is not null && !_factsDiffer) MarkTelling(_before, rules);
    }

    /// <summary>Whether anything can differ: another fact, or a rule that one side has alone or that says something else.</summary>
    public bool CanDiffer => _factsDiffer || _telling.Any(one => one);

    /// <summary>All rules that can speak here on either side.</summary>
    public IEnumerable<RuleId> Rules => Enumerable.Range(0, _telling.Length).Select(i => RuleAt(i).Rule.Id).Distinct();

    private int CountBefore => _before?.Count ?? 0;

    /// <summary>Every box in which the answers differ.</summary>
    /// <param name="method">The method.</param>
    /// <exception cref="TooManyBoxesException">There are too many boxes to look at.</exception>
    public IReadOnlyList<CellChange> Of(ApplicationMethod method) => Of(_domain with { Methods = MethodSet.Of(method) });

    /// <summary>The same within a box by one method.</summary>
    public IReadOnlyList<CellChange> Of(in Box<Stretch> within)
    {
        var method = within.Methods.Methods[0];
        var (was, now) = (_before is null ? new CellAnswer { Verdict = Verdict.NotEstablished } : _before.Barrier(method), _after.Barrier(method));
        if (!CanDiffer || (was is not null && now is not null && !CellChange.Differ(was, now))) return [];
        var walk = new Walk(this, within.Uses, was, now);
        var open = Enumerable.Range(0, _telling.Length).Where(i => i < CountBefore ? was is null : now is null);
        Cutter.Cut(ref walk, within with { Uses = _domain.Uses }, new Known([], open));
        return walk.Found;
    }

    private CompiledRule RuleAt(int i) => i < CountBefore ? _before!.RuleAt(i) : _after.RuleAt(i - CountBefore);

    private Box<Stretch> BoxAt(int i) => i < CountBefore ? _before!.BoxAt(i) : _after.BoxAt(i - CountBefore);

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

    /// <summary>What is known of a box with all numbers of uses.</summary>
    /// <param name="Covering">The candidates that apply in all of it, uses aside.</param>
    /// <param name="Open">Those that may apply in some of it.</param>
    private sealed record Known(List<int> Covering, IEnumerable<int> Open);

    /// <summary>
    /// Cuts along all axes but uses; what is left then is walked from the first use on, so that fewer uses are never answered worse than more.
    /// </summary>
    private sealed class Walk(PairComparison pair, Stretch uses, CellAnswer? was, CellAnswer? now) : ICutVisitor<Stretch, Known>
    {
        private int _visited;

        public List<CellChange> Found { get; } = [];

        public Next Look(in Box<Stretch> box, Known known, out Known inside, out Box<Stretch> crossing)
        {
            if (++_visited > Subtraction.MostBoxes) throw new TooManyBoxesException();
            var covers = new List<int>(known.Covering);
            var open = new List<int>();
            foreach (var i in known.Open)
            {
                var column = Column(i);
                if (!column.Meets(box)) continue;
                (box.LiesIn(column) ? covers : open).Add(i);
            }

            (inside, crossing) = (new(covers, open), default);
            var first = open.FindIndex(i => pair._telling[i]);
            if (!pair._factsDiffer && first < 0 && !covers.Exists(i => pair._telling[i])) return Next.Done;
            if (open.Count == 0)
            {
                Answer(box, covers);
                return Next.Done;
            }

            crossing = Column(open[Math.Max(first, 0)]);
            return Next.Halve;
        }

        private Box<Stretch> Column(int i) => pair.BoxAt(i) with { Uses = Stretch.Whole };

        private void Answer(in Box<Stretch> box, List<int> covers)
        {
            var table = new CutTable([], covers.Select(i => pair.BoxAt(i).Uses));
            CellAnswer? worstBefore = null, worstAfter = null;
            for (var cell = table.CellsOf(pair._domain.Uses).Low; cell < table.CellsOf(pair._domain.Uses).End; cell++)
            {
                var slice = table.ValuesOf(Run.Of(cell, cell)).Intersect(pair._domain.Uses);
                var here = covers.Where(i => slice.LiesIn(pair.BoxAt(i).Uses)).ToArray();
                var before = worstBefore = was ?? Worse(worstBefore, pair._before!.Of(here.Where(i => i < pair.CountBefore)));
                var after = worstAfter = now ?? Worse(worstAfter, pair._after.Of(here.Where(i => i >= pair.CountBefore).Select(i => i - pair.CountBefore)));
                if (pair._before is null && !after.IsAllowed) continue; // of a new agent only what it is allowed is a change
                if (slice.Intersect(uses) is not { IsEmpty: false } shown || !CellChange.Differ(before, after)) continue;
                var telling = covers.Where(i => pair._telling[i] && slice.Meets(pair.BoxAt(i).Uses.Through(pair._domain.Uses)));
                Found.Add(new(box with { Uses = shown }, before, after) { Telling = telling.Select(i => pair.RuleAt(i).Rule.Id).Distinct().ToArray() });
            }
        }

        /// <summary>What is answered of some uses, after what was answered of fewer.</summary>
        private static CellAnswer Worse(CellAnswer? ofFewer, CellAnswer own) => ofFewer is not null && ofFewer.Verdict < own.Verdict ? ofFewer : own;
    }
}

/// <summary>One side of a comparison: the rules that can speak, as boxes, and what they answer.</summary>
internal sealed class PairSide
{
    private readonly ReviewSubject _subject;
    private readonly Scene _scene;
    private readonly CellReader _reader;
    private readonly Box<Stretch>[] _boxes;

    public PairSide(ReviewSide side, ReviewSubject subject, int agent)
    {
        _subject = subject;
        var speaker = side.Ground.SpeakerOf(agent);
        _scene = new Scene(side.Kb, subject.Parts, speaker.Substance, speaker.Component, exposureTimeWithoutEnd: false);
        _reader = new CellReader(side.Kb, _scene);
        _boxes = _scene.Candidates.Select(one => side.Kb.Grid.ValuesOf(one.Cells)).ToArray();
    }

    /// <summary>How many candidates there are.</summary>
    public int Count => _boxes.Length;

    public CompiledRule RuleAt(int i) => _scene.Candidates[i].Rule;

    public Box<Stretch> BoxAt(int i) => _boxes[i];

    /// <summary>The answer where the part does not stand the method, whatever the agent; null where it does.</summary>
    public CellAnswer? Barrier(ApplicationMethod method) =>
        Pieces.BarrierOf(method, new Question(), _subject.Parts) is { } barrier ? _reader.Of(barrier) : null;

    /// <summary>The answer where some candidates apply.</summary>
    public CellAnswer Of(IEnumerable<int> covering)
    {
        var applies = new bool[Count];
        foreach (var i in covering) applies[i] = true;
        return _reader.Of(applies);
    }

    /// <summary>The rule, exposure times and voices of a candidate: the same text on both sides where it speaks alike.</summary>
    public string MarkOf(int i)
    {
        var mark = new StringBuilder(RuleAt(i).Rule.Id.Value).Append(' ').Append(_boxes[i].ExposureTime);
        for (var variant = 0; variant < _scene.Variants.Count; variant++)
        {
            var voices = _scene.Variants[variant];
            for (var voice = 0; voice < voices.Voices.Length; voice++)
                if (voices.Voices[voice].Contains(i)) mark.Append(' ').Append(variant).Append('/').Append(voice);
            if (voices.DutiesOnly.Contains(i)) mark.Append(' ').Append(variant).Append('d');
        }

        return mark.ToString();
    }
}
