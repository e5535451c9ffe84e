using Compat.Snapshots;
using Compat.Validation;

namespace Compat.Deciding;

/// <summary>What an agent has, its ancestors' statements included.</summary>
internal sealed record AgentTraits(
    AgentClass Agent, StrengthUnit? Basis, Interval? Strength, Interval? Ph, Interval? Temperature, Residue? Leaves, bool Chamber,
        IReadOnlyList<Duty> Duties, Interval? AvailableChlorine);

/// <summary>What a part type has, its ancestors' statements included.</summary>
internal sealed record PartTraits(
    PartType Part, IReadOnlyList<MaterialSlot> Materials, bool MaterialsKnown, ApplicationMethod Wettest, IReadOnlyList<Act> Never, Geometry Geometry,
    TouchedBy? TouchedBy, IReadOnlyList<SoilKind> Soil, IReadOnlyList<WayOut> WaysOut, string? FunctionCheck, decimal? DryBeforePower,
        IReadOnlyList<Duty> Duties)
{
    /// <summary>The materials it has for certain: those of which there is no other candidate.</summary>
    public IEnumerable<MaterialId> CertainMaterials => Materials.Where(slot => slot.OneOf.Count == 1).Select(slot => slot.OneOf[0]);
}

/// <summary>A knowledge base and its sites, numbered and sorted for asking. Built only from data that passed validation.</summary>
internal sealed class CompiledBase
{
    private readonly Convention?[] _conventions = new Convention?[(int)LastMember.ConventionKey + 1];
    private readonly AgentTraits?[] _agents;
    private readonly PartTraits?[] _parts;
    private readonly RuleTable _table;
    private readonly RuleHead[] _heads;
    private readonly CompiledRule?[] _rules;
    private readonly RuleGroups _byPart, _byMaterial;
    private readonly Dictionary<DeviceId, List<CompiledRule>> _byDevice = [];
    private readonly System.Collections.Concurrent.ConcurrentDictionary<ProductId, Substance> _asTheyStand = new();
    private volatile bool _hasAllRules;

    public CompiledBase(KnowledgeData data, IReadOnlyList<Site> sites)
        : this(data, sites, [])
    {
    }

    /// <param name="data">The records.</param>
    /// <param name="sites">The sites.</param>
    /// <param name="ofInstructions">The rules that words of the devices' instructions became.</param>
    public CompiledBase(KnowledgeData data, IReadOnlyList<Site> sites, IReadOnlyList<Rule> ofInstructions)
    {
        Data = data;
        Sites = sites;
        Records = new Scope(data, sites);
        Materials = Tree.Of(data.Materials, m => m.Id, m => m.Under);
        Parts = Tree.Of(data.Parts, p => p.Id, p => p.Under);
        Agents = Tree.Of(data.Agents, a => a.Id, a => a.Under);
        foreach (var convention in data.Conventions) _conventions[(int)convention.Key] = convention;
        _agents = new AgentTraits?[Agents.Count];
        _parts = new PartTraits?[Parts.Count];
        _table = new RuleTable(data.Rules, sites.SelectMany(s => s.Rules).Concat(ofInstructions));
        _rules = new CompiledRule?[_table.Count];
        _heads = new RuleHead[_table.Count];
        for (var i = 0; i < _heads.Length; i++) _heads[i] = _table.HeadOf(i, Parts, Materials, Agents);
        _byPart = new RuleGroups(this, _heads, Parts.Count, head => head.Part);
        _byMaterial = new RuleGroups(this, _heads, Materials.Count, head => head.Material);
        var cuts = _table.StoredCuts;
        var uncut = cuts is null ? Enumerable.Range(0, _table.Count).Select(_table.At) : _table.Others;
        var boxes = uncut.Select(rule => RuleCompiler.BoxOf(rule, this)).ToArray();
        Grid = new Grid(axis => new CutTable(cuts?[(int)axis] ?? [], boxes.Select(box => box[axis])));
        for (var i = 0; i < _heads.Length; i++)
            if (_heads[i].Device is { } device) OnDevice(device).Add(RuleAt(i));
    }

    public KnowledgeData Data { get; }

    /// <summary>The records by id, for checking questions.</summary>
    public Scope Records { get; }

    public IReadOnlyList<Site> Sites { get; }

    public Tree Materials { get; }

    public Tree Parts { get; }

    public Tree Agents { get; }

    /// <summary>All rules, compiled, in the order of their ids.</summary>
    public CompiledRule[] Rules
    {
        get
        {
            for (var i = 0; i < _rules.Length && !_hasAllRules; i++) RuleAt(i);
            _hasAllRules = true;
            return _rules!;
        }
    }

    /// <summary>What is known of the rules, in the order of their ids, without compiling one.</summary>
    public IReadOnlyList<RuleHead> Heads => _heads;

    public Grid Grid { get; }

    public RecordsById<DeviceId, Device> Devices => Records.Devices;

    public RecordsById<SourceId, Source> SourcesById => Records.Sources;

    public Convention Convention(ConventionKey key) => _conventions[(int)key]!;

    /// <remarks>Made when first asked for; whichever thread makes it makes the same.</remarks>
    public AgentTraits Agent(int node) => _agents[node] ??= Traits(node);

    public AgentTraits Agent(AgentId id) => Agent(Agents[id.Value]);

