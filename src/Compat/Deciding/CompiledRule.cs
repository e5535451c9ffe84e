using Compat.Snapshots;

namespace Compat.Deciding;

/// <summary>A rule with its references as numbers and its box as runs of cells.</summary>
internal sealed class CompiledRule
{
    private readonly int _any;

    public CompiledRule(Rule rule)
    {
        Rule = rule;
        IsSilent = rule.When.IsSilent;
        if (rule.When.Methods.Statement == AxisStatement.Any) _any = 1 << (int)Axes.ContactTime;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            if (rule.When.On(axis).Statement == AxisStatement.Any) _any |= 1 << (int)axis;
    }

    public Rule Rule { get; }

    public required int Index { get; init; }

    /// <summary>The agent class, or -1 for a product's rule.</summary>
    public required int Agent { get; init; }

    /// <summary>The box with conventions filled in.</summary>
    public required Box<Stretch> Box { get; init; }

    /// <summary>The cells of its box, which they fill.</summary>
    public required Box<Run> Cells { get; init; }

    public MethodSet Methods => Cells.Methods;

    /// <summary>Whether its source is silent on an axis or on the methods.</summary>
    public bool IsSilent { get; }

    /// <summary>Whether it says `any` on an axis; null stands for the methods.</summary>
    public bool SaysAny(Axis? axis) => (_any & (1 << (int)(axis ?? Axes.ContactTime))) != 0;

    public int[] SeenWith { get; init; } = [];

    /// <summary>The rules that this one overrides, by their <see cref="Index"/>.</summary>
    public required int[] Overridden { get; init; }

    public bool Overrides(CompiledRule other) => Array.IndexOf(Overridden, other.Index) >= 0;

    public bool Allows => Rule.Allows;

    public bool OfInstructions => Rule.Edition is not null;
}

/// <summary>Fills in conventions and turns rules into runs of cells.</summary>
internal static class RuleCompiler
{
    /// <exception cref="SnapshotException">It has a boundary that its snapshot does not list.</exception>
    public static CompiledRule Compile(Rule rule, int index, CompiledBase kb)
    {
        var box = BoxOf(rule, kb);
        if (!kb.Grid.Has(box)) throw new SnapshotException("a rule has a boundary that is not listed");
        return new CompiledRule(rule)
        {
            Index = index,
            Agent = rule.Agent is null ? -1 : kb.Agents[rule.Agent.Value],
            Box = box,
            Cells = kb.Grid.CellsOf(box),
            SeenWith = Nodes(rule.SeenWith, kb),
            Overridden = kb.IndexesOf(rule.Overrides),
        };
    }

    /// <summary>The box of a rule with conventions filled in.</summary>
    public static Box<Stretch> BoxOf(Rule rule, CompiledBase kb)
    {
        var methods = rule.When.Methods.Statement switch
        {
            AxisStatement.Within => rule.When.Methods.Methods,
            AxisStatement.Unstated => kb.Convention(ConventionKey.UnstatedMethods).Methods,
            _ => MethodSet.All,
        };
        return Box<Stretch>.Of(methods, axis =>
        {
            var limit = rule.When.On(axis);
            var range = limit.Statement == AxisStatement.Unstated ? Unstated(rule, axis, kb) : limit.Range;
            return Stretch.Of(axis == Axis.Uses ? WholeNumbers(range) : range);
        });
    }

    private static int[] Nodes(IReadOnlyList<AgentId> agents, CompiledBase kb)
    {
        var nodes = new int[agents.Count];
        for (var i = 0; i < nodes.Length; i++) nodes[i] = kb.Agents[agents[i].Value];
        return nodes;
    }

    /// <summary>Uses are whole numbers: every end becomes one of the form 'up to and with n', so that touching rules share their cut.</summary>
    public static Interval WholeNumbers(Interval uses)
    {
        decimal? above = uses.Lower is { } low ? (uses.LowerIncluded ? decimal.Ceiling(low) - 1 : decimal.Floor(low)) : null;
        decimal? upTo = uses.Upper is { } high ? (uses.UpperIncluded ? decimal.Floor(high) : decimal.Ceiling(high) - 1) : null;
        return new(above, false, upTo, true);
    }

    /// <summary>The pH of a product as it is used: over every state on record but the 1 % test dilution; null where there is none.</summary>
    public static Interval? PhHull(Product product)
    {
        Interval? hull = null;
        foreach (var measured in product.Ph.Where(ph => ph.Of != PhState.OnePercent
            && (!product.NeedsActivation || ph.Of is PhState.Activated or PhState.InUse)))
            hull = hull?.Hull(measured.Value) ?? measured.Value;
        return hull;
    }

    private static Interval Unstated(Rule rule, Axis axis, CompiledBase kb) => axis switch
    {
        Axis.Strength => rule.Agent is null ? Interval.Whole : kb.Agent(rule.Agent).Strength ?? Interval.Exactly(-1m),
        Axis.Dilution => kb.Convention(ConventionKey.UnstatedDilution).Range,
        Axis.ExposureTime => kb.Convention(ConventionKey.UnstatedExposureTime).Range,
        Axis.Temperature => kb.Convention(ConventionKey.UnstatedTemperature).Range,
        Axis.Ph => (rule.Product is null ? kb.Agent(rule.Agent!).Ph : PhHull(kb.Product(rule.Product)))
            ?? kb.Convention(ConventionKey.UnstatedPh).Range,
        _ => kb.Convention(ConventionKey.UnstatedUses).Range,
    };
}
