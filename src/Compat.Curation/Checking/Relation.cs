namespace Compat.Curation.Checking;

/// <summary>How two rules lie to each other in the trees.</summary>
internal sealed class Relation(CompiledBase kb)
{
    /// <summary>
    /// Whether a rule speaks strictly below another: a narrower part, material, device, agent or product, and none that is wider or beside.
    /// What counts of an 'allowed' that was seen with some agents are these, not the class that it names.
    /// </summary>
    public bool IsStrictlyBelow(CompiledRule rule, CompiledRule other)
    {
        if (!TargetIsAtOrBelow(rule.Rule.Target, other.Rule.Target) || !SubjectIsAtOrBelow(rule, other)) return false;
        if (rule.Agent < 0 || other.Agent < 0) return !rule.Rule.Target.Equals(other.Rule.Target) || rule.Agent != other.Agent
            || rule.Rule.Product != other.Rule.Product;
        return Reach.Tops(other).All(top => !kb.Agents.IsAtOrBelow(top, rule.Agent) || (top == rule.Agent && !rule.Rule.Target.Equals(other.Rule.Target)));
    }

    /// <summary>Whether a rule may override another: it speaks at or below it, and not against instructions.</summary>
    public bool MayOverride(CompiledRule rule, CompiledRule other) =>
        !other.OfInstructions && SubjectIsAtOrBelow(rule, other)
        && (TargetIsAtOrBelow(rule.Rule.Target, other.Rule.Target) || IsMadeOf(rule.Rule.Target, other.Rule.Target.Material));

    private bool SubjectIsAtOrBelow(CompiledRule rule, CompiledRule other)
    {
        if (other.Agent < 0) return rule.Rule.Product == other.Rule.Product;
        return rule.Agent >= 0
            ? kb.Agents.IsAtOrBelow(rule.Agent, other.Agent)
            : kb.Product(rule.Rule.Product!).Ingredients
                .Any(i => other.Rule.Agent == AgentClass.Root || (i.Agent is { } agent && kb.Agents.IsAtOrBelow(kb.Agents[agent.Value], other.Agent)));
    }

    private bool TargetIsAtOrBelow(RuleTarget target, RuleTarget other)
    {
        if (other.Device is { } device) return target.Device == device && (other.DevicePart is null || other.DevicePart == target.DevicePart);
        if (other.Material is { } material) return target.Material is { } m && kb.Materials.IsAtOrBelow(kb.Materials[m.Value], kb.Materials[material.Value]);
        var node = kb.Parts[other.Part!.Value];
        if (target.Part is { } part) return kb.Parts.IsAtOrBelow(kb.Parts[part.Value], node);
        var types = TypesOf(target).ToArray();
        return types.Length > 0 && types.All(type => kb.Parts.IsAtOrBelow(type, node));
    }

    private IEnumerable<int> TypesOf(RuleTarget target) => PartsOf(target).SelectMany(part => part.OneOfTypes).Select(type => kb.Parts[type.Value]);

    private IEnumerable<Model.DevicePart> PartsOf(RuleTarget target) =>
        target.Device is { } id ? kb.Devices[id].Parts.Where(part => target.DevicePart is null || part.Id == target.DevicePart) : [];

    private bool IsMadeOf(RuleTarget target, MaterialId? material)
    {
        if (material is null || target.Material is not null) return false;
        var made = target.Part is { } part
            ? kb.Part(kb.Parts[part.Value]).Materials
            : PartsOf(target).SelectMany(p => (p.Materials ?? []).Concat(p.OneOfTypes.SelectMany(type => kb.Part(kb.Parts[type.Value]).Materials)));
        var node = kb.Materials[material.Value];
        return made.SelectMany(slot => slot.OneOf).Any(m => kb.Materials.IsAtOrBelow(kb.Materials[m.Value], node));
    }
}
