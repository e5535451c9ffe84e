namespace Compat.Curation.Reviewing;

/// <summary>All records that differ between two knowledge bases, ids that were renamed brought to their later names first.</summary>
internal sealed class EditList
{
    private EditList(IReadOnlyList<RecordEdit> edits, KnowledgeData before, Renames renames) => (All, Before, Renames) = (edits, before, renames);

    /// <summary>The edits, by kind and id.</summary>
    public IReadOnlyList<RecordEdit> All { get; }

    /// <summary>The records of BASE under their later ids.</summary>
    public KnowledgeData Before { get; }

    /// <summary>What was renamed.</summary>
    public Renames Renames { get; }

    /// <summary>The edits that lead from one knowledge base to another.</summary>
    public static EditList Between(KnowledgeData before, KnowledgeData after)
    {
        var later = new Dictionary<object, object>();
        var former = new Dictionary<string, string>();
        var renamed = before;
        // What names a renamed record is alike only once that name is known: so again, until nothing more is found.
        while (RenameSearch.Find(renamed, after) is { Count: > 0 } found)
        {
            foreach (var one in found) later[one.Before] = one.After;
            foreach (var one in found) former[Key(one.Kind, one.After.ToString()!)] = former.GetValueOrDefault(Key(one.Kind, one.Before.ToString()!), one.Before.ToString()!);
            renamed = new Renames(found.ToDictionary(one => one.Before, one => one.After)).In(renamed);
        }

        var edits = RecordSet.All.SelectMany(set => Between(set, renamed, after, former)).ToArray();
        return new(edits, renamed, new Renames(later));
    }

    private static string Key(Validation.RecordKind kind, string id) => $"{kind} {id}";

    private static IEnumerable<RecordEdit> Between(RecordSet set, KnowledgeData before, KnowledgeData after, Dictionary<string, string> former)
    {
        var was = set.Of(before).ToDictionary(pair => pair.Key, pair => pair.Value);
        var now = set.Of(after).ToDictionary(pair => pair.Key, pair => pair.Value);
        foreach (var id in was.Keys.Union(now.Keys).Order(StringComparer.Ordinal))
        {
            was.TryGetValue(id, out var one);
            now.TryGetValue(id, out var other);
            var earlier = former.GetValueOrDefault(Key(set.Kind, id));
            if (earlier is not null) yield return new(set.Kind, id, EditAction.Renamed) { FormerId = earlier, IsWording = true, Before = one, After = other };
            if (one is null || other is null)
            {
                yield return new(set.Kind, id, one is null ? EditAction.Added : EditAction.Removed) { FormerId = earlier, Before = one, After = other };
                continue;
            }

            var fields = RecordDifference.Fields(one, other).Where(field => field != "id").ToArray();
            if (fields.Length > 0) yield return new(set.Kind, id, EditAction.Changed) { FormerId = earlier, Fields = fields, IsWording = fields.All(set.IsWording), Before = one, After = other };
        }
    }
}
