using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Finds the edit that made each change: the one that alone, applied to BASE, makes a change there.</summary>
internal sealed class Attribution
{
    private readonly ReviewSide _before;
    private readonly ReviewSide _after;
    private readonly IReadOnlyList<Site> _sites;
    private readonly IReadOnlyList<RecordEdit> _ofSites;
    private readonly EditList _edits;
    private readonly RecordEdit[] _deciding;
    private readonly bool _factsEdited;
    private readonly EditApplication _application;
    private readonly Dictionary<(RecordKind, string), RecordEdit> _byId;
    private readonly Dictionary<ReviewPair, HashSet<(RecordKind Kind, string Id)>> _lines = [];

    public Attribution(ReviewSide before, ReviewSide after, EditList edits, IReadOnlyList<Site> sites, IReadOnlyList<RecordEdit> ofSites)
    {
        _ofSites = ofSites;
        (_before, _after, _edits, _sites) = (before, after, edits, sites);
        _deciding = edits.All.Where(EditApplication.Decides).ToArray();
        _byId = _deciding.ToDictionary(edit => (edit.Kind, edit.Id));
        _factsEdited = _deciding.Any(edit => edit.Kind is not (RecordKind.Rule or RecordKind.Source));
        _application = new EditApplication(edits.All);
    }

    /// <summary>The changes of all pairs with their causes.</summary>
    public IReadOnlyList<PairChanges> Of(IReadOnlyList<PairChanges> pairs)
    {
        var open = new Dictionary<RecordEdit, List<PairChanges>>(ReferenceEqualityComparer.Instance);
        var may = pairs.Select(pair => pair.Changes.Select(change => pair.Pair.IsNewSubject ? [] : MayCause(pair, change)).ToArray()).ToArray();
        for (var i = 0; i < pairs.Count; i++)
        {
            foreach (var edit in may[i].Where(MustBeProved).SelectMany(edits => edits).Distinct())
            {
                if (open.TryGetValue(edit, out var list)) list.Add(pairs[i]);
                else open[edit] = [pairs[i]];
            }
        }

        var trials = open.ToDictionary(one => one.Key,
            one => EditTrial.Of(_edits.Before, _sites, _application.With(one.Key), RulesOf(one.Value), _before.Serials));
        return pairs.Select((pair, i) => WithSites(pair with
        {
            Changes = pair.Pair.IsNewSubject ? pair.Changes.Select(change => change with { Causes = Added(pair.Pair.After) }).ToArray()
                : pair.Changes.SelectMany((change, j) => MustBeProved(may[i][j]) ? Proved(pair, change, may[i][j], trials)
                    : [change with { Causes = may[i][j] }]).ToArray(),
        })).ToArray();
    }

    /// <summary>What no edit of a record makes on a part of a device is laid to the edit of its site.</summary>
    private PairChanges WithSites(PairChanges pair)
    {
        if (_ofSites.Count == 0 || pair.Pair.After.Kind != SubjectKind.DevicePart) return pair;
        var device = pair.Pair.After.Parts[0].Device!.Id;
        var sites = _ofSites.Where(edit => new[] { edit.Before, edit.After }.OfType<Site>().Any(site => site.Devices.Any(one => one.Id == device))).ToArray();
        return pair with { Changes = pair.Changes.Select(change => change.Causes.Count > 0 ? change : change with { Causes = sites }).ToArray() };
    }

    /// <summary>The edit that brought a subject in.</summary>
    private IReadOnlyList<RecordEdit> Added(ReviewSubject subject) =>
        subject.Kind is SubjectKind.DevicePart
            || !_byId.TryGetValue((subject.Kind == SubjectKind.PartType ? RecordKind.Part : RecordKind.Material, subject.Name), out var edit) ? [] : [edit];

    /// <summary>One rule alone that may have caused a change did; a fact may have let another rule speak, were that not edited too.</summary>
    private bool MustBeProved(IReadOnlyList<RecordEdit> may) => may.Count > 1 || (_factsEdited && _deciding.Length > 1);

