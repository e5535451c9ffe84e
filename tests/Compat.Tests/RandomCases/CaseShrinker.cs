namespace Compat.Tests.RandomCases;

/// <summary>Smaller cases that are still valid: one rule, one record or one field less.</summary>
internal static partial class CaseShrinker
{
    public static IEnumerable<Case> Shrink(Case c) => Smaller(c).Where(IsValid);

    public static bool IsValid(Case c)
    {
        try
        {
            return c.Build(out _) is { } kb && kb.TryAsk(c.Question, out _, out _);
        }
        catch (InvalidOperationException)
        {
            return true;
        }
    }

    private static IEnumerable<Case> Smaller(Case c)
    {
        if (c.Site is { } whole && c.Question.Product is null && c.Question.Device is null) yield return c with { Site = null };
        foreach (var rules in Without(c.Data.Rules)) yield return Drop(c, c.Data.Rules.Except(rules).Single().Id);
        if (c.Site is { } site)
        {
            foreach (var rules in Without(site.Rules)) yield return Drop(c, site.Rules.Except(rules).Single().Id);
            foreach (var smaller in SmallerWhole(site)) yield return c with { Site = smaller };
            foreach (var p in Without(site.Products)) yield return c with { Site = site with { Products = p } };
            foreach (var d in Without(site.Devices)) yield return c with { Site = site with { Devices = d } };
            foreach (var p in Each(site.Products, Smaller)) yield return c with { Site = site with { Products = p } };
            foreach (var d in Each(site.Devices, Smaller)) yield return c with { Site = site with { Devices = d } };
            foreach (var r in Each(site.Rules, Smaller)) yield return c with { Site = site with { Rules = r } };
        }

        foreach (var smaller in SmallerWhole(c.Data)) yield return c with { Data = smaller };
        foreach (var smaller in SmallerWhole(c.Question)) yield return c with { Question = smaller };
        foreach (var m in Without(c.Data.Materials)) yield return c with { Data = c.Data with { Materials = m } };
        foreach (var p in Without(c.Data.Parts)) yield return c with { Data = c.Data with { Parts = p } };
        foreach (var a in Without(c.Data.Agents)) yield return c with { Data = c.Data with { Agents = a } };
        foreach (var r in Each(c.Data.Rules, Smaller)) yield return c with { Data = c.Data with { Rules = r } };
        foreach (var p in Each(c.Data.Parts, Smaller)) yield return c with { Data = c.Data with { Parts = p } };
        foreach (var a in Each(c.Data.Agents, Smaller)) yield return c with { Data = c.Data with { Agents = a } };
        foreach (var m in Each(c.Data.Materials, Smaller)) yield return c with { Data = c.Data with { Materials = m } };
        foreach (var m in Without(c.Question.Materials).Where(m => m.Length > 0)) yield return c with { Question = c.Question with { Materials = m } };
        if (c.Question.MaterialsKnown is not null) yield return c with { Question = c.Question with { MaterialsKnown = null } };
        if (c.Question.Acts.Count > 0) yield return c with { Question = c.Question with { Acts = [] } };
        if (c.Question.Serial is not null) yield return c with { Question = c.Question with { Serial = null } };
        if (c.Question.Uses > 1) yield return c with { Question = c.Question with { Uses = 1 } };
    }

    /// <summary>The case without a rule, and without what overrides it.</summary>
    public static Case Drop(Case c, RuleId id)
    {
        Rule[] Left(IReadOnlyList<Rule> rules) => rules.Where(r => r.Id != id)
            .Select(r => r.Overrides.Contains(id) ? r with { Overrides = r.Overrides.Where(o => o != id).ToArray() } : r).ToArray();
        return c with { Data = c.Data with { Rules = Left(c.Data.Rules) }, Site = c.Site is null ? null : c.Site with { Rules = Left(c.Site.Rules) } };
    }

