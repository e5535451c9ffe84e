namespace Compat.Validation;

/// <summary>The records that references may name, and the problems found so far.</summary>
internal sealed class Scope
{
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

    public void Duplicates<T>(IEnumerable<T> records, RecordKind kind, Func<T, string> id)
    {
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var record in records)
        {
            var key = id(record);
            counts.TryGetValue(key, out var count);
            counts[key] = count + 1;
            if (count > 0)
                _problems.Add(
                    new Problem("duplicate-id", new ProblemPlace(kind, key, "id", count), $"`{key}` is given twice",
                    "ids are never reused; give it another name or remove one")
                    { Other = new ProblemPlace(kind, key, "id") });
        }
    }

    /// <summary>The node, then its ancestors; stops at an unknown parent or a cycle.</summary>
    public IEnumerable<Material> Upward(MaterialId? id) => Walk(id, Materials, m => m.Under);

    /// <summary>The node, then its ancestors; stops at an unknown parent or a cycle.</summary>
    public IEnumerable<PartType> Upward(PartId? id) => Walk(id, Parts, p => p.Under);

    /// <summary>The node, then its ancestors; stops at an unknown parent or a cycle.</summary>
    public IEnumerable<AgentClass> Upward(AgentId? id) => Walk(id, Agents, a => a.Under);

    /// <summary>Whether one is the other or lies below it.</summary>
    public bool LiesIn(MaterialId one, MaterialId above) => Upward(one).Any(m => m.Id == above);

    /// <summary>Whether one is the other or lies below it.</summary>
    public bool LiesIn(PartId one, PartId above) => Upward(one).Any(p => p.Id == above);

    /// <summary>Whether one is the other or lies below it.</summary>
    public bool LiesIn(AgentId one, AgentId above) => Upward(one).Any(a => a.Id == above);

    /// <summary>What the nearest part type upward states; null where none does.</summary>
    public T? Stated<T>(PartId part, Func<PartType, T?> what) => Upward(part).Select(what).FirstOrDefault(stated => stated is not null);

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
