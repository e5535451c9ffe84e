using Compat.Snapshots;

namespace Compat.Validation;

/// <summary>Checks a site against the knowledge base it is laid over.</summary>
internal static class SiteValidation
{
    public static IReadOnlyList<Problem> Check(KnowledgeData data, IReadOnlyList<Site> sites, Site? laid)
    {
        if (SnapshotWriter.FaultsOf(laid) is { Count: > 0 } faults) return faults;
        var site = laid!;
        Site[] all = [.. sites, site];
        var scope = new Scope(data, all);
        if (sites.Any(s => s.Id == site.Id))
            new Field(scope, RecordKind.Site, site.Id.Value)["id"].Wrong("duplicate-id", $"the site `{site.Id}` is laid over twice");
        scope.Duplicates(data.Sources.Concat(all.SelectMany(s => s.Sources)), RecordKind.Source, s => s.Id.Value);
        scope.Duplicates(all.SelectMany(s => s.Products), RecordKind.Product, p => p.Id.Value);
        scope.Duplicates(all.SelectMany(s => s.Devices), RecordKind.Device, d => d.Id.Value);
        scope.Duplicates(data.Rules.Concat(all.SelectMany(s => s.Rules)), RecordKind.Rule, r => r.Id.Value);
        FormValidation.Check(scope, site);
        Here(scope, site);
        for (var i = 0; i < site.Levels.Count; i++) Level(scope, site, i, new Field(scope, RecordKind.Site, site.Id.Value)["levels"][i]);
        foreach (var product in site.Products) ProductValidation.Check(scope, product);
        foreach (var device in site.Devices) DeviceValidation.Check(scope, device);
        foreach (var rule in site.Rules) RuleValidation.Check(scope, rule, inSite: true);
        OverrideValidation.Check(scope, site.Rules);
        PhraseValidation.Check(scope, site);
        return scope.Problems;
    }

    private static void Here(Scope scope, Site site)
    {
        var at = new Field(scope, RecordKind.Site, site.Id.Value)["here"];
        if (site.Here.Temperature is { } temperature) at["temperature"].Range(temperature, Axis.Temperature);
        if (site.Here.Hardness is { } hardness) at["hardness"].Range(hardness, ProductValidation.Hardness, "hardness");
        at["cloths"].Texts(site.Here.Cloths);
        at["gloves"].Texts(site.Here.Gloves);
    }

    /// <summary>A level below what the contact asks is a decision too: who made it, why and on what source is always said.</summary>
    private static void Level(Scope scope, Site site, int index, Field at)
    {
        var decision = site.Levels[index];
        if (at["device"].Knows(scope.Devices, decision.Device, "device") && decision.Part is { } part)
            at["part"].DevicePart(scope.Devices[decision.Device], part);
        at["decided-by"].Said(decision.DecidedBy, "no-decider", "who decided is not said", "name the office, never a person");
        at["because"].Said(decision.Because, "no-because", "why it was decided is not said");
        if (decision.Sources.Count == 0) at["sources"].Wrong("no-source", "the decision has no source");
        at["sources"].KnowsAll(scope.Sources, decision.Sources, "source");
        if (site.Levels.Take(index).Any(other => other.Device == decision.Device && other.Part == decision.Part))
            at.Wrong("decided-twice", $"the level of `{decision.Device}{(decision.Part is null ? "" : "/" + decision.Part)}` is decided twice");
    }
}
