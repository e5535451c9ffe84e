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
        Dated = CalendarDate.TryParse(data.Version, out var dated) ? dated : new(1, 1, 1);
        _classes = [.. data.Agents.Select(a => a.Under).OfType<AgentId>()];
        _agents = data.Agents.ToDictionary(a => a.Id);
    }

    /// <summary>The day of the data the words are read by, where its version is one: when a reading of an undated edition was last looked at.</summary>
    public CalendarDate Dated { get; }

    public InstructionWord? Find(string words) => _words.TryGetValue(words.Trim(), out var word) ? word : null;

    public IReadOnlyList<string> Nearest(string words) =>
        NearestNames.Of(words.Trim().ToLowerInvariant(), _words.Keys.Select(phrase => phrase.ToLowerInvariant()));

    /// <summary>Whether other agents lie below one.</summary>
    public bool IsClass(AgentId agent) => _classes.Contains(agent);

    public bool HasBasis(AgentId agent)
    {
        for (var at = agent; at is not null && _agents.TryGetValue(at, out var record); at = record.Under)
            if (record.Basis is not null) return true;
        return false;
    }
}
