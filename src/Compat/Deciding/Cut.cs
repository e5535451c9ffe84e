namespace Compat.Deciding;

/// <summary>A place between values of an axis: just before or just after <c>Numerator / Denominator</c>. Exact: compared by cross-multiplication.</summary>
/// <remarks>Figures have at most twelve significant digits, so that the products stay inside a decimal.</remarks>
internal readonly struct Cut(decimal numerator, decimal denominator, bool after) : IComparable<Cut>
{
    public decimal Numerator { get; } = numerator;

    public decimal Denominator { get; } = denominator;

    public bool After { get; } = after;

    public static Cut Before(decimal value) => new(value, 1m, false);

    public static Cut Behind(decimal value) => new(value, 1m, true);

    public int CompareTo(Cut other)
    {
        var byValue = Denominator == other.Denominator
            ? Numerator.CompareTo(other.Numerator)
            : (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);
        return byValue != 0 ? byValue : After.CompareTo(other.After);
    }
}

/// <summary>A connected set of values between two cuts; an absent cut is the end of the axis.</summary>
internal readonly struct Span(Cut? from, Cut? to)
{
    public Cut? From { get; } = from;

    public Cut? To { get; } = to;

    public static Span Whole => default;

    /// <summary>No value at all.</summary>
    public static Span Nothing { get; } = new(Cut.Behind(0m), Cut.Behind(0m));

    public bool IsEmpty => From is { } from && To is { } to && from.CompareTo(to) >= 0;

    public static Span Of(Interval interval) => interval.IsEmpty ? Nothing : new(
        interval.Lower is { } low ? new Cut(low, 1m, !interval.LowerIncluded) : null,
        interval.Upper is { } high ? new Cut(high, 1m, interval.UpperIncluded) : null);

    public Span Intersect(Span other) => new(
        From is not { } a ? other.From : other.From is { } b && b.CompareTo(a) > 0 ? b : a,
        To is not { } c ? other.To : other.To is { } d && d.CompareTo(c) < 0 ? d : c);

    public bool Meets(Span other) => !Intersect(other).IsEmpty;

    public bool LiesIn(Span other) =>
        (other.From is not { } b || (From is { } a && a.CompareTo(b) >= 0))
        && (other.To is not { } d || (To is { } c && c.CompareTo(d) <= 0));

    /// <summary>As an interval; a quotient that is no short decimal is rounded inward to six digits, and its end then lies inside.</summary>
    public Interval ToInterval()
    {
        decimal? low = null, high = null;
        bool lowIn = false, highIn = false;
        if (From is { } from)
        {
            low = Rounding.Up(from.Numerator, from.Denominator, out var exact);
            lowIn = !exact || !from.After;
        }

        if (To is { } to)
        {
            high = Rounding.Down(to.Numerator, to.Denominator, out var exact);
            highIn = !exact || to.After;
        }

        return new(low, lowIn, high, highIn);
    }
}
