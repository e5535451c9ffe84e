using System.Diagnostics.CodeAnalysis;
using Compat.Validation;

namespace Compat.Answers;

/// <summary>Says what is on record where two agents, products, soils or materials meet: clauses M12 to M15.</summary>
public static class Mixture
{
    /// <summary>Looks up every hazard between the two: each ingredient of one with each of the other.</summary>
    /// <param name="knowledgeBase">The knowledge base, with the sites of products asked about.</param>
    /// <param name="first">The one.</param>
    /// <param name="other">The other; at least one of the two is an agent or a product.</param>
    /// <param name="answer">What is on record, or null.</param>
    /// <param name="problems">All that is wrong; empty where nothing is.</param>
    /// <returns>Whether there is an answer.</returns>
    public static bool TryJudge(KnowledgeBase knowledgeBase, MixingPartner first, MixingPartner other, [NotNullWhen(true)] out MixingAnswer? answer,
        out IReadOnlyList<Problem> problems)
    {
        answer = null;
        problems = Given.Check((nameof(knowledgeBase), knowledgeBase), (nameof(first), first), (nameof(other), other));
        if (problems.Count > 0) return false;
        var kb = knowledgeBase.Compiled;
        var scope = new Scope(kb.Records);
        Check(scope, kb, first, "first");
        Check(scope, kb, other, "other");
        if (scope.Problems.Count == 0 && first.Agent is null && first.Product is null && other.Agent is null && other.Product is null)
            scope.Add("nothing-mixes", new(RecordKind.Question, "", "other"), $"neither `{first}` nor `{other}` is an agent or a product");
        problems = scope.Problems;
        if (problems.Count > 0) return false;
        var (ones, others) = (Members(kb, first), Members(kb, other));
        var hazards = kb.Data.MixingHazards
            .SelectMany(hazard => Found(kb, hazard, ones, others).Concat(Found(kb, hazard, others, ones)))
            .GroupBy(one => (one.Found.Hazard.Id, one.Found.First, one.Found.Other)).Select(same => same.OrderBy(one => !one.IsInside).First())
            .OrderBy(one => one.Found.Hazard.Severity).ThenBy(one => one.Found.OnlySome).ThenBy(one => one.Found.Hazard.Id)
            .ThenBy(one => one.Found.First, StringComparer.Ordinal).ThenBy(one => one.Found.Other, StringComparer.Ordinal).ToArray();
        var inside = hazards.Where(one => one.IsInside).Select(one => one.Found).ToArray();
        var unknown = new[] { first, other }.Where(p => p.Product is not null && IsNotFullyKnown(scope.Products[p.Product])).Select(p => p.Product!).Distinct()
            .ToArray();
        var pairs = ones.SelectMany(one => others.Select(two => kb.Data.HarmlessMeetings.Where(record => IsOf(kb, record, one.Partner, two.Partner)).ToArray()))
            .ToArray();
        var covered = pairs.Length > 0 && pairs.All(records => records.Length > 0) && unknown.Length == 0 && hazards.Length == 0;
        answer = new()
        {
            First = first,
            Other = other,
            Hazards = inside,
            AtOtherStrengths = hazards.Where(one => !one.IsInside && inside.All(found => found.Hazard != one.Found.Hazard)).Select(one => one.Found).ToArray(),
            Harmless = pairs.SelectMany(records => records).Distinct().OrderBy(record => record.Id).ToArray(),
            Outcome = inside.Length > 0 ? MixingOutcome.Hazard : covered ? MixingOutcome.Harmless : MixingOutcome.NothingOnRecord,
            NotFullyKnown = unknown,
            Identity = knowledgeBase.Identity,
        };
        return true;
    }

    private static bool IsNotFullyKnown(Product product) => product.Composition != Composition.Full || product.Ingredients.Any(i => i.Agent is null);

