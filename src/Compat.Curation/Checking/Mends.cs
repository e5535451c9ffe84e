namespace Compat.Curation.Checking;

/// <summary>One change of one rule that removes a finding.</summary>
public sealed record Mend
{
    /// <summary>The rule to change.</summary>
    public required RuleId Rule { get; init; }

    /// <summary>The change in words: lower case, no final stop.</summary>
    public required string Text { get; init; }

    /// <summary>The rule it is to override; null where the box is to be narrowed.</summary>
    public RuleId? Overrides { get; init; }

    /// <summary>The box it is to have; null where that stays.</summary>
    public ExposureBox? When { get; init; }

    /// <summary>The rule as it would be.</summary>
    public Rule ApplyTo(Rule rule) => rule with
    {
        Overrides = Overrides is null ? rule.Overrides : [.. rule.Overrides, Overrides],
        When = When ?? rule.When,
    };
}

/// <summary>Proposes how two rules that contradict each other can be brought to agree.</summary>
internal sealed class MendProposals(CompiledBase kb, Relation relation)
{
    /// <summary>So many ways are shown at most.</summary>
    private const int Most = 6;

    public IEnumerable<Mend> For(CompiledRule allowed, CompiledRule forbids) => All(allowed, forbids).Take(Most);

    private IEnumerable<Mend> All(CompiledRule allowed, CompiledRule forbids)
    {
        foreach (var mend in Narrower(allowed, forbids)) yield return mend;
        if (relation.MayOverride(allowed, forbids)) yield return Override(allowed, forbids, "if it is a known exception");

        // A prohibition is never narrowed to please a permission: what its source forbids stays forbidden.
        if (relation.MayOverride(forbids, allowed)) yield return Override(forbids, allowed, "if the prohibition is the exception");
    }

    private static Mend Override(CompiledRule rule, CompiledRule other, string when) => new()
    {
        Rule = rule.Rule.Id,
        Text = $"write `overrides: [{other.Rule.Id}]` in `{rule.Rule.Id}`, {when}",
        Overrides = other.Rule.Id,
    };

    /// <summary>The ways to end the box of a permission where that of the prohibition begins, on one axis.</summary>
    private IEnumerable<Mend> Narrower(CompiledRule rule, CompiledRule other)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var limit = rule.Rule.When.On(axis);
            if (limit.Statement == AxisStatement.NotNamed) continue;
            if ((axis == Axis.Strength && (rule.Agent < 0 || kb.Agent(rule.Agent).Basis is null)) || (axis == Axis.Dilution && rule.Agent >= 0)) continue;
            foreach (var left in Outside(rule.Box[axis].ToInterval(), other.Box[axis].ToInterval()).Where(interval => Fits(axis, interval)))
            {
                yield return new Mend
                {
                    Rule = rule.Rule.Id,
                    Text = $"narrow `{rule.Rule.Id}` to `{Words.Of(axis)}: {(axis == Axis.Dilution ? left.Scale(100m) : left).ToString(Unit(rule, axis))}`",
                    When = With(rule.Rule.When, axis, AxisLimit.Within(left)),
                };
            }
        }

        var methods = MethodSet.Of(rule.Methods.Methods.Where(method => !other.Methods.Contains(method)).ToArray());
        if (!methods.IsEmpty && !methods.Equals(rule.Methods) && !methods.Equals(MethodSet.Of(ApplicationMethod.Chamber)))
        {
            yield return new Mend
            {
                Rule = rule.Rule.Id,
                Text = $"narrow `{rule.Rule.Id}` to `methods: [{methods}]`",
                When = rule.Rule.When with { Methods = MethodLimit.Within(methods.Methods.ToArray()) },
            };
        }
    }

    private string Unit(CompiledRule rule, Axis axis) => axis switch
    {
        Axis.Strength => StrengthUnit.PercentOf(kb.Agent(rule.Agent).Basis!.Basis).Text,
        Axis.Dilution => "% v/v",
        Axis.ExposureTime => "s",
        Axis.Temperature => "°C",
        _ => "",
    };

    /// <summary>An 'allowed' starts at once and at the first use.</summary>
    private static bool Fits(Axis axis, Interval left) => axis is not (Axis.ExposureTime or Axis.Uses) || left.Lower is null or 0m;

    /// <summary>What is left of an interval below and above another; nothing where the other covers it.</summary>
    private static IEnumerable<Interval> Outside(Interval box, Interval other)
    {
        if (other.Lower is { } low && box.Intersect(new Interval(null, false, low, !other.LowerIncluded)) is { IsEmpty: false } below) yield return below;
        if (other.Upper is { } high && box.Intersect(new Interval(high, !other.UpperIncluded, null, false)) is { IsEmpty: false } above) yield return above;
    }

    private static ExposureBox With(ExposureBox box, Axis axis, AxisLimit limit) => axis switch
    {
        Axis.Strength => box with { Strength = limit },
        Axis.Dilution => box with { Dilution = limit },
        Axis.ExposureTime => box with { ExposureTime = limit },
        Axis.Temperature => box with { Temperature = limit },
        Axis.Ph => box with { Ph = limit },
        _ => box with { Uses = limit },
    };
}

/// <summary>Tries what was proposed: a mend is kept only where it removes the contradiction and makes no other fault.</summary>
/// <remarks>Each trial is a whole check, so only so many are made; what was not tried is kept.</remarks>
internal sealed class MendTrial(KnowledgeData data, IReadOnlyList<Site> sites, IReadOnlyCollection<Finding> findings)
{
    private const int MostRules = 20_000;
    private readonly HashSet<string> _known = [.. findings.Where(finding => finding.IsFault).Select(Key)];
    private int _left = MostRules / Math.Max(1, data.Rules.Count + sites.Sum(site => site.Rules.Count));

    /// <summary>The finding with the mends that hold.</summary>
    public Finding Sift(Finding finding) => finding.Kind != FindingKind.Contradiction ? finding : finding with
    {
        Mends = finding.Mends.Where(mend => _left-- <= 0 || Holds(finding, mend)).ToArray(),
    };

    private bool Holds(Finding finding, Mend mend)
    {
        var mended = data with { Rules = data.Rules.Select(rule => rule.Id == mend.Rule ? mend.ApplyTo(rule) : rule).ToArray() };
        var over = sites.Select(site => site with { Rules = site.Rules.Select(rule => rule.Id == mend.Rule ? mend.ApplyTo(rule) : rule).ToArray() }).ToArray();
        var left = DataCheck.Faults(mended, over);
        return left is not null && left.All(fault => Key(fault) != Key(finding) && _known.Contains(Key(fault)));
    }

    /// <summary>What a fault is about, however it is worded.</summary>
    private static string Key(Finding finding) =>
        finding.Kind is FindingKind.Contradiction or FindingKind.BrokenStandingRule
            ? $"{finding.Kind} {string.Join(" ", finding.Involved.Select(one => one.Place.Id))}"
            : $"{finding.Kind} {finding.Involved[0].Place.Id}";
}

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
