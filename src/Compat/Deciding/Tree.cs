using Compat.Snapshots;

namespace Compat.Deciding;

/// <summary>Nodes of one tree by number, with their parents. Built from records that passed validation: no cycle, no unknown parent.</summary>
internal sealed class Tree
{
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly int[] _parent;

    /// <summary>Makes a tree of ids and, at the same places, the ids of their parents; null for a root.</summary>
    public Tree(string[] ids, string?[] under)
    {
        for (var i = 0; i < ids.Length; i++) _index[ids[i]] = i;
        _parent = new int[ids.Length];
        for (var i = 0; i < ids.Length; i++) _parent[i] = under[i] is { } parent ? _index[parent] : -1;
    }

    /// <summary>Makes a tree of records. Those of a snapshot begin with their id and that of their parent: no more is read of them.</summary>
    public static Tree Of<T>(IReadOnlyList<T> records, Func<T, Id> id, Func<T, Id?> under) where T : class
    {
        var ids = new string[records.Count];
        var parents = new string?[records.Count];
        var stored = records as StoredRecords<T>;
        for (var i = 0; i < ids.Length; i++)
        {
            var head = stored?.HeadOf(i);
            ids[i] = head is null ? id(records[i]).Value : head.Text();
            parents[i] = head is null ? under(records[i])?.Value : head.MaybeText();
        }

        return new Tree(ids, parents);
    }

    public int Count => _parent.Length;

    public int this[string id] => _index[id];

    public bool TryFind(string id, out int node) => _index.TryGetValue(id, out node);

    public int Parent(int node) => _parent[node];

    public bool IsAtOrBelow(int node, int ancestor)
    {
        for (; node >= 0; node = _parent[node])
            if (node == ancestor) return true;
        return false;
    }

    /// <summary>The node itself, then its ancestors up to the root.</summary>
    public IEnumerable<int> Upward(int node)
    {
        for (; node >= 0; node = _parent[node]) yield return node;
    }
}