    /// <summary>
    /// All rules that can speak of some pairs with some of the edits made: where facts are edited too, one may that does so neither in BASE nor in HEAD.
    /// </summary>
    private HashSet<RuleId> RulesOf(IReadOnlyList<PairChanges> pairs)
    {
        var rules = pairs.SelectMany(pair => pair.Rules).ToHashSet();
        if (!_factsEdited) return rules;
        var named = pairs.SelectMany(pair => LinesOf(pair.Pair)).ToHashSet();
        var devices = pairs.SelectMany(pair => pair.Pair.After.Parts).Select(variant => variant.Device?.Id).ToHashSet();
        foreach (var rule in new[] { _before, _after }.SelectMany(side => side.Kb.Records.Rules.Values))
        {
            if (rule.Agent is { } agent && !named.Contains((RecordKind.Agent, agent.Value))) continue;
            var target = rule.Target;
            var speaks = target.Material is { } material ? named.Contains((RecordKind.Material, material.Value))
                : target.Part is { } part ? named.Contains((RecordKind.Part, part.Value)) : devices.Contains(target.Device);
            if (speaks) rules.Add(rule.Id);
        }

        return rules;
    }

    /// <summary>
    /// The agent, the parts and the materials of a pair, with all that stands above them with some of the edits made: above them on either side, and so on.
    /// </summary>
    private HashSet<(RecordKind Kind, string Id)> LinesOf(ReviewPair pair)
    {
        if (_lines.TryGetValue(pair, out var known)) return known;
        var found = new HashSet<(RecordKind, string)>();
        var open = new Stack<(RecordKind Kind, string Id)>();
        Open(RecordKind.Agent, pair.AgentId);
        foreach (var (side, subject) in new[] { (_before, pair.Before), (_after, pair.After) })
        {
            foreach (var variant in subject.Parts)
            {
                if (variant.Part >= 0) Open(RecordKind.Part, side.Kb.Data.Parts[variant.Part].Id.Value);
                foreach (var material in variant.Materials) Open(RecordKind.Material, side.Kb.Data.Materials[material].Id.Value);
            }
        }

        while (open.TryPop(out var one))
        {
            foreach (var side in new[] { _before, _after })
            {
                var (kb, data) = (side.Kb, side.Kb.Data);
                var (tree, under) = one.Kind switch
                {
                    RecordKind.Agent => (kb.Agents, (Func<int, Id?>)(node => data.Agents[node].Under)),
                    RecordKind.Part => (kb.Parts, node => data.Parts[node].Under),
                    _ => (kb.Materials, node => data.Materials[node].Under),
                };
                if (!tree.TryFind(one.Id, out var node)) continue;
                if (under(node) is { } parent) Open(one.Kind, parent.Value);
                if (one.Kind != RecordKind.Part) continue;
                foreach (var material in data.Parts[node].Materials?.SelectMany(slot => slot.OneOf) ?? []) Open(RecordKind.Material, material.Value);
            }
        }

        return _lines[pair] = found;

        void Open(RecordKind kind, string id)
        {
            if (found.Add((kind, id))) open.Push((kind, id));
        }
    }

    /// <summary>A change cut into boxes in each of which the same edits make one alone; where some lead to what is answered now, only these.</summary>
    private static List<CellChange> Proved(PairChanges pair, CellChange change, IReadOnlyList<RecordEdit> may, Dictionary<RecordEdit, EditTrial?> trials)
    {
        var made = may.SelectMany(edit => (trials[edit]?.Changes(pair, change) ?? [])
            .Select(one => new Made(edit, one.Box, one.After.Verdict == change.After.Verdict))).ToArray();
        var pieces = new List<CellChange>();
        Cut(change.Box, made);
        return pieces;

        void Cut(Box<Stretch> box, IReadOnlyList<Made> near)
        {
            if (pieces.Count > Subtraction.MostBoxes) throw new TooManyBoxesException();
            var here = near.Where(one => one.Box.Meets(box)).ToArray();
            if (Array.Find(here, one => !box.LiesIn(one.Box)) is { } crossing)
            {
                Cutter.Halve(box, crossing.Box, out var below, out var above);
                Cut(below, here);
                Cut(above, here);
                return;
            }

            var rather = Array.FindAll(here, one => one.IsWhole);
            pieces.Add(change with { Box = box, Causes = (rather.Length > 0 ? rather : here).Select(one => one.Edit).Distinct().ToArray() });
        }
    }

    /// <summary>All edits that can have to do with a change: more than do, never fewer.</summary>
    private IReadOnlyList<RecordEdit> MayCause(PairChanges pair, CellChange change)
    {
        var found = new HashSet<RecordEdit>(ReferenceEqualityComparer.Instance);
        foreach (var id in change.Telling) OfRule(id, found);
        if (_factsEdited)
        {
            foreach (var one in LinesOf(pair.Pair))
                if (_byId.TryGetValue(one, out var edit)) found.Add(edit);
            Add(found, RecordKind.Convention, [Words.Of(ConventionKey.DryingTime)]);
            foreach (var word in _deciding.Where(edit => edit.Kind == RecordKind.InstructionWord)) found.Add(word);
        }

        return found.Count > 0 ? found.OrderBy(edit => edit.Kind).ThenBy(edit => edit.Id, StringComparer.Ordinal).ToArray() : _deciding;
    }

