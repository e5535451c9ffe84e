namespace Compat.Curation.Reviewing;

/// <summary>Takes one record out of a knowledge base with all that rests on it alone.</summary>
internal static class Withdrawal
{
    /// <summary>The records without a rule, a source (rules and claims that cite nothing else fall too), the rules on a material, or a claim; null where nothing has the id.</summary>
    public static (KnowledgeData Data, IReadOnlyList<Site> Sites)? Of(KnowledgeData data, IReadOnlyList<Site> sites, string id)
    {
        var known = data.Rules.Concat(sites.SelectMany(site => site.Rules)).Any(rule => rule.Id.Value == id)
            || data.Sources.Concat(sites.SelectMany(site => site.Sources)).Any(source => source.Id.Value == id)
            || data.Materials.Any(material => material.Id.Value == id) || data.Claims.Any(claim => claim.Id.Value == id);
        if (!known) return null;
        var gone = data.Rules.Concat(sites.SelectMany(site => site.Rules)).Where(rule => Falls(rule, id)).Select(rule => rule.Id).ToHashSet();
        var left = data with
        {
            Rules = Left(data.Rules),
            Claims = data.Claims.Where(claim => claim.Id.Value != id && !IsOnly(claim.Sources, id)).Select(claim => claim with { Sources = Others(claim.Sources, id) }).ToArray(),
            PersonRules = data.PersonRules.Where(rule => !IsOnly(rule.Sources, id)).ToArray(),
            MixingHazards = data.MixingHazards.Where(hazard => !IsOnly(hazard.Sources, id)).ToArray(),
            HarmlessMeetings = data.HarmlessMeetings.Where(meeting => !IsOnly(meeting.Sources, id)).ToArray(),
            Sources = data.Sources.Where(source => source.Id.Value != id).ToArray(),
        };
        return (left, sites.Select(site => site with { Rules = Left(site.Rules), Sources = site.Sources.Where(source => source.Id.Value != id).ToArray() }).ToArray());

        Rule[] Left(IReadOnlyList<Rule> rules) => rules.Where(rule => !gone.Contains(rule.Id))
            .Select(rule => rule with { Sources = Others(rule.Sources, id), Overrides = rule.Overrides.Where(other => !gone.Contains(other)).ToArray() }).ToArray();
    }

    private static bool Falls(Rule rule, string id) => rule.Id.Value == id || rule.Target.Material?.Value == id || IsOnly(rule.Sources, id);

    private static bool IsOnly(IReadOnlyList<SourceId> sources, string id) => sources.Count > 0 && sources.All(source => source.Value == id);

    private static SourceId[] Others(IReadOnlyList<SourceId> sources, string id) => sources.Where(source => source.Value != id).ToArray();
}
