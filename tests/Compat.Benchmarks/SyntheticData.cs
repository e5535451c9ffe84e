namespace Compat.Benchmarks;

/// <summary>Rule sets of the shipped data's shape and of any size: its trees copied side by side, each copy with its rules, until there are enough.</summary>
internal static class SyntheticData
{
    /// <summary>So many rules; agents, conventions, sources and standing rules stay those of the shipped data.</summary>
    public static KnowledgeData Of(int rules)
    {
        var shipped = KnowledgeBase.Shipped.Data;
        var materials = new List<Material>();
        var parts = new List<PartType>();
        var all = new List<Rule>();
        for (var copy = 0; all.Count < rules; copy++)
        {
            materials.AddRange(shipped.Materials.Where(one => copy == 0 || one.Under is not null).Select(one => Copy(one, copy)));
            parts.AddRange(shipped.Parts.Where(one => copy == 0 || one.Under is not null).Select(one => Copy(one, copy)));
            all.AddRange(shipped.Rules.Where(one => copy == 0 || !IsOnRoot(one)).Take(rules - all.Count).Select(one => Copy(one, copy)));
        }

        var kept = all.Select(rule => rule.Id).ToHashSet();
        return new KnowledgeData
        {
            Version = $"{rules} synthetic rules",
            Materials = materials,
            Parts = parts,
            Agents = shipped.Agents,
            Sources = shipped.Sources,
            Conventions = shipped.Conventions,
            StandingRules = shipped.StandingRules.Where(one => one.SpeaksOfRules).ToArray(),
            Rules = all.Select(rule => rule with { Overrides = rule.Overrides.Where(kept.Contains).ToArray() }).ToArray(),
        };
    }

    private static bool IsOnRoot(Rule rule) => rule.Target.Part == PartType.Root || rule.Target.Material == Material.Root;

    private static string Name(string id, int copy) => copy == 0 ? id : $"{id}-copy{copy}";

    private static MaterialId Of(MaterialId id, int copy) => id == Material.Root ? id : new(Name(id.Value, copy));

    private static PartId Of(PartId id, int copy) => id == PartType.Root ? id : new(Name(id.Value, copy));

    private static Material Copy(Material one, int copy) => one with { Id = Of(one.Id, copy), Under = one.Under is null ? null : Of(one.Under, copy) };

    private static PartType Copy(PartType one, int copy) => one with
    {
        Id = Of(one.Id, copy),
        Under = one.Under is null ? null : Of(one.Under, copy),
        Materials = one.Materials?.Select(slot => new MaterialSlot(slot.OneOf.Select(m => Of(m, copy)).ToArray())).ToArray(),
        Duties = one.Duties.Select(duty => Copy(duty, copy)).ToArray(),
    };

    private static Rule Copy(Rule one, int copy) => one with
    {
        Id = new RuleId(Name(one.Id.Value, copy)),
        Target = one.Target.Part is { } part ? RuleTarget.On(Of(part, copy)) : RuleTarget.On(Of(one.Target.Material!, copy)),
        Overrides = one.Overrides.Select(id => new RuleId(Name(id.Value, copy))).ToArray(),
        Duties = one.Duties.Select(duty => Copy(duty, copy)).ToArray(),
    };

    private static Duty Copy(Duty one, int copy) => one with { Parts = one.Parts.Select(part => Of(part, copy)).ToArray() };
}
