using Compat.Cli.Lookup;
using Compat.Cli.Text;

namespace Compat.Cli.Shelving;

/// <summary>Finds the agent class that a person means by a name, an EC number, the beginning of a name or a slip: what is not exact is offered by number.</summary>
/// <param name="input">Where answers come from.</param>
/// <param name="page">Where questions go.</param>
/// <param name="kb">The knowledge base.</param>
internal sealed class AgentPrompt(TextReader input, Page page, KnowledgeBase kb)
{
    private const int MostOffered = 9;
    private readonly Finder _finder = new(kb);

    /// <summary>The agent class; null where none is meant.</summary>
    public AgentClass? Of(string name)
    {
        if (kb.Data.Agents.FirstOrDefault(agent => agent.Id.Value == name || Same(agent.Name, name)) is { } exact) return exact;
        if (kb.Data.Agents.Where(agent => agent.AlsoCalled.Any(called => Same(called, name))).ToArray() is [var only]) return only;
        var near = _finder.Of(name).Where(one => one.Entry.Kind == "agents").Take(MostOffered).ToArray();
        if (near.Length == 0) return null;
        for (var i = 0; i < near.Length; i++) page.Line($"{i + 1}  {near[i].Entry.Id}: {Printable.Of(near[i].Why)}", 4, 8);
        while (Line() is { Length: > 0 } answer)
            if (answer.Length == 1 && answer[0] - '1' is >= 0 and var number && number < near.Length) return kb.Data.Agents.First(agent => agent.Id.Value == near[number].Entry.Id);
        return null;
    }

    private string? Line()
    {
        page.Line("which of these by its number; empty where none is meant:", 4, 6);
        return input.ReadLine()?.Trim();
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
