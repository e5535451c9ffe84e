namespace Compat.Curation.Checking;

/// <summary>The nodes of a tree in an order in which all below a node follow it, so that 'at or below' is a run of numbers.</summary>
internal sealed class TreeOrder
{
    private readonly int[] _order;
    private readonly int[] _enter;
    private readonly int[] _exit;

    public TreeOrder(Tree tree)
    {
        var children = new List<int>[tree.Count];
        var open = new Stack<int>();
        for (var node = tree.Count - 1; node >= 0; node--)
        {
            if (tree.Parent(node) < 0) open.Push(node);
            else (children[tree.Parent(node)] ??= []).Add(node);
        }

        _order = new int[tree.Count];
        _enter = new int[tree.Count];
        _exit = new int[tree.Count];
        var next = 0;
        while (open.Count > 0)
        {
            var node = open.Pop();
            _enter[node] = next;
            _order[next++] = node;
            foreach (var child in children[node] ?? []) open.Push(child);
        }

        // Later nodes lie below or beside earlier ones: ends are found from the back.
        for (var i = next - 1; i >= 0; i--)
        {
            var node = _order[i];
            _exit[node] = Math.Max(_exit[node], i);
            if (tree.Parent(node) is var parent and >= 0) _exit[parent] = Math.Max(_exit[parent], _exit[node]);
        }
    }

    /// <summary>The place of a node in the order.</summary>
    public int Enter(int node) => _enter[node];

    /// <summary>The place of the last node at or below a node.</summary>
    public int Exit(int node) => _exit[node];

    /// <summary>Whether a node lies at or below another.</summary>
    public bool IsAtOrBelow(int node, int ancestor) => _enter[node] >= _enter[ancestor] && _enter[node] <= _exit[ancestor];

    /// <summary>A node, then all below it.</summary>
    public ReadOnlySpan<int> Downward(int node) => _order.AsSpan(_enter[node], _exit[node] - _enter[node] + 1);
}
