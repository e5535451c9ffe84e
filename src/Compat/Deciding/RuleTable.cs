using Compat.Snapshots;

namespace Compat.Deciding;

/// <summary>What is known of a rule before it is compiled.</summary>
/// <param name="Part">The part type it is written on, or -1.</param>
/// <param name="Material">The material it is written on, or -1.</param>
/// <param name="Device">The device it is written on, or null.</param>
/// <param name="Agent">The agent class it speaks of, or -1 for a product's rule.</param>
/// <param name="Allows">Whether it is an 'allowed'.</param>
internal readonly record struct RuleHead(int Part, int Material, DeviceId? Device, int Agent, bool Allows);

/// <summary>All rules of a base in the order of their ids. Those of a snapshot are in order as they stand and are read when they are first asked for.</summary>
internal sealed class RuleTable
{
    private readonly StoredRules? _stored;
    private readonly Rule[] _others;

    /// <summary>Where the rules stand: at a place among the stored ones, or, counted from -1 down, among the others. Null where all are of one kind.</summary>
    private readonly int[]? _places;

    /// <param name="rules">The rules of the data.</param>
    /// <param name="more">The rules of sites and instructions.</param>
    public RuleTable(IReadOnlyList<Rule> rules, IEnumerable<Rule> more)
    {
        _stored = rules as StoredRules;
        _others = (_stored is null ? rules.Concat(more) : more).ToArray();
        Array.Sort(_others, (a, b) => a.Id.CompareTo(b.Id));
        if (_stored is not null && _others.Length > 0) _places = Merged(_stored);
    }

    public int Count => (_stored?.Count ?? 0) + _others.Length;

    public Rule At(int index) => PlaceOf(index) is >= 0 and var place ? _stored![place] : _others[~PlaceOf(index)];

    /// <summary>The rules that are no stored ones.</summary>
    public IReadOnlyList<Rule> Others => _others;

    /// <summary>The boundaries of the stored rules, axis by axis; null where there are no stored rules.</summary>
    public Cut[][]? StoredCuts => _stored?.Cuts;

    /// <exception cref="SnapshotException">There is none of that id, which no validation passes: the snapshot was forged.</exception>
    public int IndexOf(RuleId id) => Search(Count, IdAt, id.Value) is >= 0 and var index ? index
        : throw new SnapshotException("a rule overrides one that is not there");

    public RuleHead HeadOf(int index, Tree parts, Tree materials, Tree agents)
    {
        if (PlaceOf(index) is >= 0 and var place) return Head(_stored!.HeadOf(place), parts, materials, agents);
        var rule = _others[~PlaceOf(index)];
        return new(
            rule.Target.Part is { } part ? parts[part.Value] : -1,
            rule.Target.Material is { } material ? materials[material.Value] : -1,
            rule.Target.Device,
            rule.Agent is { } agent ? agents[agent.Value] : -1,
            rule.Allows);
    }

    /// <summary>Reads the first fields of a rule of a snapshot; such a one has no device and no product, which are of sites.</summary>
    private static RuleHead Head(SnapshotReader reader, Tree parts, Tree materials, Tree agents)
    {
        reader.Text();
        var (part, material) = (reader.MaybeText(), reader.MaybeText());
        reader.MaybeText();
        reader.MaybeText();
        var agent = reader.MaybeText();
        reader.MaybeText();
        reader.MaybeText();
        return new(Node(parts, part), part is null ? Node(materials, material) : -1, null, Node(agents, agent), reader.Flag());
    }

    private static int Node(Tree tree, string? id) =>
        id is null ? -1 : tree.TryFind(id, out var node) ? node : throw new SnapshotException("a rule speaks of what is not there");

    private static int Search(int count, Func<int, string> idAt, string id)
    {
        int low = 0, high = count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            var order = string.CompareOrdinal(idAt(middle), id);
            if (order == 0) return middle;
            if (order < 0) low = middle + 1;
            else high = middle;
        }

        return ~low;
    }

    private int PlaceOf(int index) => _places?[index] ?? (_stored is null ? ~index : index);

    private string IdAt(int index) => PlaceOf(index) is >= 0 and var place ? _stored!.IdAt(place) : _others[~PlaceOf(index)].Id.Value;

    private int[] Merged(StoredRules stored)
    {
        var places = new int[stored.Count + _others.Length];
        int at = 0, taken = 0;
        for (var i = 0; i < _others.Length; i++)
        {
            var found = Search(stored.Count, stored.IdAt, _others[i].Id.Value);
            var before = found < 0 ? ~found : found;
            while (taken < before) places[at++] = taken++;
            places[at++] = ~i;
        }

        while (taken < stored.Count) places[at++] = taken++;
        return places;
    }
}

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
