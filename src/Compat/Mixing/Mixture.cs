using System.Diagnostics.CodeAnalysis;
using Compat.Knowledge;
using Compat.Sites;
using Compat.Validation;

namespace Compat.Mixing;

/// <summary>Says what is on record where two agents, products, soils or materials meet.</summary>
public static class Mixture
{
    /// <summary>Looks up every hazard between the two: each ingredient of one with each of the other.</summary>
    /// <param name="knowledgeBase">The knowledge base, with the sites of products asked about.</param>
    /// <param name="first">The one.</param>
    /// <param name="other">The other; at least one of the two is an agent or a product.</param>
    /// <param name="answer">What is on record, or null.</param>
    /// <param name="problems">All that is wrong; empty where nothing is.</param>
    /// <returns>Whether there is an answer.</returns>
    public static bool TryJudge(KnowledgeBase knowledgeBase, MixingPartner first, MixingPartner other, [NotNullWhen(true)] out MixingAnswer? answer, out IReadOnlyList<Problem> problems)
    {
        answer = null;
        var scope = new Scope(knowledgeBase.Data, knowledgeBase.Sites);
        var members = new[] { Members(scope, first, "first"), Members(scope, other, "other") };
        if (scope.Problems.Count == 0 && first.Agent is null && first.Product is null && other.Agent is null && other.Product is null)
            scope.Add("nothing-mixes", new(RecordKind.Question, "", "other"), $"neither `{first}` nor `{other}` is an agent or a product");
        problems = scope.Problems;
        if (problems.Count > 0) return false;
        var hazards = knowledgeBase.Data.MixingHazards
            .SelectMany(hazard => Found(scope, hazard, members[0], members[1]).Concat(Found(scope, hazard, members[1], members[0])))
            .GroupBy(hazard => (hazard.Hazard.Id, hazard.First, hazard.Other)).Select(group => group.First())
            .OrderBy(hazard => hazard.Hazard.Severity).ThenBy(hazard => hazard.OnlySome).ThenBy(hazard => hazard.Hazard.Id)
            .ThenBy(hazard => hazard.First, StringComparer.Ordinal).ThenBy(hazard => hazard.Other, StringComparer.Ordinal);
        answer = new()
        {
            First = first,
            Other = other,
            Hazards = hazards.ToArray(),
            NotFullyKnown = new[] { first, other }.Where(p => p.Product is not null && IsNotFullyKnown(scope.Products[p.Product])).Select(p => p.Product!).Distinct().ToArray(),
            Identity = knowledgeBase.Identity,
        };
        return true;
    }

    private static bool IsNotFullyKnown(Product product) => product.Composition != Composition.Full || product.Ingredients.Any(i => i.Agent is null);

    /// <summary>What a partner is made of, as far as hazards can name it.</summary>
    private static IReadOnlyList<MixingPartner> Members(Scope scope, MixingPartner partner, string field)
    {
        var place = new ProblemPlace(RecordKind.Question, "");
        if (partner.Agent is { } agent) scope.Knows(scope.Agents, agent, place, field, "agent");
        if (partner.Material is { } material) scope.Knows(scope.Materials, material, place, field, "material");
        if (partner.Product is not { } id) return [partner];
        if (!scope.Knows(scope.Products, id, place, field, "product")) return [];
        return [.. scope.Products[id].Ingredients.Where(i => i.Agent is not null).Select(i => i.Agent!).Distinct().Select(MixingPartner.Of)];
    }

    private static IEnumerable<FoundHazard> Found(Scope scope, MixingHazard hazard, IReadOnlyList<MixingPartner> ones, IReadOnlyList<MixingPartner> others)
    {
        foreach (var one in ones)
        {
            if (one.Agent is null || Meets(scope, hazard.Agent, one.Agent) is not { } isWider) continue;
            foreach (var other in others)
            {
                var second = hazard.WithAgent is { } agent && other.Agent is not null ? Meets(scope, agent, other.Agent)
                    : hazard.WithMaterial is { } material && other.Material is not null ? Meets(scope, material, other.Material)
                    : hazard.WithSoil is { } soil && other.Soil == soil ? false : null;
                if (second is { } secondIsWider) yield return new(hazard, one.ToString(), other.ToString(), isWider || secondIsWider);
            }
        }
    }

    /// <summary>Whether a record on one agent speaks of another: of all of it (false), of some of its members (true), or not at all (null).</summary>
    private static bool? Meets(Scope scope, AgentId recorded, AgentId asked) =>
        scope.Upward(asked).Any(a => a.Id == recorded) ? false : asked != AgentClass.Root && scope.Upward(recorded).Any(a => a.Id == asked) ? true : null;

    private static bool? Meets(Scope scope, MaterialId recorded, MaterialId asked) =>
        scope.Upward(asked).Any(m => m.Id == recorded) ? false : asked != Material.Root && scope.Upward(recorded).Any(m => m.Id == asked) ? true : null;
}
