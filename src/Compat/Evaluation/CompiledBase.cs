using Compat.Knowledge;
using Compat.Sites;
using Compat.Validation;

namespace Compat.Evaluation;

/// <summary>What an agent has, its ancestors' statements included.</summary>
internal sealed record AgentTraits(
    AgentClass Agent, StrengthUnit? Basis, Interval? Strength, Interval? Ph, Interval? Temperature, Residue? Leaves, bool Chamber, IReadOnlyList<Duty> Duties);

/// <summary>What a part type has, its ancestors' statements included.</summary>
internal sealed record PartTraits(
    PartType Part, IReadOnlyList<MaterialSlot> Materials, bool MaterialsKnown, ApplicationMethod Wettest, IReadOnlyList<Act> Never, Geometry Geometry,
    TouchedBy? TouchedBy, IReadOnlyList<Duty> Duties)
{
    /// <summary>The materials it has for certain: those of which there is no other candidate.</summary>
    public IEnumerable<MaterialId> CertainMaterials => Materials.Where(slot => slot.OneOf.Count == 1).Select(slot => slot.OneOf[0]);
}

/// <summary>A knowledge base and its sites, numbered and sorted for asking. Built only from data that passed validation.</summary>
internal sealed class CompiledBase
{
    private readonly Dictionary<ConventionKey, Convention> _conventions;
    private readonly AgentTraits[] _agents;
    private readonly PartTraits[] _parts;
    private readonly bool[] _delicate;
    private readonly bool[] _declaredOnly;
    private readonly Dictionary<int, List<CompiledRule>> _byPart = [];
    private readonly Dictionary<int, List<CompiledRule>> _byMaterial = [];
    private readonly Dictionary<DeviceId, List<CompiledRule>> _byDevice = [];

    public CompiledBase(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        Data = data;
        Sites = sites;
        Records = new Scope(data, sites);
        Materials = new Tree(data.Materials.Select(m => (m.Id.Value, m.Under?.Value)).ToArray());
        Parts = new Tree(data.Parts.Select(p => (p.Id.Value, p.Under?.Value)).ToArray());
        Agents = new Tree(data.Agents.Select(a => (a.Id.Value, a.Under?.Value)).ToArray());
        _conventions = data.Conventions.ToDictionary(c => c.Key);
        _delicate = Marks(data.Materials.Select(m => m.Delicate is not null).ToArray());
        _declaredOnly = Marks(data.Materials.Select(m => m.DeclaredOnlySuffices).ToArray());
        _agents = Enumerable.Range(0, Agents.Count).Select(Traits).ToArray();
        _parts = Enumerable.Range(0, Parts.Count).Select(PartTraitsOf).ToArray();
        Rules = data.Rules.Concat(sites.SelectMany(s => s.Rules)).OrderBy(r => r.Id)
            .Select((rule, i) => RuleCompiler.Compile(rule, i, this)).ToArray();
        Tables = Enumerable.Range(0, CompiledRule.AxisCount).Select(axis => new CutTable(Rules.Select(r => r.Box[axis]))).ToArray();
        var byId = Rules.ToDictionary(r => r.Rule.Id, r => r.Index);
        foreach (var rule in Rules)
        {
            for (var axis = 0; axis < CompiledRule.AxisCount; axis++) (rule.Low[axis], rule.High[axis]) = Tables[axis].Cells(rule.Box[axis]);
            foreach (var id in rule.Rule.Overrides) rule.Overrides.Add(byId[id]);
            if (rule.Rule.Target.Part is { } part) Add(_byPart, Parts[part.Value], rule);
            else if (rule.Rule.Target.Material is { } material) Add(_byMaterial, Materials[material.Value], rule);
            else Add(_byDevice, rule.Rule.Target.Device!, rule);
        }
    }

    public KnowledgeData Data { get; }

    /// <summary>The records by id, for checking questions.</summary>
    public Scope Records { get; }

    public IReadOnlyList<Site> Sites { get; }

    public Tree Materials { get; }

    public Tree Parts { get; }

    public Tree Agents { get; }

    public CompiledRule[] Rules { get; }

    public CutTable[] Tables { get; }

    public IReadOnlyDictionary<DeviceId, Device> Devices => Records.Devices;

    public IReadOnlyDictionary<SourceId, Source> SourcesById => Records.Sources;

    public Convention Convention(ConventionKey key) => _conventions[key];

    public AgentTraits Agent(int node) => _agents[node];

    public AgentTraits Agent(AgentId id) => _agents[Agents[id.Value]];

    public PartTraits Part(int node) => _parts[node];

    public Product Product(ProductId id) => Records.Products[id];

    public bool IsDelicate(int material) => _delicate[material];

    public bool DeclaredOnlySuffices(int material) => _declaredOnly[material];

    public IEnumerable<CompiledRule> RulesOnPart(int node) => _byPart.TryGetValue(node, out var list) ? list : [];

    public IEnumerable<CompiledRule> RulesOnMaterial(int node) => _byMaterial.TryGetValue(node, out var list) ? list : [];

    public IEnumerable<CompiledRule> RulesOnDevice(DeviceId id) => _byDevice.TryGetValue(id, out var list) ? list : [];

    private static void Add<TKey>(Dictionary<TKey, List<CompiledRule>> map, TKey key, CompiledRule rule) where TKey : notnull
    {
        if (!map.TryGetValue(key, out var list)) map[key] = list = [];
        list.Add(rule);
    }

    private bool[] Marks(bool[] own) =>
        Enumerable.Range(0, own.Length).Select(node => Materials.Upward(node).Any(n => own[n])).ToArray();

    private AgentTraits Traits(int node)
    {
        var line = Agents.Upward(node).Select(n => Data.Agents[n]).ToArray();
        return new AgentTraits(
            line[0],
            line.Select(a => a.Basis).FirstOrDefault(b => b is not null),
            line.Select(a => a.Usual.Strength).FirstOrDefault(x => x is not null),
            line.Select(a => a.Usual.Ph).FirstOrDefault(x => x is not null),
            line.Select(a => a.Usual.Temperature).FirstOrDefault(x => x is not null),
            line.Select(a => a.Leaves).FirstOrDefault(x => x is not null),
            line.Any(a => a.Chamber),
            line.SelectMany(a => a.Duties).ToArray());
    }

    private PartTraits PartTraitsOf(int node)
    {
        var line = Parts.Upward(node).Select(n => Data.Parts[n]).ToArray();
        var withMaterials = line.FirstOrDefault(p => p.Materials is not null);
        return new PartTraits(
            line[0],
            withMaterials?.Materials ?? [],
            withMaterials is not null && withMaterials.MaterialsKnown != false,
            line.Select(p => p.Wettest).FirstOrDefault(x => x is not null) ?? ApplicationMethod.DryWipe,
            line.Select(p => p.Never).FirstOrDefault(x => x is not null) ?? [],
            line.Select(p => p.Geometry).FirstOrDefault(x => x is not null) ?? Geometry.Open,
            line.Select(p => p.TouchedBy).FirstOrDefault(x => x is not null),
            line.SelectMany(p => p.Duties).ToArray());
    }
}
