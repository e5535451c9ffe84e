namespace Compat.Deciding;

/// <summary>The rules by the node they are written on, compiled when they are first asked for.</summary>
internal sealed class RuleGroups
{
    private readonly CompiledBase _kb;
    private readonly List<int>?[] _indexes;
    private readonly CompiledRule[]?[] _rules;

    public RuleGroups(CompiledBase kb, RuleHead[] heads, int nodes, Func<RuleHead, int> nodeOf)
    {
        _kb = kb;
        _indexes = new List<int>?[nodes];
        _rules = new CompiledRule[]?[nodes];
        for (var i = 0; i < heads.Length; i++)
            if (nodeOf(heads[i]) is >= 0 and var node) (_indexes[node] ??= []).Add(i);
    }

    /// <remarks>Made when first asked for; whichever thread makes it makes the same.</remarks>
    public CompiledRule[] this[int node] => _rules[node] ??= _indexes[node] is { } indexes ? [.. indexes.Select(_kb.RuleAt)] : [];
}
