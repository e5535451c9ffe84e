using System.Collections.Concurrent;
using Compat.Instructions;

namespace Compat.Curation.Checking;

/// <summary>Everything that can be asked of a set of rules: subjects, speakers, and who overrides whom. Immutable and shared by all checks.</summary>
internal sealed class Ground
{
    private readonly CompiledRule[][] _ofMaterial;
    private readonly Speaker[] _speakers;
    private readonly Box<Run>[] _domains;
    private readonly ConcurrentDictionary<Speaker, Box<Run>> _productDomains = [];
    private readonly Lazy<Subject[][]> _hearing;

    public Ground(KnowledgeData data, IReadOnlyList<Site> sites)
        : this(new CompiledBase(data, sites, PhraseRules.Of(data, sites).Rules))
    {
    }

    public Ground(CompiledBase kb)
    {
        Kb = kb;
        Agents = new TreeOrder(Kb.Agents);
        Materials = Subject.Materials(Kb).ToArray();
        Parts = Subject.Parts(Kb).ToArray();
        DeviceParts = Subject.DeviceParts(Kb).ToArray();
        All = [.. Materials, .. Parts, .. DeviceParts];
        _ofMaterial = Enumerable.Range(0, Kb.Materials.Count).Select(m => Reach.OfMaterial(Kb, m).ToArray()).ToArray();
        _speakers = Enumerable.Range(0, Kb.Agents.Count).Select(agent => Speaker.Of(Kb, agent)).ToArray();
        _domains = _speakers.Select(speaker => Kb.Grid.CellsOf(speaker.Domain)).ToArray();
        ProductSpeakers = kb.Sites.SelectMany(site => site.Products).OrderBy(product => product.Id).SelectMany(product => Speaker.OfProduct(Kb, product))
            .ToArray();
        _hearing = new(ByRule);
        Overriders = new CompiledRule[Kb.Rules.Length][];
        var lists = new List<CompiledRule>?[Kb.Rules.Length];
        foreach (var rule in Kb.Rules)
            foreach (var over in rule.Overridden) (lists[over] ??= []).Add(rule);
        for (var i = 0; i < lists.Length; i++) Overriders[i] = lists[i]?.ToArray() ?? [];
    }

    public CompiledBase Kb { get; }

    public TreeOrder Agents { get; }

    public IReadOnlyList<Subject> Materials { get; }

    public IReadOnlyList<Subject> Parts { get; }

    public IReadOnlyList<Subject> DeviceParts { get; }

    public IReadOnlyList<Subject> All { get; }

    /// <summary>The components of the products of the sites.</summary>
    public IReadOnlyList<Speaker> ProductSpeakers { get; }

    /// <summary>For each rule those that override it.</summary>
    public CompiledRule[][] Overriders { get; }

    public Speaker SpeakerOf(int agent) => _speakers[agent];

    /// <summary>The rules of a material's voice.</summary>
    public CompiledRule[] OfMaterial(int material) => _ofMaterial[material];

    /// <summary>The subjects in one of whose voices a rule speaks, materials first.</summary>
    public IReadOnlyList<Subject> Hearing(CompiledRule rule) => _hearing.Value[rule.Index];

    private Subject[][] ByRule()
    {
        var lists = new List<Subject>?[Kb.Rules.Length];
        foreach (var subject in All)
        {
            foreach (var rule in subject.Voice) Add(rule, subject);
            foreach (var material in subject.Variant.Materials)
                foreach (var rule in _ofMaterial[material]) Add(rule, subject);
        }

        return Array.ConvertAll(lists, list => list?.ToArray() ?? []);

        void Add(CompiledRule rule, Subject subject)
        {
            var list = lists[rule.Index] ??= [];
            if (list.Count == 0 || !ReferenceEquals(list[^1], subject)) list.Add(subject);
        }
    }

    /// <summary>The cells that can be asked of a speaker.</summary>
    public Box<Run> DomainOf(Speaker speaker) =>
        speaker.Agent >= 0 ? _domains[speaker.Agent] : _productDomains.GetOrAdd(speaker, one => Kb.Grid.CellsOf(one.Domain));

    /// <summary>The scene of one subject and one speaker.</summary>
    public Scene SceneOf(Subject subject, Speaker speaker) => new(Kb, [subject.Variant], speaker.Substance, speaker.Component, exposureTimeWithoutEnd: false);

    /// <summary>Whether a box of cells holds a point: of a product, strength and dilution must fit together.</summary>
    public bool IsReal(Speaker speaker, in Box<Run> box) => speaker.Substance.Product is null || !speaker.RealDilutions(Kb.Grid.ValuesOf(box)).IsEmpty;

    /// <summary>Every agent of which a rule speaks, wider ones first; an 'allowed' without members speaks of its own agent only.</summary>
    public IEnumerable<int> Reached(CompiledRule rule)
    {
        if (rule.Agent < 0) return [];
        if (rule.Allows && !rule.Rule.WholeClass && rule.SeenWith.Length == 0) return [rule.Agent];
        return Reach.Tops(rule).SelectMany(top => Agents.Downward(top).ToArray()).Distinct();
    }
}

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
