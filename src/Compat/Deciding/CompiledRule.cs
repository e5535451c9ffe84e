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
