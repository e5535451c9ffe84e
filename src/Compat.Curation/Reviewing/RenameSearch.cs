using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>A record that has another id.</summary>
/// <param name="Kind">The kind of record.</param>
/// <param name="Before">Its id in BASE.</param>
/// <param name="After">Its id in HEAD.</param>
internal sealed record Rename(RecordKind Kind, object Before, object After);

/// <summary>Tells renames from removals: a record that is gone and one that came, of the same content or the one called by the other's id.</summary>
internal static class RenameSearch
{
    /// <summary>The renames that can be seen; of records of which several are alike, none.</summary>
    public static IReadOnlyList<Rename> Find(KnowledgeData before, KnowledgeData after) => RecordSet.All.SelectMany(set => Find(set, before, after)).ToArray();

    private static IEnumerable<Rename> Find(RecordSet set, KnowledgeData before, KnowledgeData after)
    {
        var was = set.Of(before).ToDictionary(pair => pair.Key, pair => pair.Value);
        var now = set.Of(after).ToDictionary(pair => pair.Key, pair => pair.Value);
        var gone = was.Where(pair => !now.ContainsKey(pair.Key)).ToArray();
        var came = now.Where(pair => !was.ContainsKey(pair.Key)).ToArray();
        if (gone.Length == 0 || came.Length == 0) yield break;
        var pairs = gone.SelectMany(one => came.Where(other => IsCalled(other.Value, one.Key) || IsAlike(set, one.Value, other.Value)).Select(other => (Gone: one, Came: other))).ToArray();
        foreach (var (one, other) in pairs)
        {
            var called = IsCalled(other.Value, one.Key);
            var rivals = pairs.Where(pair => (pair.Gone.Key == one.Key) != (pair.Came.Key == other.Key)).ToArray();
            if (called ? rivals.Any(pair => IsCalled(pair.Came.Value, pair.Gone.Key)) : rivals.Length > 0) continue;
            if (IdOf(one.Value) is { } from && IdOf(other.Value) is { } to) yield return new(set.Kind, from, to);
        }
    }

    /// <summary>Whether a record keeps a retired id among its everyday names.</summary>
    internal static bool IsCalled(object? record, string id) => record switch
    {
        Material material => material.AlsoCalled.Contains(id),
        PartType part => part.AlsoCalled.Contains(id),
        AgentClass agent => agent.AlsoCalled.Contains(id),
        Model.Organism organism => organism.AlsoCalled.Contains(id),
        _ => false,
    };

    /// <summary>Whether two records say the same under two ids. One of another name or title is another thing that happens to be alike.</summary>
    private static bool IsAlike(RecordSet set, object one, object other) =>
        RecordDifference.Fields(one, other).All(field => set.IsWording(field) && field is not ("name" or "title"));

    private static object? IdOf(object record) => record.GetType().GetProperty("Id")?.GetValue(record);
}
