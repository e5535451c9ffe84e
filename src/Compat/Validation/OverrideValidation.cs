namespace Compat.Validation;

/// <summary>Checks that an override speaks at or below what it overrides, meets its box, and forms no cycle.</summary>
internal static class OverrideValidation
{
    public static void Check(Scope scope, IEnumerable<Rule> rules)
    {
        foreach (var rule in rules)
        {
            var place = new ProblemPlace(RecordKind.Rule, rule.Id.Value);
            for (var i = 0; i < rule.Overrides.Count; i++)
            {
                var here = place with { Field = $"overrides.{i}" };
                if (!scope.Rules.TryGetValue(rule.Overrides[i], out var other))
                {
                    scope.Add("unknown-rule", here, $"unknown rule `{rule.Overrides[i]}`", NearestNames.Help(rule.Overrides[i].Value, scope.Rules.Names));
                    continue;
                }

                if (other.Edition is not null) scope.Add("overrides-instructions", here, $"`{other.Id}` speaks for instructions, which nothing overrides");
                else if (TargetFault(scope, rule.Target, other.Target) is { } target) scope.Add("override-reach", here,
                    $"`{rule.Id}` speaks of `{rule.Target}`, which {target} `{other.Target}`", "an override speaks at or below what it overrides");
                else if (!SubjectLiesIn(scope, rule, other)) scope.Add("override-reach", here,
                    $"`{rule.Id}` speaks of `{rule.Agent?.Value ?? rule.Product?.Value}`, which is not at or below "
                        + $"`{other.Agent?.Value ?? other.Product?.Value}`",
                    "an override speaks at or below what it overrides");
                else if (!Overlap(rule, other)) scope.Add("override-misses", here, $"the boxes of `{rule.Id}` and `{other.Id}` do not meet");
                if (Reaches(scope, other, rule.Id)) scope.Add("override-cycle", here, rule.Id == other.Id ? $"`{rule.Id}` overrides itself"
                    : $"`{rule.Id}` and `{other.Id}` override each other");
            }
        }
    }

    private static string? TargetFault(Scope scope, RuleTarget of, RuleTarget over)
    {
        if (over.Device is { } device)
        {
            if (of.Device != device) return "is no part of";
            return over.DevicePart is null || over.DevicePart == of.DevicePart ? null : "is not the part";
        }

        if (over.Part is { } part)
        {
            if (of.Material is not null) return "is a material and never overrides the part";
            if (of.Part is { } narrower) return scope.Upward(narrower).Any(p => p.Id == part) ? null : "is not at or below";
            return PartsOf(scope, of).All(type => scope.Upward(type).Any(p => p.Id == part)) ? null : "is no part of that type:";
        }

        if (of.Material is { } material) return scope.Upward(material).Any(m => m.Id == over.Material) ? null : "is not at or below";
        var made = of.Part is { } single ? MaterialsOf(scope, single)
            : PartsOf(scope, of).SelectMany(type => MaterialsOf(scope, type)).Concat(StatedMaterials(scope, of));
        return made.Any(m => scope.Upward(m).Any(a => a.Id == over.Material)) ? null : "is not made of";
    }

    private static IEnumerable<PartId> PartsOf(Scope scope, RuleTarget target) =>
        target.Device is { } id && scope.Devices.TryGetValue(id, out var device)
            ? device.Parts.Where(p => target.DevicePart is null || p.Id == target.DevicePart).SelectMany(p => p.OneOfTypes)
            : [];

    private static IEnumerable<MaterialId> StatedMaterials(Scope scope, RuleTarget target) =>
        target.Device is { } id && scope.Devices.TryGetValue(id, out var device)
            ? device.Parts.Where(p => target.DevicePart is null || p.Id == target.DevicePart).SelectMany(p => p.Materials ?? []).SelectMany(s => s.OneOf)
            : [];

    private static IEnumerable<MaterialId> MaterialsOf(Scope scope, PartId part) =>
        (scope.Upward(part).Select(p => p.Materials).FirstOrDefault(m => m is not null) ?? []).SelectMany(slot => slot.OneOf);

    private static bool SubjectLiesIn(Scope scope, Rule rule, Rule other)
    {
        if (other.Product is { } product) return rule.Product == product;
        if (rule.Agent is { } agent) return scope.Upward(agent).Any(a => a.Id == other.Agent);
        return rule.Product is { } own && scope.Products.TryGetValue(own, out var mixture)
            && (other.Agent == AgentClass.Root || mixture.Ingredients.Any(i => scope.Upward(i.Agent).Any(a => a.Id == other.Agent)));
    }

    /// <summary>Whether the boxes meet on every axis both speak of. An unstated axis is filled in later and taken to meet.</summary>
    private static bool Overlap(Rule a, Rule b)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var (x, y) = (a.When.On(axis), b.When.On(axis));
            if (x.Statement != AxisStatement.Within || y.Statement != AxisStatement.Within) continue;
            var (first, second) = axis == Axis.Uses ? (RuleCompiler.WholeNumbers(x.Range), RuleCompiler.WholeNumbers(y.Range)) : (x.Range, y.Range);
            if (first.Intersect(second).IsEmpty) return false;
        }

        var (m, n) = (a.When.Methods, b.When.Methods);
        return m.Statement != AxisStatement.Within || n.Statement != AxisStatement.Within || !m.Methods.Intersect(n.Methods).IsEmpty;
    }

    private static bool Reaches(Scope scope, Rule from, RuleId goal)
    {
        var seen = new HashSet<RuleId>();
        var open = new Stack<Rule>([from]);
        while (open.Count > 0)
        {
            var rule = open.Pop();
            if (!seen.Add(rule.Id)) continue;
            if (rule.Id == goal) return true;
            foreach (var id in rule.Overrides)
                if (scope.Rules.TryGetValue(id, out var next)) open.Push(next);
        }

        return false;
    }
}
