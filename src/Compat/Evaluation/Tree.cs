namespace Compat.Evaluation;

/// <summary>Nodes of one tree by number, with their parents. Built from records that passed validation: no cycle, no unknown parent.</summary>
internal sealed class Tree
{
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly int[] _parent;

    public Tree(IReadOnlyList<(string Id, string? Under)> nodes)
    {
        for (var i = 0; i < nodes.Count; i++) _index[nodes[i].Id] = i;
        _parent = nodes.Select(node => node.Under is null ? -1 : _index[node.Under]).ToArray();
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
