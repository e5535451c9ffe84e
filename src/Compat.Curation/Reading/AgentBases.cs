using Compat.Curation.Yaml;

namespace Compat.Curation.Reading;

/// <summary>The unit each agent's strength is written in: its own, else that of its nearest ancestor that states one.</summary>
internal sealed class AgentBases
{
    private readonly Dictionary<string, (string? Under, StrengthUnit? Basis)> _agents = new(StringComparer.Ordinal);

    /// <summary>Takes up an agent as it stands in a file.</summary>
    public void Add(YamlMapping agent)
    {
        if (TextOf(agent, "id") is not { } id) return;
        var basis = StrengthUnit.TryParse(TextOf(agent, "basis"), out var unit) ? unit : null;
        _agents.TryAdd(id, (TextOf(agent, "under"), basis));
    }

    /// <summary>Takes up an agent of a knowledge base.</summary>
    public void Add(AgentClass agent) => _agents.TryAdd(agent.Id.Value, (agent.Under?.Value, agent.Basis));

    /// <summary>The basis of an agent; null where there is none or the agent is not known.</summary>
    public StrengthUnit? Of(string agent)
    {
        var next = agent;
        for (var steps = 0; steps <= _agents.Count && next is not null && _agents.TryGetValue(next, out var found); steps++)
        {
            if (found.Basis is { } basis) return basis;
            next = found.Under;
        }

        return null;
    }

    private static string? TextOf(YamlMapping mapping, string key) => (mapping.Find(key)?.Value as YamlScalar)?.Text;
}
