namespace Compat.Deciding;

/// <summary>Which rules reach a voice, of whom they speak, and at which exposure times they hold.</summary>
internal static class Reach
{
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
