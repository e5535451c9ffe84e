namespace Compat.Space;

/// <summary>A run of neighbouring cells on an axis: from <paramref name="low"/> up to, not with, <paramref name="end"/>. The default value is empty.</summary>
internal readonly struct Run(int low, int end) : IExtent<Run>, IEquatable<Run>
{
    /// <summary>The first cell.</summary>
    public int Low { get; } = low;

    /// <summary>The cell behind the last.</summary>
    public int End { get; } = end;

    /// <summary>The last cell.</summary>
    public int High => End - 1;

    public int Length => End - Low;

    /// <summary>Every cell of an axis.</summary>
    public static Run Whole => new(0, int.MaxValue);

    Run IExtent<Run>.Whole => Whole;

    public bool IsEmpty => Low >= End;

    /// <summary>The cells from one to another, both included.</summary>
    public static Run Of(int low, int high) => new(low, high + 1);

    public bool Meets(Run other) => Math.Max(Low, other.Low) < Math.Min(End, other.End);

    public bool LiesIn(Run other) => IsEmpty || (Low >= other.Low && End <= other.End);

    public Run Intersect(Run other) => new(Math.Max(Low, other.Low), Math.Min(End, other.End));

    public Run Before(Run other) => new(Low, Math.Min(End, other.Low));

    public Run After(Run other) => new(Math.Max(Low, other.End), End);

    public bool EndsAt(Run next) => End == next.Low;

    public Run Through(Run next) => new(Low, next.End);

    /// <summary>By first cell, then by last.</summary>
    public int CompareTo(Run other) => Low != other.Low ? Low.CompareTo(other.Low) : End.CompareTo(other.End);

    public bool Equals(Run other) => Low == other.Low && End == other.End;

    public override bool Equals(object? obj) => obj is Run other && Equals(other);

    public override int GetHashCode() => (Low * 397) ^ End;

    public override string ToString() => $"{Low}..{High}";
}
