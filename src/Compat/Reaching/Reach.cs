namespace Compat.Reaching;

/// <summary>
/// Which records of any kind speak of an agent, on a part, for a patient. What a record says of something in a tree it says of all below it; only an
/// 'allowed' says less. The engine asks here, and so do the check and the review.
/// </summary>
internal static class Reach
{
    /// <summary>Whether what is said of one agent is said of another.</summary>
    public static bool Names(CompiledBase kb, AgentId named, int agent) => kb.Agents.IsAtOrBelow(agent, kb.Agents[named.Value]);

    /// <summary>Whether what is said of an agent is said of a component. Of an unknown one only what is said of every agent is.</summary>
    public static bool Names(CompiledBase kb, AgentId named, Component component) =>
        component.Unknown ? named == AgentClass.Root : Names(kb, named, component.Agent);

    /// <summary>Whether what is said of some part types is said of one; none stand for all. -1 is no part type.</summary>
    public static bool IsFor(CompiledBase kb, IReadOnlyList<PartId> types, int part)
    {
        if (types.Count == 0) return true;
        foreach (var type in types)
            if (part >= 0 && kb.Parts.IsAtOrBelow(part, kb.Parts[type.Value])) return true;
        return false;
    }

    /// <summary>Whether what is said of some part types is said of a variant at least; none stand for all.</summary>
    public static bool IsFor(CompiledBase kb, IReadOnlyList<PartId> types, IReadOnlyList<PartVariant> variants) =>
        types.Count == 0 || variants.Any(variant => IsFor(kb, types, variant.Part));

    /// <summary>The published claims of an agent that stand, on whatever part; by hand, or where a machine alone keeps the exposure.</summary>
    public static IEnumerable<Claim> Claims(CompiledBase kb, int agent, ClaimWhere? where = null) =>
        kb.Data.Claims.Where(claim => claim.Refuted is null && claim.Where == where && Names(kb, claim.Agent, agent));

    /// <summary>Whether a claim has the weight of a guideline.</summary>
    public static bool IsOfGuideline(Claim claim) => claim.Kind is ClaimKind.Guideline or ClaimKind.Standard;

    /// <summary>The levels that the instructions of a device promise for a part of it, with the editions that do.</summary>
    public static IEnumerable<(Device Device, InstructionsEdition Edition, InstructedLevel Level)> Instructed(IReadOnlyList<PartVariant> variants) =>
        variants.Where(variant => variant.Device is not null)
            .SelectMany(variant => variant.Editions.Select(edition => (Device: variant.Device!, Edition: edition))).Distinct()
            .SelectMany(one => one.Edition.Reaches.Where(level => level.Parts.Count == 0 || level.Parts.Any(part => part == variants[0].DevicePart))
                .Select(level => (one.Device, one.Edition, level)));

    /// <summary>Whether a person rule is for some patients, in a device with one in it or without.</summary>
    public static bool IsForPatients(PersonRule rule, IReadOnlyCollection<PatientGroup> patients, bool occupied) =>
        (occupied || !rule.Occupied) && (rule.Patients.Any(patients.Contains) || (rule.Occupied && rule.Patients.Count == 0));

    /// <summary>How staff are protected from an agent: what is said of itself first, then of each class above it.</summary>
    public static IEnumerable<Protection> Protections(CompiledBase kb, int agent) =>
        kb.Agents.Upward(agent).SelectMany(node => kb.Data.Protections.Where(one => one.Agent == kb.Data.Agents[node].Id));

    /// <summary>The rules on what is needed of a part that is touched so, with some soil on it.</summary>
    public static IEnumerable<NeedRule> Needs(CompiledBase kb, TouchedBy contact, IReadOnlyList<SoilKind> soil) =>
        kb.Data.Needs.Where(rule => rule.TouchedBy.Contains(contact) && (rule.Soil.Count == 0 || rule.Soil.Any(soil.Contains)));

    /// <summary>Whether one agent binds or destroys another: it is on record of the agent, or as a hazard where they meet.</summary>
    public static bool Destroys(CompiledBase kb, int agent, int by)
    {
        foreach (var node in kb.Agents.Upward(agent))
            if (kb.Data.Agents[node].InactivatedBy.Any(id => Names(kb, id, by))) return true;
        return kb.Data.MixingHazards.Any(hazard => hazard.Effects.Contains(MixingEffect.Inactivation) && OfPair(kb, hazard.Agent, hazard.WithAgent, agent, by));
    }

    /// <summary>Whether a record of two agents speaks of two, in either order.</summary>
    public static bool OfPair(CompiledBase kb, AgentId agent, AgentId? with, int one, int other) =>
        with is not null && ((Names(kb, agent, one) && Names(kb, with, other)) || (Names(kb, agent, other) && Names(kb, with, one)));

    /// <summary>Whether a record of mixing names what meets an agent: all of it (false), some of its members (true), or not at all (null).</summary>
    public static bool? Meets(CompiledBase kb, AgentId? withAgent, SoilKind? withSoil, MaterialId? withMaterial, MixingPartner partner) =>
        withAgent is not null && partner.Agent is { } agent ? Meets(kb, withAgent, agent)
        : withMaterial is not null && partner.Material is { } material ? Meets(kb.Materials, withMaterial, material, Material.Root)
        : withSoil is { } soil && partner.Soil == soil ? false : null;

