namespace Compat.Curation.Yaml;

/// <summary>A stretch of a text, in UTF-16 units.</summary>
/// <param name="Start">Offset of its first unit, from 0.</param>
/// <param name="Length">How many units it holds; 0 for a place between two.</param>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>Offset behind its last unit.</summary>
    public int End => Start + Length;

    /// <summary>The stretch from a start to an end, the end not included.</summary>
    public static TextSpan Between(int start, int end) => new(start, Math.Max(0, end - start));

    /// <summary>Whether another stretch lies in this one.</summary>
    public bool Holds(TextSpan other) => other.Start >= Start && other.End <= End;
}
