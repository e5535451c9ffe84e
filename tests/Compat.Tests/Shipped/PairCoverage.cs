using System.Text;
using Compat.Curation.Text;

namespace Compat.Tests.Shipped;

/// <summary>How much the shipped data knows of the commonest parts and agents: each pair asked by damp-wipe, at a strength in common use.</summary>
internal sealed class PairCoverage
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Shipped;
    private static readonly Dictionary<SourceId, Source> Sources = Shipped.Data.Sources.ToDictionary(s => s.Id);
    private readonly Dictionary<Known, int> counts = [];
    private readonly List<(string Part, string Agent)> unknown = [];

    /// <summary>By what a pair is decided.</summary>
    public enum Known
    {
        /// <summary>A rule on that agent or the class just above it, from a source that was read.</summary>
        ByReading,

        /// <summary>A rule on that agent or the class just above it, from recall or practice.</summary>
        ByPractice,

        /// <summary>A rule on a wider class.</summary>
        ByWiderClass,

        /// <summary>What the part never stands, whatever the agent.</summary>
        ByBarrier,

        /// <summary>Nothing.</summary>
        Unknown,
    }

    public PairCoverage()
    {
        foreach (var part in Lines("common-parts.txt"))
        {
            foreach (var line in Lines("common-agents.txt"))
            {
                var cells = line.Split(" | ");
                var known = Judge(part, cells[0], cells.Length > 1 ? cells[1] : null);
                counts[known] = counts.GetValueOrDefault(known) + 1;
                if (known == Known.Unknown) unknown.Add((part, cells[0]));
            }
        }
    }

    public int Pairs => counts.Values.Sum();

    public decimal Share(Known known) => Math.Round(100m * counts.GetValueOrDefault(known) / Pairs, 1);

    /// <summary>The paragraph and list that data/README.md shows.</summary>
    public string Text()
    {
        var text = new StringBuilder();
        text.Append($"Of {Pairs} pairs ({Lines("common-parts.txt").Count()} kinds of part, {Lines("common-agents.txt").Count()} agent classes, damp-wipe, a "
            + $"strength in common use): ");
        text.Append($"{Share(Known.ByReading)} % are decided by a rule on that agent or the class just above it from a source that was read, ");
        text.Append($"{Share(Known.ByPractice)} % by such a rule from recall or practice, {Share(Known.ByWiderClass)} % by a rule on a wider class, ");
        text.Append($"{Share(Known.ByBarrier)} % because the part stands no such method or no way to take the agent off; {Share(Known.Unknown)} % are "
            + $"unknown.\n\n");
        text.Append("| part | not known with |\n| --- | --- |\n");
        foreach (var group in unknown.GroupBy(pair => pair.Part)) text.Append($"| {group.Key} | {string.Join(", ", group.Select(pair => pair.Agent))} |\n");
        return text.ToString();
    }

    private static Known Judge(string part, string agent, string? strength)
    {
        var answer = Shipped.Ask(new Question
        {
            Part = new(part),
            Agent = new(agent),
            Strength = strength is null ? null : Parse(strength),
            Method = ApplicationMethod.DampWipe,
            OnlyPart = true,
        });
        if (answer.Verdict == Verdict.NotEstablished) return Known.Unknown;
        if (answer.DecidedBy.Count == 0) return Known.ByBarrier;
        var near = answer.DecidedBy.Where(rule => rule.Agent is not null && IsNear(rule.Agent, agent)).ToArray();
        var forbids = answer.Verdict == Verdict.NotAllowed;
        if (forbids ? near.Length == 0 : near.Length < answer.DecidedBy.Count) return Known.ByWiderClass;
        return (forbids ? near.Any(WasRead) : near.All(WasRead)) ? Known.ByReading : Known.ByPractice;
    }

    private static bool IsNear(AgentId spokenOf, string asked) =>
        spokenOf.Value == asked || Shipped.Data.Agents.First(a => a.Id.Value == asked).Under == spokenOf;

    private static bool WasRead(Rule rule) => rule.Sources.Any(id => !Sources[id].Recalled && Sources[id].Kind != SourceKind.CommonPractice);

    private static Strength Parse(string text) =>
        ExposureText.TryParseStrength(text, out var strength, out var problem) ? strength : throw new FormatException(problem);

    private static IEnumerable<string> Lines(string name) =>
        File.ReadLines(RepositoryFile.Of("tests", "Compat.Tests", "Shipped", name)).Where(line => line.Length > 0 && line[0] != '#');
}
