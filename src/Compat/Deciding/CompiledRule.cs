namespace Compat.Deciding;

/// <summary>A rule with its references as numbers and its box as runs of cells. Axes are numbered as <see cref="Axis"/>.</summary>
internal sealed class CompiledRule
{
    public const int AxisCount = 6;

    public required Rule Rule { get; init; }

    public required int Index { get; init; }

    /// <summary>The agent class, or -1 for a product's rule.</summary>
    public required int Agent { get; init; }

    /// <summary>The box with conventions filled in.</summary>
    public required Interval[] Box { get; init; }

    public required MethodSet Methods { get; init; }

    /// <summary>Whether an axis says `any` (index <see cref="AxisCount"/> is the method).</summary>
    public required bool[] SaysAny { get; init; }

    public int[] SeenWith { get; init; } = [];

    /// <summary>The rules that this one overrides, by their <see cref="Index"/>.</summary>
    public required int[] Overridden { get; init; }

    public bool Overrides(CompiledRule other) => Array.IndexOf(Overridden, other.Index) >= 0;

    public int[] Low { get; } = new int[AxisCount];

    public int[] High { get; } = new int[AxisCount];

    public bool Allows => Rule.Allows;

    public bool OfInstructions => Rule.Edition is not null;
}