    /// <remarks>Made when first asked for; whichever thread makes it makes the same.</remarks>
    public PartTraits Part(int node) => _parts[node] ??= PartTraitsOf(node);

    public Product Product(ProductId id) => Records.Products[id];

    /// <summary>A product as it stands, of which no axis is asked: resolved once, however many parts it is asked on.</summary>
    public Substance AsItStands(ProductId id, Func<ProductId, Substance> resolve) => _asTheyStand.GetOrAdd(id, resolve);

    public bool IsDelicate(int material)
    {
        for (var node = material; node >= 0; node = Materials.Parent(node))
            if (Data.Materials[node].Delicate is not null) return true;
        return false;
    }

    public bool DeclaredOnlySuffices(int material)
    {
        for (var node = material; node >= 0; node = Materials.Parent(node))
            if (Data.Materials[node].DeclaredOnlySuffices) return true;
        return false;
    }

    public IReadOnlyList<CompiledRule> RulesOnPart(int node) => _byPart[node];

    public IReadOnlyList<CompiledRule> RulesOnMaterial(int node) => _byMaterial[node];

    public IReadOnlyList<CompiledRule> RulesOnDevice(DeviceId id) => _byDevice.TryGetValue(id, out var list) ? list : [];

    /// <summary>A rule, compiled when it is first asked for: once, whichever threads ask.</summary>
    /// <exception cref="SnapshotException">It is damaged, or has a boundary that its snapshot does not list.</exception>
    public CompiledRule RuleAt(int index)
    {
        if (_rules[index] is { } known) return known;
        var rule = RuleCompiler.Compile(_table.At(index), index, this);
        return Interlocked.CompareExchange(ref _rules[index], rule, null) ?? rule;
    }

    /// <summary>Whether a rule is known by instructions, a test or a publication, and a source of standing was read.</summary>
    public bool IsWellFounded(CompiledRule rule) =>
        rule.Rule.KnownBy is KnownBy.Test or KnownBy.Instructions or KnownBy.Published
        && rule.Rule.Sources.Any(id => SourcesById.TryGetValue(id, out var source) && source.IsWellFounded);

    /// <summary>The places of rules in the order of their ids.</summary>
    public int[] IndexesOf(IReadOnlyList<RuleId> ids) => ids.Count == 0 ? [] : ids.Select(_table.IndexOf).ToArray();

    private List<CompiledRule> OnDevice(DeviceId id)
    {
        if (!_byDevice.TryGetValue(id, out var list)) _byDevice[id] = list = [];
        return list;
    }

    private AgentTraits Traits(int node)
    {
        StrengthUnit? basis = null;
        Interval? strength = null, ph = null, temperature = null;
        Residue? leaves = null;
        var chamber = false;
        var duties = new List<Duty>();
        for (var at = node; at >= 0; at = Agents.Parent(at))
        {
            var agent = Data.Agents[at];
            basis ??= agent.Basis;
            strength ??= agent.Usual.Strength;
            ph ??= agent.Usual.Ph;
            temperature ??= agent.Usual.Temperature;
            leaves ??= agent.Leaves;
            chamber |= agent.Chamber;
            duties.AddRange(agent.Duties);
        }

        return new AgentTraits(Data.Agents[node], basis, strength, ph, temperature, leaves, chamber, duties, AvailableChlorine(node));
    }

    /// <summary>A label that names a salt may mean any of its hydrates: the hull of what the agent and those below it state.</summary>
    private Interval? AvailableChlorine(int node)
    {
        if (Data.Agents[node].AvailableChlorine is not { } own) return null;
        var share = Interval.Exactly(own);
        for (var below = 0; below < Agents.Count; below++)
            if (below != node && Agents.IsAtOrBelow(below, node) && Data.Agents[below].AvailableChlorine is { } other)
                share = share.Hull(Interval.Exactly(other));
        return share;
    }

    private PartTraits PartTraitsOf(int node)
    {
        PartType? withMaterials = null;
        ApplicationMethod? wettest = null;
        IReadOnlyList<Act>? never = null;
        Geometry? geometry = null;
        TouchedBy? touchedBy = null;
        IReadOnlyList<SoilKind>? soil = null;
        IReadOnlyList<WayOut>? waysOut = null;
        string? functionCheck = null;
        decimal? dryBeforePower = null;
        var duties = new List<Duty>();
        for (var at = node; at >= 0; at = Parts.Parent(at))
        {
            var part = Data.Parts[at];
            if (part.Materials is not null) withMaterials ??= part;
            wettest ??= part.Wettest;
            never ??= part.Never;
            geometry ??= part.Geometry;
            touchedBy ??= part.TouchedBy;
            soil ??= part.Soil;
            waysOut ??= part.WayOut;
            functionCheck ??= part.FunctionCheck;
            dryBeforePower ??= part.DryBeforePower;
            duties.AddRange(part.Duties);
        }

        return new PartTraits(
            Data.Parts[node],
            withMaterials?.Materials ?? [],
            withMaterials is not null && withMaterials.MaterialsKnown != false,
            wettest ?? ApplicationMethod.DryWipe,
            never ?? [],
            geometry ?? Geometry.Open,
            touchedBy,
            soil ?? [],
            waysOut ?? [],
            functionCheck,
            dryBeforePower,
            duties);
    }
}
