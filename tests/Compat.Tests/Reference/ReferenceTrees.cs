using Compat.Exposures;
using Compat.Knowledge;
using Compat.Sites;

namespace Compat.Tests.Reference;

/// <summary>Trees: what each record has from the records above it, and what one rule reaches.</summary>
internal sealed class ReferenceTrees(KnowledgeData data, IReadOnlyList<Site> sites)
{
    private readonly Dictionary<MaterialId, Material[]> _materials = Chains(data.Materials, m => m.Id, m => m.Under);
    private readonly Dictionary<PartId, PartType[]> _parts = Chains(data.Parts, p => p.Id, p => p.Under);
    private readonly Dictionary<AgentId, AgentClass[]> _agents = Chains(data.Agents, a => a.Id, a => a.Under);

    public IReadOnlyList<Rule> Rules { get; } = [.. data.Rules, .. sites.SelectMany(s => s.Rules)];
    public IReadOnlyList<Source> Sources { get; } = [.. data.Sources, .. sites.SelectMany(s => s.Sources)];
    public IEnumerable<AgentId> Agents => _agents.Keys;

    public bool Below(MaterialId low, MaterialId high) => _materials[low].Any(m => m.Id == high);
    public bool Below(PartId low, PartId high) => _parts[low].Any(p => p.Id == high);
    public bool Below(AgentId low, AgentId high) => _agents[low].Any(a => a.Id == high);
    public bool Delicate(MaterialId id) => _materials[id].Any(m => m.Delicate is not null);
    public bool DeclaredOnly(MaterialId id) => _materials[id].Any(m => m.DeclaredOnlySuffices);

    public PartType? StatesMaterials(PartId id) => _parts[id].FirstOrDefault(p => p.Materials is not null);
    public IEnumerable<MaterialId> Candidates(PartId id) => (StatesMaterials(id)?.Materials ?? []).SelectMany(s => s.OneOf);
    public IEnumerable<MaterialId> Certain(PartId id) => (StatesMaterials(id)?.Materials ?? []).Where(s => s.OneOf.Count == 1).Select(s => s.OneOf[0]);
    public ApplicationMethod Wettest(PartId id) => _parts[id].Select(p => p.Wettest).FirstOrDefault(w => w is not null) ?? ApplicationMethod.DryWipe;
    public IReadOnlyList<Act> Never(PartId id) => _parts[id].Select(p => p.Never).FirstOrDefault(n => n is not null) ?? [];
    public Geometry Geometry(PartId id) => _parts[id].Select(p => p.Geometry).FirstOrDefault(g => g is not null) ?? default;
    public IEnumerable<Duty> Duties(PartId id) => _parts[id].SelectMany(p => p.Duties);
    public IEnumerable<Duty> Duties(AgentId id) => _agents[id].SelectMany(a => a.Duties);
    public StrengthBasis? Basis(AgentId id) => _agents[id].Select(a => a.Basis).FirstOrDefault(b => b is not null)?.Basis;
    public bool Chamber(AgentId id) => _agents[id].Any(a => a.Chamber);
    public bool LeavesNothing(AgentId id) => _agents[id].Select(a => a.Leaves).FirstOrDefault(l => l is not null) == Residue.Nothing;
    public decimal? Density(AgentId id) => _agents[id][0].Density;

    public Interval? Usual(AgentId id, Func<UsualRange, Interval?> which) => _agents[id].Select(a => which(a.Usual)).FirstOrDefault(r => r is not null);
    public Convention Convention(ConventionKey key) => data.Conventions.Single(c => c.Key == key);

    /// <summary>What a rule says of an axis, an 'unstated' filled in from the conventions or the usual range.</summary>
    public Interval Filled(Rule rule, Axis axis, Product? product)
    {
        var said = rule.When.On(axis);
        if (said.Statement != AxisStatement.Unstated) return said.Range;
        return axis switch
        {
            Axis.Strength => Usual(rule.Agent!, u => u.Strength)!.Value,
            Axis.Ph when rule.Agent is not null => Usual(rule.Agent, u => u.Ph) ?? Convention(ConventionKey.UnstatedPh).Range,
            Axis.Ph => product!.Ph.Where(p => p.Of != PhState.OnePercent).Select(p => (Interval?)p.Value).Aggregate((Interval?)null, (a, b) => a is null ? b : a.Value.Hull(b!.Value))
                ?? Convention(ConventionKey.UnstatedPh).Range,
            Axis.Residence => Convention(ConventionKey.UnstatedResidence).Range,
            Axis.Temperature => Convention(ConventionKey.UnstatedTemperature).Range,
            Axis.Uses => Convention(ConventionKey.UnstatedUses).Range,
            _ => Convention(ConventionKey.UnstatedDilution).Range,
        };
    }

