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
        if (sites.Any(s => s.Id == site.Id)) scope.Add("duplicate-id", new ProblemPlace(RecordKind.Site, site.Id.Value, "id"), $"the site `{site.Id}` is laid over twice");
        scope.Duplicates(data.Sources.Concat(all.SelectMany(s => s.Sources)), RecordKind.Source, s => s.Id.Value);
        scope.Duplicates(all.SelectMany(s => s.Products), RecordKind.Product, p => p.Id.Value);
        scope.Duplicates(all.SelectMany(s => s.Devices), RecordKind.Device, d => d.Id.Value);
        scope.Duplicates(data.Rules.Concat(all.SelectMany(s => s.Rules)), RecordKind.Rule, r => r.Id.Value);
        FormValidation.Check(scope, site);
        Here(scope, site);
        for (var i = 0; i < site.Levels.Count; i++) Level(scope, site, i);
        foreach (var product in site.Products) ProductValidation.Check(scope, product);
        foreach (var device in site.Devices) DeviceValidation.Check(scope, device);
        foreach (var rule in site.Rules) RuleValidation.Check(scope, rule, 0, inSite: true);
        OverrideValidation.Check(scope, site.Rules);
        PhraseValidation.Check(scope, site);
        return scope.Problems;
    }

    private static void Here(Scope scope, Site site)
    {
        var place = new ProblemPlace(RecordKind.Site, site.Id.Value);
        if (site.Here.Temperature is { } temperature) BoxValidation.Range(scope, place, "here.temperature", temperature, -40m, 200m, true, "temperature");
        if (site.Here.Hardness is { } hardness) BoxValidation.Range(scope, place, "here.hardness", hardness, 0m, ProductValidation.MostHardness, true, "hardness");
        RecordFacts.Texts(scope, place, "here.cloths", site.Here.Cloths);
        RecordFacts.Texts(scope, place, "here.gloves", site.Here.Gloves);
    }

    /// <summary>A level below what the contact asks is a decision too: who made it, why and on what source is always said.</summary>
    private static void Level(Scope scope, Site site, int index)
    {
        var decision = site.Levels[index];
        var place = new ProblemPlace(RecordKind.Site, site.Id.Value);
        var field = $"levels.{index}";
        if (scope.Knows(scope.Devices, decision.Device, place, field + ".device", "device") && decision.Part is { } part)
            RecordFacts.DeviceParts(scope, place, [part], scope.Devices[decision.Device], _ => field + ".part");
        if (decision.DecidedBy.Trim().Length == 0) scope.Add("no-decider", place with { Field = field + ".decided-by" }, "who decided is not said", "name the office, never a person");
        if (decision.Because.Trim().Length == 0) scope.Add("no-because", place with { Field = field + ".because" }, "why it was decided is not said");
        if (decision.Sources.Count == 0) scope.Add("no-source", place with { Field = field + ".sources" }, "the decision has no source");
        scope.CheckSources(decision.Sources, place, field + ".sources");
        if (site.Levels.Take(index).Any(other => other.Device == decision.Device && other.Part == decision.Part))
            scope.Add("decided-twice", place with { Field = field }, $"the level of `{decision.Device}{(decision.Part is null ? "" : "/" + decision.Part)}` is decided twice");
    }
}
