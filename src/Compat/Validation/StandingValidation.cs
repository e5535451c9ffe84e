namespace Compat.Validation;

/// <summary>Refuses a site whose rules break a standing rule. A device's own instructions may depart from one.</summary>
internal static class StandingValidation
{
    public static IReadOnlyList<Problem> Check(KnowledgeBase kb, Site site)
    {
        var scope = new Scope(kb.Data, kb.Sites);
        foreach (var rule in site.Rules.Where(r => r.Allows && r.Edition is null))
        {
            foreach (var standing in kb.Data.StandingRules.Where(s => s.SpeaksOfRules
                && (s.AlwaysWith is null || rule.Duties.All(d => d.Kind != s.AlwaysWith))))
            {
                var meets = rule.Agent is null ? IsIn(kb.Compiled, rule, standing) : scope.LiesIn(rule.Agent, standing.Agent)
                    || scope.LiesIn(standing.Agent, rule.Agent);
                if (!meets || !Touches(scope, standing, rule.Target) || !Boxes.Meet(standing.When, rule.When)) continue;
                scope.Add("breaks-standing-rule", new ProblemPlace(RecordKind.Rule, rule.Id.Value), $"`{rule.Id}` breaks the standing rule `{standing.Id}`",
                    standing.Reason);
            }
        }

        return scope.Problems;
    }

    /// <summary>Whether the product of a rule holds the agent of a standing rule, or one below it, at a strength of which that speaks.</summary>
    private static bool IsIn(CompiledBase kb, Rule rule, StandingRule standing)
    {
        var substance = SubstanceResolver.Resolve(kb, new Question { Product = rule.Product });
        var dilution = rule.When.Dilution.Statement == AxisStatement.Within ? rule.When.Dilution.Range : substance.Dilution;
        return substance.Components.Any(component => !component.OnlyForbids && !component.Unknown
            && kb.Agents.IsAtOrBelow(component.Agent, kb.Agents[standing.Agent.Value])
            && (standing.When.Strength.Statement != AxisStatement.Within
            || !Dilutions.WhereSome(component.Strength, Stretch.Of(standing.When.Strength.Range)).Intersect(Stretch.Of(dilution)).IsEmpty));
    }

    private static bool Touches(Scope scope, StandingRule standing, RuleTarget target)
    {
        if (target.Material is { } material)
            return standing.Material is { } of && (scope.LiesIn(material, of) || scope.LiesIn(of, material));
        var parts = target.Device is { } device ? scope.Devices[device].Parts.Where(p => target.DevicePart is null || p.Id == target.DevicePart).ToArray() : [];
        var types = target.Part is { } part ? [part] : parts.SelectMany(p => p.OneOfTypes);
        return standing.Part is { } wanted
            ? types.Any(type => scope.LiesIn(type, wanted) || scope.LiesIn(wanted, type))
            : types.SelectMany(type => scope.Stated(type, p => p.Materials) ?? []).Concat(parts.SelectMany(p => p.Materials ?? []))
                .SelectMany(slot => slot.OneOf).Any(m => standing.Material is { } wantedOf && scope.LiesIn(m, wantedOf));
    }
}
