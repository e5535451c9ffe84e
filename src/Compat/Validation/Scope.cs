namespace Compat.Validation;

/// <summary>The records that references may name, and the problems found so far.</summary>
internal sealed class Scope
{
    /// <summary>Problems that are given near names: of a file in which more is wrong, the search would take long and nobody reads it.</summary>
    private const int MostHelped = 100;

    private readonly List<Problem> _problems = [];
    private readonly Lazy<HashSet<OrganismId>> _organisms;

    public Scope(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        Data = data;
        Materials = new(data.Materials, [], m => m.Id.Value);
        Parts = new(data.Parts, [], p => p.Id.Value);
        Agents = new(data.Agents, [], a => a.Id.Value);
        Sources = new(data.Sources, [.. sites.SelectMany(s => s.Sources)], s => s.Id.Value);
        Products = new([.. sites.SelectMany(s => s.Products)], [], p => p.Id.Value);
        Devices = new([.. sites.SelectMany(s => s.Devices)], [], d => d.Id.Value);
        Rules = new(data.Rules, [.. sites.SelectMany(s => s.Rules)], r => r.Id.Value);
        _organisms = new Lazy<HashSet<OrganismId>>(() => [.. data.Organisms.Select(o => o.Id)]);
    }

    /// <summary>The same records with no problem found yet.</summary>
    public Scope(Scope records)
    {
        Data = records.Data;
        Materials = records.Materials;
        Parts = records.Parts;
        Agents = records.Agents;
        Sources = records.Sources;
        Products = records.Products;
        Devices = records.Devices;
        Rules = records.Rules;
        _organisms = records._organisms;
    }

    public KnowledgeData Data { get; }

    public RecordsById<MaterialId, Material> Materials { get; }

    public RecordsById<PartId, PartType> Parts { get; }

    public RecordsById<AgentId, AgentClass> Agents { get; }

    public RecordsById<SourceId, Source> Sources { get; }

    public RecordsById<ProductId, Product> Products { get; }

    public RecordsById<DeviceId, Device> Devices { get; }

    public RecordsById<RuleId, Rule> Rules { get; }

    public HashSet<OrganismId> Organisms => _organisms.Value;

    public IReadOnlyList<Problem> Problems => _problems;

    public void Add(string code, ProblemPlace place, string message, string? help = null) => _problems.Add(new Problem(code, place, message, help));

    /// <summary>Reports an id that no record has, with the nearest that one has.</summary>
    /// <returns>Whether the id is known.</returns>
    public bool Knows<TId, TRecord>(RecordsById<TId, TRecord> records, TId id, ProblemPlace place, string field, string what) where TId : Id where TRecord : class
    {
        if (records.ContainsKey(id)) return true;
        Add("unknown-" + what.Replace(' ', '-'), place with { Field = field }, $"unknown {what} `{id}`", _problems.Count < MostHelped ? NearestNames.Help(id.Value, records.Names) : null);
        return false;
    }

    public void CheckSources(IReadOnlyList<SourceId> sources, ProblemPlace place, string field = "sources")
    {
        for (var i = 0; i < sources.Count; i++) Knows(Sources, sources[i], place, $"{field}.{i}", "source");
    }

    public void Duplicates<T>(IEnumerable<T> records, RecordKind kind, Func<T, string> id)
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var record in records)
        {
            var key = id(record);
            counts.TryGetValue(key, out var count);
            counts[key] = count + 1;
            if (count > 0)
                _problems.Add(new Problem("duplicate-id", new ProblemPlace(kind, key, "id", count), $"`{key}` is given twice", "ids are never reused; give it another name or remove one") { Other = new ProblemPlace(kind, key, "id") });
        }
    }

    /// <summary>The node, then its ancestors; stops at an unknown parent or a cycle.</summary>
    public IEnumerable<Material> Upward(MaterialId? id) => Walk(id, Materials, m => m.Under);

    /// <summary>The node, then its ancestors; stops at an unknown parent or a cycle.</summary>
    public IEnumerable<PartType> Upward(PartId? id) => Walk(id, Parts, p => p.Under);

    /// <summary>The node, then its ancestors; stops at an unknown parent or a cycle.</summary>
    public IEnumerable<AgentClass> Upward(AgentId? id) => Walk(id, Agents, a => a.Under);

    public StrengthUnit? Basis(AgentId? id) => Upward(id).Select(a => a.Basis).FirstOrDefault(b => b is not null);

    private static IEnumerable<T> Walk<TId, T>(TId? id, RecordsById<TId, T> records, Func<T, TId?> under) where TId : Id where T : class
    {
        var seen = new HashSet<TId>();
        while (id is not null && seen.Add(id) && records.TryGetValue(id, out var record))
        {
            yield return record;
            id = under(record);
        }
    }
}
