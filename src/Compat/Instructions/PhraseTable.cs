using Compat.Knowledge;
using Compat.Validation;

namespace Compat.Instructions;

/// <summary>The words of instructions by their phrases, letters of either case.</summary>
internal sealed class PhraseTable
{
    private readonly Dictionary<string, InstructionWord> _words = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<AgentId> _classes;
    private readonly Dictionary<AgentId, AgentClass> _agents;

    public PhraseTable(KnowledgeData data)
    {
        foreach (var word in data.InstructionWords)
            foreach (var phrase in word.Phrases)
                _words[phrase.Trim()] = word;
        _classes = [.. data.Agents.Select(a => a.Under).OfType<AgentId>()];
        _agents = data.Agents.ToDictionary(a => a.Id);
    }

    public InstructionWord? Find(string words) => _words.TryGetValue(words.Trim(), out var word) ? word : null;

    public IReadOnlyList<string> Nearest(string words) => NearestNames.Of(words.Trim().ToLowerInvariant(), _words.Keys.Select(phrase => phrase.ToLowerInvariant()));

    /// <summary>Whether other agents lie below one.</summary>
    public bool IsClass(AgentId agent) => _classes.Contains(agent);

    public bool HasBasis(AgentId agent)
    {
        for (var at = agent; at is not null && _agents.TryGetValue(at, out var record); at = record.Under)
            if (record.Basis is not null) return true;
        return false;
    }
}
