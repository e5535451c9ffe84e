namespace Compat.Validation;

/// <summary>Checks that an override speaks at or below what it overrides, meets its box, and forms no cycle.</summary>
internal static class OverrideValidation
{
    public static void Check(Scope scope, IEnumerable<Rule> rules)
    {
        foreach (var rule in rules)
        {
            for (var i = 0; i < rule.Overrides.Count; i++)
            {
                var at = new Field(scope, RecordKind.Rule, rule.Id.Value)["overrides"][i];
                if (!at.Knows(scope.Rules, rule.Overrides[i], "rule")) continue;
                var other = scope.Rules[rule.Overrides[i]];
                if (other.Edition is not null) at.Wrong("overrides-instructions", $"`{other.Id}` speaks for instructions, which nothing overrides");
                else if (TargetFault(scope, rule.Target, other.Target) is { } target)
                    at.Wrong("override-reach", $"`{rule.Id}` speaks of `{rule.Target}`, which {target} `{other.Target}`",
                        "an override speaks at or below what it overrides");
                else if (!SubjectLiesIn(scope, rule, other))
                    at.Wrong("override-reach", $"`{rule.Id}` speaks of `{Subject(rule)}`, which is not at or below `{Subject(other)}`",
                        "an override speaks at or below what it overrides");
                else if (!Boxes.Meet(rule.When, other.When)) at.Wrong("override-misses", $"the boxes of `{rule.Id}` and `{other.Id}` do not meet");
                if (Reaches(scope, other, rule.Id))
                    at.Wrong("override-cycle", rule.Id == other.Id ? $"`{rule.Id}` overrides itself" : $"`{rule.Id}` and `{other.Id}` override each other");
            }
        }
    }

    private static string? Subject(Rule rule) => rule.Agent?.Value ?? rule.Product?.Value;

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
            if (of.Part is { } narrower) return scope.LiesIn(narrower, part) ? null : "is not at or below";
            return PartsOf(scope, of).All(type => scope.LiesIn(type, part)) ? null : "is no part of that type:";
        }

        if (of.Material is { } material) return scope.LiesIn(material, over.Material!) ? null : "is not at or below";
        var made = of.Part is { } single ? MaterialsOf(scope, single)
            : PartsOf(scope, of).SelectMany(type => MaterialsOf(scope, type)).Concat(StatedMaterials(scope, of));
        return made.Any(m => scope.LiesIn(m, over.Material!)) ? null : "is not made of";
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
        (scope.Stated(part, p => p.Materials) ?? []).SelectMany(slot => slot.OneOf);

    private static bool SubjectLiesIn(Scope scope, Rule rule, Rule other)
    {
        if (other.Product is { } product) return rule.Product == product;
        if (rule.Agent is { } agent) return other.Agent is { } above && scope.LiesIn(agent, above);
        return rule.Product is { } own && scope.Products.TryGetValue(own, out var mixture)
            && (other.Agent == AgentClass.Root || mixture.Ingredients.Any(i => scope.Upward(i.Agent).Any(a => a.Id == other.Agent)));
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

/// <summary>Whether boxes have points in common. What one of two does not bound, or leaves unstated, is taken to meet.</summary>
internal static class Boxes
{
    public static bool Meet(ExposureBox one, ExposureBox other)
    {
        for (var axis = Axis.Strength; axis < Axis.Uses; axis++)
            if (!Meet(one.On(axis), other.On(axis))) return false;
        return Meet(Whole(one.Uses), Whole(other.Uses)) && Meet(one.Methods, other.Methods);

        static AxisLimit Whole(AxisLimit uses) => uses.Statement == AxisStatement.Within ? AxisLimit.Within(RuleCompiler.WholeNumbers(uses.Range)) : uses;
    }

    public static bool Meet(AxisLimit one, AxisLimit other) =>
        one.Statement != AxisStatement.Within || other.Statement != AxisStatement.Within || !one.Range.Intersect(other.Range).IsEmpty;

    public static bool Meet(MethodLimit one, MethodLimit other) =>
        one.Statement != AxisStatement.Within || other.Statement != AxisStatement.Within || !one.Methods.Intersect(other.Methods).IsEmpty;
}
