namespace Compat.Tests.RandomCases;

/// <summary>Less to need, to kill with and to harm.</summary>
internal static partial class CaseShrinker
{
    private static IEnumerable<KnowledgeData> SmallerWhole(KnowledgeData data)
    {
        foreach (var claims in Without(data.Claims)) yield return data with { Claims = claims };
        foreach (var rules in Without(data.PersonRules)) yield return data with { PersonRules = rules };
        foreach (var rules in Without(data.StandingRules)) yield return data with { StandingRules = rules };
        foreach (var claims in Each(data.Claims, Smaller)) yield return data with { Claims = claims };
        if (data.Agents.Any(a => a.BoundBy.Count > 0)) yield return data with { Agents = data.Agents.Select(a => a with { BoundBy = [] }).ToArray() };
        if (data.Agents.Any(a => a.InactivatedBy.Count > 0)) yield return data with
        {
            Agents = data.Agents.Select(a => a with { InactivatedBy = [] }).ToArray(),
        };
        if (data.Parts.Any(p => p.Patients.Count > 0)) yield return data with { Parts = data.Parts.Select(p => p with { Patients = [] }).ToArray() };
        if (data.Parts.Any(p => p.Soil is not null)) yield return data with { Parts = data.Parts.Select(p => p with { Soil = null }).ToArray() };
    }

    private static IEnumerable<Claim> Smaller(Claim c)
    {
        if (c.Kills.Count > 0 && c.Reaches is not null) yield return c with { Kills = [] };
        if (c.DoesNotKill.Count > 0) yield return c with { DoesNotKill = [] };
        if (c.For.Count > 0) yield return c with { For = [] };
        if (c.With.Count > 0) yield return c with { With = [] };
        if (Narrow(c.When.Strength)) yield return c with { When = c.When with { Strength = AxisLimit.Any } };
        if (Narrow(c.When.Temperature)) yield return c with { When = c.When with { Temperature = AxisLimit.Any } };
        if (Narrow(c.When.Ph)) yield return c with { When = c.When with { Ph = AxisLimit.Any } };
        if (c.When.Methods.Statement != AxisStatement.Any) yield return c with { When = c.When with { Methods = MethodLimit.Any } };
    }

    private static IEnumerable<Site> SmallerWhole(Site site)
    {
        foreach (var levels in Without(site.Levels)) yield return site with { Levels = levels };
        if (site.Here != new SiteConditions()) yield return site with { Here = new() };
        foreach (var products in Each(site.Products, SmallerLabel)) yield return site with { Products = products };
        foreach (var devices in Each(site.Devices, SmallerSaid)) yield return site with { Devices = devices };
    }

    private static IEnumerable<Product> SmallerLabel(Product p)
    {
        foreach (var claims in Without(p.LabelClaims)) yield return p with { LabelClaims = claims };
        if (!p.Methods.IsEmpty) yield return p with { Methods = MethodSet.None };
        if (p.BoundByCloths.Count > 0) yield return p with { BoundByCloths = [] };
        if (p.MostHardness is not null) yield return p with { MostHardness = null };
    }

    private static IEnumerable<Device> SmallerSaid(Device d)
    {
        if (d.Patients is not null) yield return d with { Patients = null };
        foreach (var editions in Each(d.Instructions, e => Without(e.Reaches).Select(r => e with { Reaches = r }))) yield return d with
        {
            Instructions = editions,
        };
    }

    private static IEnumerable<Question> SmallerWhole(Question q)
    {
        foreach (var against in Without(q.Against)) yield return q with { Against = against };
        if (q.Patients.Count > 0) yield return q with { Patients = [] };
        if (q.Occupied) yield return q with { Occupied = false };
        if (q.Cloth is not null) yield return q with { Cloth = null };
        if (q.Soil is { Count: > 0 }) yield return q with { Soil = [] };
        if (q.Level is not null) yield return q with { Level = null };
    }
}