    /// <summary>Whether a record of mixing on one agent speaks of another: of all of it (false), of some of its members (true), or not at all (null).</summary>
    public static bool? Meets(CompiledBase kb, AgentId recorded, AgentId asked) => Meets(kb.Agents, recorded, asked, AgentClass.Root);

    private static bool? Meets(Tree tree, Id recorded, Id asked, Id root)
    {
        var (named, node) = (tree[recorded.Value], tree[asked.Value]);
        return tree.IsAtOrBelow(node, named) ? false : asked != root && tree.IsAtOrBelow(named, node) ? true : null;
    }

    /// <summary>The agents of which a rule speaks, the highest of each branch; none of a product's rule.</summary>
    public static int[] Tops(CompiledRule rule) =>
        rule.Agent < 0 ? [] : !rule.Allows || rule.Rule.WholeClass || rule.SeenWith.Length == 0 ? [rule.Agent] : rule.SeenWith;

    /// <summary>The rules of the voice of a part and its device, whatever the agent.</summary>
    public static IEnumerable<CompiledRule> PartAndDevice(CompiledBase kb, PartVariant variant)
    {
        foreach (var (rule, passes) in OnTypes(kb, variant))
            if (passes) yield return rule;

        if (variant.Device is null) yield break;
        foreach (var rule in kb.RulesOnDevice(variant.Device.Id))
        {
            var ofPart = rule.Rule.Target.DevicePart is null || rule.Rule.Target.DevicePart == variant.DevicePart;
            var speaks = rule.Rule.Edition is null || variant.Editions.Any(edition => edition.Id == rule.Rule.Edition);
            if (ofPart && speaks) yield return rule;
        }
    }

    /// <summary>The 'allowed' rules on a part's types whose permission does not pass to it; their duties do.</summary>
    public static IEnumerable<CompiledRule> NotPassing(CompiledBase kb, PartVariant variant)
    {
        foreach (var (rule, passes) in OnTypes(kb, variant))
            if (!passes) yield return rule;
    }

    /// <summary>The rules of a material's voice, whatever the agent.</summary>
    public static IEnumerable<CompiledRule> OfMaterial(CompiledBase kb, int material)
    {
        for (var node = material; node >= 0; node = kb.Materials.Parent(node))
        {
            foreach (var rule in kb.RulesOnMaterial(node))
                if (!rule.Allows || node == material || !kb.IsDelicate(material)) yield return rule;
        }
    }

    /// <summary>Whether a rule speaks of a component.</summary>
    public static bool Speaks(CompiledBase kb, CompiledRule rule, Product? asked, Component component)
    {
        if (rule.Agent < 0)
            return asked is { } product && product.Id == rule.Rule.Product && product.CompositionDated == rule.Rule.CompositionDated;
        if (component.Unknown) return !rule.Allows && rule.Agent == component.Agent;
        if (!kb.Agents.IsAtOrBelow(component.Agent, rule.Agent)) return false;
        if (!rule.Allows || rule.Rule.WholeClass) return true;
        foreach (var seen in rule.SeenWith)
            if (kb.Agents.IsAtOrBelow(component.Agent, seen)) return true;
        return rule.SeenWith.Length == 0 && rule.Agent == component.Agent;
    }

    /// <summary>The exposure times asked at which a rule holds; null where there are none.</summary>
    /// <param name="kb">The rules.</param>
    /// <param name="rule">The rule.</param>
    /// <param name="endsNowhere">Whether a finite exposure time does not end on the part.</param>
    /// <param name="leavesNothing">Whether what is asked about leaves nothing.</param>
    public static Run? ExposureTimes(CompiledBase kb, CompiledRule rule, bool endsNowhere, bool leavesNothing)
    {
        var cells = rule.Cells.ExposureTime;
        if (!endsNowhere) return cells;
        var times = rule.Box.ExposureTime.ToInterval();
        if (!leavesNothing) return times.Contains(Interval.WithoutEnd) ? kb.Grid[Axis.ExposureTime].All : null;
        if (kb.Convention(ConventionKey.DryingTime).Range.Upper is not { } drying) return cells;
        if (times.Contains(drying)) return new Run(0, cells.End);
        return times.Upper is { } upper && upper <= drying ? null : cells;
    }

    private static IEnumerable<(CompiledRule Rule, bool Passes)> OnTypes(CompiledBase kb, PartVariant variant)
    {
        for (var node = variant.Part; node >= 0; node = kb.Parts.Parent(node))
            foreach (var rule in kb.RulesOnPart(node)) yield return (rule, !rule.Allows || AllowedPasses(kb, variant, node));
    }

    /// <summary>An 'allowed' passes down only where the type it is written on has every delicate material for certain.</summary>
    private static bool AllowedPasses(CompiledBase kb, PartVariant variant, int writtenOn)
    {
        if (!variant.TypeAllowedReaches) return false;
        if (variant.Part == writtenOn && !variant.MaterialsStated) return true;
        foreach (var material in variant.Materials)
            if (kb.IsDelicate(material) && !IsCertain(kb, writtenOn, material)) return false;
        return true;
    }

    private static bool IsCertain(CompiledBase kb, int part, int material)
    {
        foreach (var id in kb.Part(part).CertainMaterials)
            if (kb.Materials[id.Value] == material) return true;
        return false;
    }
}
