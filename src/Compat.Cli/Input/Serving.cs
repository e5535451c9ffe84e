using Compat.Serialization;

namespace Compat.Cli.Input;

/// <summary>What serves where the agent or product asked does not.</summary>
/// <param name="Products">Products of the sites.</param>
/// <param name="Agents">Agents, where no product serves.</param>
public sealed record Serving(IReadOnlyList<ProductId> Products, IReadOnlyList<AgentId> Agents)
{
    /// <summary>Looked for only where the answer is no, or not known, and something could serve at all.</summary>
    public static Serving Of(KnowledgeBase kb, Answer answer)
    {
        if (answer.Verdict > Verdict.NotEstablished || Deciders.IsOutside(answer)) return new([], []);
        if (answer.Kill is null) return new([], kb.Alternatives(answer.Question));
        var (products, agents) = kb.Serving(answer.Question);
        return new(products, agents);
    }

    /// <summary>The products of the sites that serve a part of a device.</summary>
    public static Serving OfPart(KnowledgeBase kb, Answer answer)
    {
        if (answer.Verdict > Verdict.NotEstablished || answer.Kill is null || Deciders.IsOutside(answer)) return new([], []);
        return new(kb.ServingProducts(answer.Question), []);
    }
}
