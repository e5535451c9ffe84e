namespace Compat.Cli.Wording;

/// <summary>The names and units of a knowledge base, found by id.</summary>
public sealed class Names
{
    private readonly Dictionary<string, AgentClass> _agents;
    private readonly Dictionary<string, PartType> _parts;
    private readonly Dictionary<string, Material> _materials;
    private readonly Dictionary<string, Product> _products;
    private readonly Dictionary<string, Device> _devices;
    private readonly Dictionary<string, Rule> _rules;
    private readonly Dictionary<string, Source> _sources;
    private readonly Dictionary<string, Organism> _organisms;
    private readonly Dictionary<string, Claim> _claims;
    private readonly Dictionary<string, StandingRule> _standing;
    private readonly Dictionary<string, TestStandard> _tests;

    /// <summary>Reads the names of a knowledge base and of the sites laid over it.</summary>
    public Names(KnowledgeBase kb)
    {
        _agents = kb.Data.Agents.ToDictionary(record => record.Id.Value);
        _parts = kb.Data.Parts.ToDictionary(record => record.Id.Value);
        _materials = kb.Data.Materials.ToDictionary(record => record.Id.Value);
        _products = kb.Sites.SelectMany(site => site.Products).ToDictionary(record => record.Id.Value);
        _devices = kb.Sites.SelectMany(site => site.Devices).ToDictionary(record => record.Id.Value);
        _rules = kb.Data.Rules.Concat(kb.Sites.SelectMany(site => site.Rules)).Concat(kb.InstructionRules).ToDictionary(record => record.Id.Value);
        _organisms = kb.Data.Organisms.ToDictionary(record => record.Id.Value);
        _claims = kb.Data.Claims.ToDictionary(record => record.Id.Value);
        _tests = kb.Data.TestStandards.ToDictionary(record => record.Code.Value);
        _standing = kb.Data.StandingRules.ToDictionary(record => record.Id.Value);
        _sources = kb.Data.Sources.Concat(kb.Sites.SelectMany(site => site.Sources)).ToDictionary(record => record.Id.Value);
    }

    /// <summary>The product of an id, or null.</summary>
    public Product? FindProduct(string id) => _products.GetValueOrDefault(id);

    /// <summary>The device of an id, or null.</summary>
    public Device? FindDevice(string id) => _devices.GetValueOrDefault(id);

    /// <summary>The rule of an id, or null.</summary>
    public Rule? FindRule(string id) => _rules.GetValueOrDefault(id);

    /// <summary>The source of an id, or null.</summary>
    public Source? FindSource(SourceId id) => _sources.GetValueOrDefault(id.Value);

    /// <summary>The claim of an id, or null.</summary>
    public Claim? FindClaim(string id) => _claims.GetValueOrDefault(id);

    /// <summary>The test of a code, or null.</summary>
    public TestStandard? FindTest(string code) => _tests.GetValueOrDefault(code);

    /// <summary>The standing rule of an id, or null.</summary>
    public StandingRule? FindStandingRule(string id) => _standing.GetValueOrDefault(id);

    /// <summary>A group of organisms in words, or an organism by its name.</summary>
    public string Target(OrganismTarget target) => target.Group is { } group ? NeedWording.Group(group) : Target(target.Organism!.Value);

    /// <summary>A level, a group or an organism by its word or id, as it is to be reached or killed.</summary>
    public string Target(string word) =>
        Words.TryParse<Level>(word, out _) ? word + " level"
        : _organisms.TryGetValue(word, out var organism) ? organism.Name
        : Words.TryParse<OrganismGroup>(word, out var group) ? NeedWording.Group(group)
        : word.Replace('-', ' ');

    /// <summary>An agent class by name and id.</summary>
    public string Agent(string id) => Both(id, _agents.GetValueOrDefault(id)?.Name);

    /// <summary>A part type by name and id.</summary>
    public string Part(PartId id) => Both(id.Value, _parts.GetValueOrDefault(id.Value)?.Name);

    /// <summary>A part type by its name alone, for readers who have no use for ids.</summary>
    public string PartName(PartId id) => _parts.GetValueOrDefault(id.Value)?.Name ?? id.Value.Replace('-', ' ');

    /// <summary>A material by name and id.</summary>
    public string Material(string id) => Both(id, _materials.GetValueOrDefault(id)?.Name);

    /// <summary>A product by name and id.</summary>
    public string Product(string id) => Both(id, _products.GetValueOrDefault(id)?.Name);

    /// <summary>A device by name and id.</summary>
    public string Device(string id) => Both(id, _devices.GetValueOrDefault(id)?.Name);

    /// <summary>What an id names, whichever kind of record has it; the id itself where none has.</summary>
    public string Anything(string id) => Both(
        id,
        _materials.GetValueOrDefault(id)?.Name ?? _parts.GetValueOrDefault(id)?.Name ?? _agents.GetValueOrDefault(id)?.Name
        ?? _products.GetValueOrDefault(id)?.Name ?? _devices.GetValueOrDefault(id)?.Name);

    /// <summary>The unit an agent's strength is shown in: its own, else its nearest ancestor's; null where it has none.</summary>
    public StrengthUnit? Unit(AgentId? agent)
    {
        for (var id = agent; id is not null && _agents.TryGetValue(id.Value, out var record); id = record.Under)
            if (record.Basis is not null) return record.Basis;
        return null;
    }

    /// <summary>Whether an agent lies at or below a class.</summary>
    public bool IsAtOrBelow(AgentId? agent, string ancestor) => IsAtOrBelow(agent?.Value, ancestor, id => _agents.GetValueOrDefault(id)?.Under?.Value);

    /// <summary>Whether a material or a part type lies at or below another one of its kind.</summary>
    public bool IsAtOrBelow(string id, string ancestor) =>
        IsAtOrBelow(id, ancestor, one => _materials.GetValueOrDefault(one)?.Under?.Value ?? _parts.GetValueOrDefault(one)?.Under?.Value);

    /// <summary>Whether an id names a part type.</summary>
    public bool IsPart(string id) => _parts.ContainsKey(id);

    private static bool IsAtOrBelow(string? id, string ancestor, Func<string, string?> under)
    {
        for (var one = id; one is not null; one = under(one))
            if (one == ancestor) return true;
        return false;
    }

    private static string Both(string id, string? name) =>
        name is null || string.Equals(name.Replace(' ', '-'), id, StringComparison.OrdinalIgnoreCase) ? id : $"{name} ({id})";
}