    private void OfRule(RuleId id, HashSet<RecordEdit> found)
    {
        Add(found, RecordKind.Rule, [id.Value]);
        foreach (var side in new[] { _before, _after })
        {
            if (!side.Kb.Records.Rules.TryGetValue(id, out var rule)) continue;
            Add(found, RecordKind.Source, rule.Sources.Select(source => source.Value));
            if (!rule.When.IsSilent) continue;
            foreach (var convention in _deciding.Where(edit => edit.Kind == RecordKind.Convention)) found.Add(convention);
            if (rule.Agent is { } agent && side.AgentOf(agent.Value) is >= 0 and var node) Add(found, RecordKind.Agent, side.LineOf(node));
        }
    }

    private void Add(HashSet<RecordEdit> found, RecordKind kind, IEnumerable<string> ids)
    {
        foreach (var id in ids)
            if (_byId.TryGetValue((kind, id), out var edit)) found.Add(edit);
    }

    /// <summary>A box in which an edit alone makes a change.</summary>
    /// <param name="Edit">The edit.</param>
    /// <param name="Box">The box.</param>
    /// <param name="IsWhole">Whether it leads to the verdict of HEAD.</param>
    private sealed record Made(RecordEdit Edit, Box<Stretch> Box, bool IsWhole);
}

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

/// <summary>Applies one edit alone, with those it cannot stand without: what it names that is new too, and what named a record it removes.</summary>
internal sealed class EditApplication
{
    private readonly Dictionary<object, RecordEdit> _added = [];
    private readonly Dictionary<object, List<RecordEdit>> _naming = [];

    public EditApplication(IReadOnlyList<RecordEdit> edits)
    {
        foreach (var edit in edits)
        {
            if (edit is { Action: EditAction.Added, After: { } record } && IdOf(record) is { } id) _added[id] = edit;
            if (edit.Before is null) continue;
            foreach (var name in RecordDifference.Names(edit.Before).Distinct())
            {
                if (_naming.TryGetValue(name, out var list)) list.Add(edit);
                else _naming[name] = [edit];
            }
        }
    }

    /// <summary>The edit with all it cannot stand without.</summary>
    public IReadOnlyCollection<RecordEdit> With(RecordEdit edit)
    {
        var all = new HashSet<RecordEdit>(ReferenceEqualityComparer.Instance) { edit };
        var open = new Stack<RecordEdit>([edit]);
        while (open.TryPop(out var one))
        {
            var needed = RecordDifference.Names(one.After).Where(_added.ContainsKey).Select(name => _added[name]);
            if (one is { Action: EditAction.Removed, Before: { } gone } && IdOf(gone) is { } id && _naming.TryGetValue(id, out var naming))
                needed = needed.Concat(naming);
            foreach (var other in needed)
                if (all.Add(other)) open.Push(other);
        }

        return all;
    }

    /// <summary>The records with some edits applied.</summary>
    public static KnowledgeData Apply(KnowledgeData data, IEnumerable<RecordEdit> edits)
    {
        foreach (var group in edits.Where(edit => edit.Action != EditAction.Renamed).GroupBy(edit => edit.Kind))
        {
            var set = RecordSet.For(group.Key);
            var now = group.ToDictionary(edit => edit.Id, edit => edit.After);
            var kept = set.Of(data).Where(pair => !now.ContainsKey(pair.Key)).Select(pair => pair.Value);
            data = set.With(data, kept.Concat(now.Values.OfType<object>()).ToArray());
        }

        return data;
    }

    /// <summary>
    /// Whether an edit can change what is answered of a part: what rules say, what they rest on, what fills them in, and the trees by which they reach.
    /// </summary>
    public static bool Decides(RecordEdit edit) => !edit.IsWording && edit.Kind is RecordKind.Rule or RecordKind.Source or RecordKind.Convention
        or RecordKind.InstructionWord or RecordKind.Part or RecordKind.Material or RecordKind.Agent;

    private static object? IdOf(object record) => record.GetType().GetProperty("Id")?.GetValue(record);
}
