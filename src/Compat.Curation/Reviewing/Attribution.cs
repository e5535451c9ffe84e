using Compat.Exposures;
using Compat.Knowledge;
using Compat.Sites;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Finds the edit that made each change: the one that alone, applied to BASE, makes a change there.</summary>
internal sealed class Attribution
{
    private readonly ReviewSide _before;
    private readonly ReviewSide _after;
    private readonly IReadOnlyList<Site> _sites;
    private readonly EditList _edits;
    private readonly RecordEdit[] _deciding;
    private readonly bool _factsEdited;
    private readonly EditApplication _application;
    private readonly Dictionary<(RecordKind, string), RecordEdit> _byId;

    public Attribution(ReviewSide before, ReviewSide after, EditList edits, IReadOnlyList<Site> sites)
    {
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
        var may = pairs.Select(pair => pair.Changes.Select(change => MayCause(pair, change)).ToArray()).ToArray();
        for (var i = 0; i < pairs.Count; i++)
        {
            foreach (var edit in may[i].Where(edits => edits.Count > 1).SelectMany(edits => edits).Distinct())
            {
                if (open.TryGetValue(edit, out var list)) list.Add(pairs[i]);
                else open[edit] = [pairs[i]];
            }
        }

        var trials = open.ToDictionary(one => one.Key, one => EditTrial.Of(_edits.Before, _sites, _application.With(one.Key), one.Value.SelectMany(pair => pair.Rules).ToHashSet(), _before.Serials));
        return pairs.Select((pair, i) => pair with
        {
            Changes = pair.Changes.Select((change, j) => change with { Causes = may[i][j].Count > 1 ? Proved(pair, change, may[i][j], trials) : may[i][j] }).ToArray(),
        }).ToArray();
    }

    /// <summary>Of edits that may have caused a change those that do alone; where some lead to what is answered now, only these.</summary>
    private RecordEdit[] Proved(PairChanges pair, CellChange change, IReadOnlyList<RecordEdit> may, Dictionary<RecordEdit, EditTrial?> trials)
    {
        var proved = may.Select(edit => (Edit: edit, Made: trials[edit]?.Changes(pair, change, _before))).Where(one => one.Made is { Count: > 0 }).ToArray();
        var whole = proved.Where(one => one.Made!.Any(made => made.After.Verdict == change.After.Verdict)).ToArray();
        return (whole.Length > 0 ? whole : proved).Select(one => one.Edit).ToArray();
    }

    /// <summary>All edits that can have to do with a change: more than do, never fewer.</summary>
    private IReadOnlyList<RecordEdit> MayCause(PairChanges pair, CellChange change)
    {
        var found = new HashSet<RecordEdit>(ReferenceEqualityComparer.Instance);
        foreach (var id in change.Telling) OfRule(id, found);
        if (_factsEdited)
        {
            foreach (var (side, subject, agent) in new[] { (_before, pair.Pair.Before, pair.Pair.AgentBefore), (_after, pair.Pair.After, pair.Pair.AgentAfter) })
            {
                if (agent >= 0) Add(found, RecordKind.Agent, side.LineOf(agent));
                foreach (var variant in subject.Parts)
                {
                    if (variant.Part >= 0) Add(found, RecordKind.Part, side.Kb.Parts.Upward(variant.Part).Select(node => side.Kb.Data.Parts[node].Id.Value));
                    foreach (var material in variant.Materials) Add(found, RecordKind.Material, side.Kb.Materials.Upward(material).Select(node => side.Kb.Data.Materials[node].Id.Value));
                }
            }

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
            if (!IsSilent(rule)) continue;
            foreach (var convention in _deciding.Where(edit => edit.Kind == RecordKind.Convention)) found.Add(convention);
            if (rule.Agent is { } agent && side.AgentOf(agent.Value) is >= 0 and var node) Add(found, RecordKind.Agent, side.LineOf(node));
        }
    }

    private static bool IsSilent(Rule rule) =>
        rule.When.Methods.Statement == AxisStatement.Unstated || Enumerable.Range(0, Evaluation.CompiledRule.AxisCount).Any(axis => rule.When.On((Axis)axis).Statement == AxisStatement.Unstated);

    private void Add(HashSet<RecordEdit> found, RecordKind kind, IEnumerable<string> ids)
    {
        foreach (var id in ids)
            if (_byId.TryGetValue((kind, id), out var edit)) found.Add(edit);
    }
}
