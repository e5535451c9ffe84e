using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>A piece of the shipped data that a solver gets through: one part type with all it inherits and is made of, and every rule on these.</summary>
internal static class ShippedPiece
{
    /// <summary>The records about one part type.</summary>
    public static KnowledgeData Of(KnowledgeData data, PartId part)
    {
        var trees = new ReferenceTrees(data, []);
        var parts = trees.Line(part).Select(one => one.Id).ToHashSet();
        var materials = parts.SelectMany(id => trees.Materials(id)).SelectMany(slot => slot.OneOf).SelectMany(id => trees.Line(id)).Select(one => one.Id).Append(Material.Root).ToHashSet();
        var rules = data.Rules.Where(rule => rule.Target.Part is { } on ? parts.Contains(on) : materials.Contains(rule.Target.Material!)).ToArray();
        var ids = rules.Select(rule => rule.Id).ToHashSet();
        return new KnowledgeData
        {
            Version = data.Version,
            Sources = data.Sources,
            Agents = data.Agents.Select(agent => agent with { Duties = Known(agent.Duties) }).ToArray(),
            Conventions = data.Conventions,
            Materials = data.Materials.Where(one => materials.Contains(one.Id)).ToArray(),
            Parts = data.Parts.Where(one => parts.Contains(one.Id)).Select(one => one with { Duties = Known(one.Duties) }).ToArray(),
            Rules = rules.Select(rule => rule with { Duties = Known(rule.Duties), Overrides = rule.Overrides.Where(ids.Contains).ToArray() }).ToArray(),
            StandingRules = data.StandingRules.Where(rule => rule.SpeaksOfRules && (rule.Part is { } on ? parts.Contains(on) : materials.Contains(rule.Material!))).ToArray(),
        };

        // A duty may name parts that are not here.
        IReadOnlyList<Duty> Known(IReadOnlyList<Duty> duties) => duties.Where(duty => duty.Parts.All(parts.Contains)).ToArray();
    }
}
