using System.Globalization;

namespace Compat.Space;

/// <summary>A connected set of values on one axis, each end open, closed or absent.</summary>
/// <remarks>
/// An absent upper end reaches without end (an exposure time without end lies in it). Immutable; equal when ends and openness are equal.
/// The default value is empty: what nobody stated is no value, never every value. An interval may be empty otherwise too
/// (<see cref="IsEmpty"/>); validation refuses every empty one where a record or a question states one.
/// </remarks>
public readonly record struct Interval
{
    // Invariant: false in the default value only, so that memory nobody wrote to is no whole axis.
    private readonly bool _made;

    private static readonly (decimal Seconds, string Unit)[] TimeUnits = [(86400m, "d"), (3600m, "h"), (60m, "min")];

    /// <summary>The value that stands for 'without end' on an axis: above every value that can be stated.</summary>
    public const decimal WithoutEnd = decimal.MaxValue;

    /// <summary>Makes an interval.</summary>
    /// <param name="lower">Lower end; null where there is none.</param>
    /// <param name="lowerIncluded">Whether the lower end itself lies in it.</param>
    /// <param name="upper">Upper end; null where there is none.</param>
    /// <param name="upperIncluded">Whether the upper end itself lies in it.</param>
    public Interval(decimal? lower, bool lowerIncluded, decimal? upper, bool upperIncluded)
    {
        _made = true;
        Lower = lower;
        LowerIncluded = lower is not null && lowerIncluded;
        Upper = upper;
        UpperIncluded = upper is not null && upperIncluded;
    }

    /// <summary>Every value of the axis.</summary>
    public static Interval Whole => new(null, false, null, false);

    /// <summary>The lower end, or null where there is none.</summary>
    public decimal? Lower { get; }

    /// <summary>Whether the lower end lies in the interval.</summary>
    public bool LowerIncluded { get; }

    /// <summary>The upper end, or null where there is none.</summary>
    public decimal? Upper { get; }

    /// <summary>Whether the upper end lies in the interval.</summary>
    public bool UpperIncluded { get; }

    /// <summary>Whether every value of the axis lies in it: no end is stated.</summary>
    public bool IsWhole => _made && Lower is null && Upper is null;

    /// <summary>Whether no value lies in it.</summary>
    public bool IsEmpty => !_made || (Lower is { } low && Upper is { } high && (low > high || (low == high && !(LowerIncluded && UpperIncluded))));

    /// <summary>Whether exactly one value lies in it.</summary>
    public bool IsPoint => Lower is { } low && Upper == low && LowerIncluded && UpperIncluded;

    /// <summary>The interval that holds one value only.</summary>
    public static Interval Exactly(decimal value) => new(value, true, value, true);

    /// <summary>Both ends included.</summary>
    public static Interval Closed(decimal lower, decimal upper) => new(lower, true, upper, true);

    /// <summary>Everything up to a value, itself included.</summary>
    public static Interval AtMost(decimal upper) => new(null, false, upper, true);

    /// <summary>Everything below a value.</summary>
    public static Interval Below(decimal upper) => new(null, false, upper, false);

    /// <summary>Everything from a value on, itself included.</summary>
    public static Interval AtLeast(decimal lower) => new(lower, true, null, false);

    /// <summary>Everything above a value.</summary>
    public static Interval Above(decimal lower) => new(lower, false, null, false);

    /// <summary>Whether a value lies in the interval. <see cref="WithoutEnd"/> does where there is no upper end.</summary>
    public bool Contains(decimal value) =>
        _made && (Lower is not { } low || value > low || (LowerIncluded && value == low))
        && (Upper is not { } high || value < high || (UpperIncluded && value == high));

    /// <summary>The values that lie in both; may be empty.</summary>
    public Interval Intersect(Interval other)
    {
        if (!_made || !other._made) return default;
        var low = Lower;
        var lowIn = LowerIncluded;
        if (other.Lower is { } otherLow && (low is not { } l || otherLow > l || (otherLow == l && !other.LowerIncluded)))
            (low, lowIn) = (otherLow, other.LowerIncluded);
        var high = Upper;
        var highIn = UpperIncluded;
        if (other.Upper is { } otherHigh && (high is not { } h || otherHigh < h || (otherHigh == h && !other.UpperIncluded)))
            (high, highIn) = (otherHigh, other.UpperIncluded);
        return new(low, lowIn, high, highIn);
    }

    /// <summary>Whether every value of this interval lies in the other. An empty interval lies in any: ask <see cref="IsEmpty"/> first where something is
    /// permitted by it.</summary>
    public bool LiesIn(Interval other) => IsEmpty || Intersect(other).Equals(this);

    /// <summary>The smallest interval that holds both; an empty one adds nothing.</summary>
    public Interval Hull(Interval other)
    {
        if (IsEmpty) return other;
        if (other.IsEmpty) return this;
        decimal? low = null;
        var lowIn = false;
        if (Lower is { } a && other.Lower is { } b)
            (low, lowIn) = a < b ? (a, LowerIncluded) : b < a ? (b, other.LowerIncluded) : (a, LowerIncluded || other.LowerIncluded);
        decimal? high = null;
        var highIn = false;
        if (Upper is { } c && other.Upper is { } d)
            (high, highIn) = c > d ? (c, UpperIncluded) : d > c ? (d, other.UpperIncluded) : (c, UpperIncluded || other.UpperIncluded);
        return new(low, lowIn, high, highIn);
    }

    /// <summary>Both ends multiplied by a number above 0 (a change of unit).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not above 0, or the ends become too large for it.</exception>
    public Interval Scale(decimal factor)
    {
        if (factor <= 0m) throw new ArgumentOutOfRangeException(nameof(factor), factor, "a number above 0");
        try
        {
            return !_made ? default : new(Lower * factor, LowerIncluded, Upper * factor, UpperIncluded);
        }
        catch (OverflowException)
        {
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "the ends become too large");
        }
    }

    /// <summary>The interval as a curator writes it, without unit: <c>any</c>, <c>none</c> for the default value, <c>= 5</c>, <c>5..10</c>, <c>&lt; 5</c>,
    /// <c>&gt; 5 and &lt; 10</c>.</summary>
    public override string ToString() => ToString("");

    /// <summary>The interval as a curator writes it, with a unit behind each figure.</summary>
    public string ToString(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (!_made) return "none";
        var tail = unit.Length == 0 ? "" : " " + unit;
        if (IsWhole) return "any";
        if (IsPoint) return "= " + Figure(Lower!.Value) + tail;
        if (Lower is { } low && Upper is { } high)
        {
            return LowerIncluded && UpperIncluded
                ? Figure(low) + ".." + Figure(high) + tail
                : (LowerIncluded ? ">= " : "> ") + Figure(low) + tail + " and " + (UpperIncluded ? "<= " : "< ") + Figure(high) + tail;
        }

        return Lower is { } only
            ? (LowerIncluded ? ">= " : "> ") + Figure(only) + tail
            : (UpperIncluded ? "<= " : "< ") + Figure(Upper!.Value) + tail;
    }

    /// <summary>Whether both hold the same values by the same ends.</summary>
    public bool Equals(Interval other) =>
        _made == other._made && Lower == other.Lower && Upper == other.Upper && LowerIncluded == other.LowerIncluded && UpperIncluded == other.UpperIncluded;

    /// <summary>A hash of both ends.</summary>
    public override int GetHashCode() =>
        (((Lower.GetValueOrDefault().GetHashCode() * 397) ^ Upper.GetValueOrDefault().GetHashCode()) * 4) + (LowerIncluded ? 2 : 0) + (UpperIncluded ? 1 : 0);

    internal static string Figure(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);

    /// <summary>The interval of seconds, in the largest of s, min, h and d in which its ends are whole numbers.</summary>
    internal string ToDurations()
    {
        var ends = new[] { Lower, Upper }.OfType<decimal>().Where(end => end != 0 && end != WithoutEnd).ToArray();
        var (size, unit) = Array.Find(TimeUnits, one => ends.Length > 0
            && Array.TrueForAll(ends, end => end >= one.Seconds && end % one.Seconds == 0)) is { Unit: not null } found ? found : (1m, "s");
        return !_made ? ToString() : new Interval(In(Lower), LowerIncluded, In(Upper), UpperIncluded).ToString(unit);

        decimal? In(decimal? end) => end == WithoutEnd ? end : end / size;
    }

    /// <summary>Seconds, in the largest of s, min, h and d that gives a whole number.</summary>
    internal static string Duration(decimal seconds)
    {
        foreach (var (size, unit) in TimeUnits)
            if (seconds >= size && seconds % size == 0) return Figure(seconds / size) + " " + unit;
        return Figure(seconds) + " s";
    }
}