    private static IEnumerable<Rule> Smaller(Rule r)
    {
        if (r.Duties.Count > 0) yield return r with { Duties = [] };
        foreach (var o in Without(r.Overrides)) yield return r with { Overrides = o };
        var none = r.Allows ? AxisLimit.Any : default;
        if (Narrow(r.When.Strength)) yield return r with { When = r.When with { Strength = none } };
        if (Narrow(r.When.Dilution)) yield return r with { When = r.When with { Dilution = none } };
        if (Narrow(r.When.ExposureTime)) yield return r with { When = r.When with { ExposureTime = none } };
        if (Narrow(r.When.Temperature)) yield return r with { When = r.When with { Temperature = none } };
        if (Narrow(r.When.Ph)) yield return r with { When = r.When with { Ph = none } };
        if (Narrow(r.When.Uses)) yield return r with { When = r.When with { Uses = none }, CountsTowards = null };
        if (r.When.Methods.Statement is AxisStatement.Within or AxisStatement.Unstated) yield return r with
        {
            When = r.When with { Methods = r.Allows ? MethodLimit.Any : default },
        };
    }

    private static bool Narrow(AxisLimit limit) => limit.Statement is AxisStatement.Within or AxisStatement.Unstated;

    private static IEnumerable<Product> Smaller(Product p)
    {
        foreach (var i in Without(p.Ingredients)) yield return p with { Ingredients = i };
        foreach (var h in Without(p.Ph)) yield return p with { Ph = h };
        if (p.Temperature is not null) yield return p with { Temperature = null };
        if (p.Density is not null) yield return p with { Density = null };
        if (p.Dilution is not null) yield return p with { Dilution = null };
    }

    private static IEnumerable<Device> Smaller(Device d)
    {
        foreach (var p in Without(d.Parts)) yield return d with { Parts = p };
        foreach (var i in Without(d.Instructions)) yield return d with { Instructions = i };
        foreach (var p in Each(d.Parts, SmallerPart)) yield return d with { Parts = p };
        foreach (var i in Each(d.Instructions, SmallerEdition)) yield return d with { Instructions = i };
    }

    private static IEnumerable<DevicePart> SmallerPart(DevicePart p)
    {
        foreach (var t in Without(p.OneOfTypes)) yield return p with { OneOfTypes = t };
        if (p.Materials is not null) yield return p with { Materials = null, MaterialsKnown = null };
        if (p.Wettest is not null) yield return p with { Wettest = null, WettestFrom = null };
        if (p.Geometry is not null) yield return p with { Geometry = null };
    }

    private static IEnumerable<InstructionsEdition> SmallerEdition(InstructionsEdition i)
    {
        if (i.Serials.Count > 0) yield return i with { Serials = [] };
        if (i.OnlyListed) yield return i with { OnlyListed = false };
        if (i.Replaces.Count > 0) yield return i with { Replaces = [] };
    }

    private static IEnumerable<PartType> Smaller(PartType p)
    {
        if (p.Duties.Count > 0) yield return p with { Duties = [] };
        if (p.Materials is not null) yield return p with { Materials = null, MaterialsKnown = null };
        foreach (var m in Without(p.Materials ?? [])) yield return p with { Materials = m };
        if (p.Never is not null) yield return p with { Never = null };
        if (p.Geometry is not null) yield return p with { Geometry = null };
    }

    private static IEnumerable<AgentClass> Smaller(AgentClass a)
    {
        if (a.Duties.Count > 0) yield return a with { Duties = [] };
        if (a.Usual.Strength is not null) yield return a with { Usual = a.Usual with { Strength = null } };
        if (a.Usual.Ph is not null) yield return a with { Usual = a.Usual with { Ph = null } };
        if (a.Usual.Temperature is not null) yield return a with { Usual = a.Usual with { Temperature = null } };
        if (a.Leaves is not null) yield return a with { Leaves = null };
        if (a.Density is not null) yield return a with { Density = null };
    }

    private static IEnumerable<Material> Smaller(Material m)
    {
        if (m.Delicate is not null) yield return m with { Delicate = null };
        if (m.DeclaredOnlySuffices) yield return m with { DeclaredOnlySuffices = false };
    }

    private static IEnumerable<T[]> Without<T>(IReadOnlyList<T> list) => Enumerable.Range(0, list.Count).Select(i => list.Where((_, at) => at != i).ToArray());

    private static IEnumerable<T[]> Each<T>(IReadOnlyList<T> list, Func<T, IEnumerable<T>> smaller) =>
        Enumerable.Range(0, list.Count).SelectMany(i => smaller(list[i]).Select(s => list.Select((x, at) => at == i ? s : x).ToArray()));
}
