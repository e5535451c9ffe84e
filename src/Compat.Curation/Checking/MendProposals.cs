namespace Compat.Curation.Checking;

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