    public bool HoldsMethod(Rule rule, ApplicationMethod method) => rule.When.Methods.Statement switch
    {
        AxisStatement.Within => rule.When.Methods.Methods.Contains(method),
        AxisStatement.Unstated => Convention(ConventionKey.UnstatedMethods).Methods.Contains(method),
        _ => true,
    };

    /// <summary>The rule passes from its agent or product to a component of what is asked.</summary>
    public bool ReachesAgent(Rule rule, Product? product, AgentId asked, bool unknown)
    {
        if (rule.Product is not null) return rule.Product == product?.Id && rule.CompositionDated == product.CompositionDated;
        if (!rule.Allows) return Below(asked, rule.Agent!);
        if (unknown) return false;
        if (rule.SeenWith.Count > 0) return rule.SeenWith.Any(seen => Below(asked, seen));
        return rule.WholeClass ? Below(asked, rule.Agent!) : asked == rule.Agent;
    }

    /// <summary>The rule, written on a material, passes to a material.</summary>
    public bool ReachesMaterial(Rule rule, MaterialId material) => rule.Target.Material is { } m
        && (rule.Allows ? material == m || (Below(material, m) && !Delicate(material)) : Below(material, m));

    /// <summary>The rule, written on a part type or a device, passes to the part asked.</summary>
    public bool ReachesPart(Rule rule, Variant v) => ReachesTarget(rule, v) && (rule.Target.Part is not { } target || !rule.Allows || PermissionPasses(target, v));

    /// <summary>An 'allowed' at or above the part whose permission does not pass to it: its duties do.</summary>
    public bool ReachesWithDutiesOnly(Rule rule, Variant v) => rule.Allows && rule.Target.Part is { } target && ReachesTarget(rule, v) && !PermissionPasses(target, v);

    private bool PermissionPasses(PartId target, Variant v) => (target == v.Type && !v.MaterialsStated)
        || (v.Materials.Where(Delicate).All(m => Certain(target).Contains(m)) && (!v.MaterialsStated || v.Materials.All(m => Certain(v.Type!).Any(c => Below(m, c)))));

    private bool ReachesTarget(Rule rule, Variant v)
    {
        if (rule.Target.Device is { } device)
        {
            return device == v.Device?.Id && (rule.Target.DevicePart is null || rule.Target.DevicePart == v.DevicePart)
                && (rule.Edition is null || v.Speaking.Any(e => e.Id == rule.Edition));
        }

        return rule.Target.Part is { } target && v.Type is not null && Below(v.Type, target);
    }

    private static Dictionary<TId, T[]> Chains<TId, T>(IReadOnlyList<T> records, Func<T, TId> id, Func<T, TId?> under) where TId : Id
    {
        IEnumerable<T> Up(T from)
        {
            for (var at = from; ;)
            {
                yield return at;
                if (under(at) is not { } parent) yield break;
                at = records.Single(r => id(r) == parent);
            }
        }

        return records.ToDictionary(id, r => Up(r).ToArray());
    }
}

/// <summary>The part asked with one choice for every one-of, and the editions that speak for one possible serial number.</summary>
internal sealed class Variant
{
    public PartId? Type { get; init; }
    public Device? Device { get; init; }
    public DevicePartId? DevicePart { get; init; }
    public IReadOnlyList<InstructionsEdition> Speaking { get; init; } = [];
    public required IReadOnlyList<MaterialId> Materials { get; init; }
    public bool MaterialsKnown { get; init; }
    public bool MaterialsStated { get; init; }
    public ApplicationMethod Wettest { get; init; }
    public IReadOnlyList<Act> Never { get; init; } = [];
    public Geometry Geometry { get; init; }
}
