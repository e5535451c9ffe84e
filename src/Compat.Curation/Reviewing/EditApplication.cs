using Compat.Validation;

namespace Compat.Curation.Reviewing;

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