    private static void Check(Scope scope, CompiledBase kb, MixingPartner partner, string field)
    {
        var at = new Field(scope, RecordKind.Question, "", field);
        if (partner.Material is { } material) at.Knows(scope.Materials, material, "material");
        if (partner.Product is { } product) at.Knows(scope.Products, product, "product");
        if (partner.Agent is { } agent && at.Knows(scope.Agents, agent, "agent") && partner.Strength is { } strength)
            QuestionValidation.Strength(at, kb, agent, strength);
    }

    /// <summary>What a partner is made of, as far as hazards can name it, with the strengths it can have.</summary>
    private static IReadOnlyList<Member> Members(CompiledBase kb, MixingPartner partner)
    {
        if (partner.Product is not { } id)
        {
            var strength = partner is { Agent: { } agent, Strength: { } stated }
                ? StrengthConversion.OfAgentAlone(stated, kb.Agent(agent), kb.Convention(ConventionKey.SolutionDensity).Range) : null;
            return [new(partner, strength is { } known ? [new(kb.Agents[partner.Agent!.Value], known)] : [])];
        }

        // A concentrate meets others at any dilution: it stands in the room undiluted too.
        var substance = SubstanceResolver.Resolve(kb, new Question { Product = id });
        var diluted = substance.Product!.StrengthOf == StrengthOf.Concentrate;
        var strengths = substance.Components.Where(c => !c.Unknown)
            .Select(c => new AgentStrength(c.Agent, diluted && !c.Strength.IsWhole ? new Interval(0m, true, c.Strength.Upper, c.Strength.UpperIncluded)
                : c.Strength)).ToArray();
        return [.. substance.Product.Ingredients.Where(i => i.Agent is not null).Select(i => i.Agent!).Distinct()
            .Select(agent => new Member(MixingPartner.Of(agent), strengths))];
    }

    private static IEnumerable<(FoundHazard Found, bool IsInside)> Found(CompiledBase kb, MixingHazard hazard, IReadOnlyList<Member> ones,
        IReadOnlyList<Member> others)
    {
        foreach (var one in ones)
        {
            if (one.Partner.Agent is not { } first || Reach.Meets(kb, hazard.Agent, first) is not { } isWider) continue;
            foreach (var other in others)
            {
                if (Reach.Meets(kb, hazard.WithAgent, hazard.WithSoil, hazard.WithMaterial, other.Partner) is not { } otherIsWider) continue;
                var isInside = IsInside(kb, hazard.Agent, hazard.Strength, one)
                    && (hazard.WithAgent is not { } with || IsInside(kb, with, hazard.WithStrength, other));
                yield return (new(hazard, one.Partner.ToString(), other.Partner.ToString(), isWider || otherIsWider), isInside);
            }
        }
    }

    /// <summary>
    /// Whether a member can have a strength at which a record holds: what is not known can. Ingredients of the class that the record names add up.
    /// </summary>
    private static bool IsInside(CompiledBase kb, AgentId recorded, Interval? at, Member member)
    {
        if (at is not { } box || member.Partner.Agent is not { } agent) return true;
        var known = member.Strengths.Where(one => one.Agent == kb.Agents[agent.Value] || one.Agent == kb.Agents[recorded.Value]).ToArray();
        return known.Length == 0 || known.Any(one => !one.Strength.Intersect(box).IsEmpty);
    }

    /// <summary>Whether a statement of harmlessness speaks of all of a pair, in either order.</summary>
    private static bool IsOf(CompiledBase kb, HarmlessMeeting record, MixingPartner one, MixingPartner other)
    {
        return Is(one, other) || Is(other, one);

        bool Is(MixingPartner first, MixingPartner second) => first.Agent is { } agent && Reach.Meets(kb, record.Agent, agent) == false
            && Reach.Meets(kb, record.WithAgent, record.WithSoil, record.WithMaterial, second) == false;
    }

    /// <summary>A strength that an agent, or the ingredients of a class together, can have, in percent of its basis.</summary>
    private readonly record struct AgentStrength(int Agent, Interval Strength);

    private sealed record Member(MixingPartner Partner, IReadOnlyList<AgentStrength> Strengths);
}
