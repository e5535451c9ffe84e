namespace Compat.Space;

/// <summary>A place between values of an axis: just before or just after <c>Numerator / Denominator</c>, or one of its ends. Exact: compared by
/// cross-multiplication.</summary>
/// <remarks>Figures have at most twelve significant digits, so that the products stay inside a decimal.</remarks>
internal sealed class Cut : IComparable<Cut>
{
    // Below 0 at the start of an axis, above 0 at its end, 0 in between.
    private readonly int _end;

    public Cut(decimal numerator, decimal denominator, bool after) => (Numerator, Denominator, After) = (numerator, denominator, after);

    private Cut(int end) => (_end, Denominator) = (end, 1m);

    /// <summary>Before every value of an axis.</summary>
    public static Cut Start { get; } = new(-1);

    /// <summary>After every value of an axis.</summary>
    public static Cut End { get; } = new(1);

    public decimal Numerator { get; }

    public decimal Denominator { get; }

    public bool After { get; }

    /// <summary>Whether it is no place between values, but an end of the axis.</summary>
    public bool IsEnd => _end != 0;

    /// <summary>The value it lies at, rounded as a division is.</summary>
    public decimal Value => Numerator / Denominator;

    public int CompareTo(Cut? other)
    {
        if (ReferenceEquals(this, other) || other is null) return 0;
        if (_end != other._end) return _end - other._end;
        var byValue = Denominator == other.Denominator
            ? Numerator.CompareTo(other.Numerator)
            : (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);
        return byValue != 0 ? byValue : After.CompareTo(other.After);
    }
}

/// <summary>A connected set of values on an axis, between two cuts. The default value is empty.</summary>
internal readonly struct Stretch(Cut from, Cut to) : IExtent<Stretch>, IEquatable<Stretch>
{
    // Invariant: null in the default value only, so that what nobody stated is no whole axis.
    private readonly Cut? _from = from, _to = to;

    /// <summary>Every value of the axis.</summary>
    public static Stretch Whole { get; } = new(Cut.Start, Cut.End);

    /// <summary>Every value above 0.</summary>
    public static Stretch Positive { get; } = Of(Interval.Above(0m));

    Stretch IExtent<Stretch>.Whole => Whole;

    /// <summary>Where it begins; null where the axis does, or where it is empty by default.</summary>
    public Cut? From => _from is { IsEnd: false } ? _from : null;

    /// <summary>Where it ends; null where the axis does, or where it is empty by default.</summary>
    public Cut? To => _to is { IsEnd: false } ? _to : null;

    public bool IsEmpty => _from is null || _from.CompareTo(_to) >= 0;

    public static Stretch Of(Interval interval) => interval.IsEmpty ? default : new(
        interval.Lower is { } low ? new Cut(low, 1m, !interval.LowerIncluded) : Cut.Start,
        interval.Upper is { } high ? new Cut(high, 1m, interval.UpperIncluded) : Cut.End);

    /// <summary>All that a limit holds: what it does not bound is whole.</summary>
    public static Stretch Of(AxisLimit limit) => limit.Statement == AxisStatement.Within ? Of(limit.Range) : Whole;

    public bool Meets(Stretch other) => _from is not null && other._from is not null && Later(_from, other._from).CompareTo(Earlier(_to!, other._to!)) < 0;

    public bool LiesIn(Stretch other) => IsEmpty || (other._from is not null && _from!.CompareTo(other._from) >= 0 && _to!.CompareTo(other._to) <= 0);

    public Stretch Intersect(Stretch other) => _from is null || other._from is null ? default : new(Later(_from, other._from), Earlier(_to!, other._to!));

    public Stretch Before(Stretch other) => _from is null || other._from is null ? this : new(_from, Earlier(_to!, other._from));

    public Stretch After(Stretch other) => _from is null || other._from is null ? this : new(Later(_from, other._to!), _to!);

    /// <summary>With all that lies before it.</summary>
    public Stretch FromStart() => IsEmpty ? default : new(Cut.Start, _to!);

    public bool EndsAt(Stretch next) => _to is not null && next._from is not null && _to.CompareTo(next._from) == 0;

    public Stretch Through(Stretch next) => new(_from!, next._to!);

    /// <summary>By start, then by end.</summary>
    public int CompareTo(Stretch other)
    {
        if (_from is null || other._from is null) return (_from is null ? 0 : 1) - (other._from is null ? 0 : 1);
        var byStart = _from.CompareTo(other._from);
        return byStart != 0 ? byStart : _to!.CompareTo(other._to);
    }

    public bool Equals(Stretch other) => Same(_from, other._from) && Same(_to, other._to);

    public override bool Equals(object? obj) => obj is Stretch other && Equals(other);

    public override int GetHashCode() => ((_from?.Numerator.GetHashCode() ?? 0) * 397) ^ (_to?.Numerator.GetHashCode() ?? 0);

    /// <summary>As an interval; a quotient that is no short decimal is rounded inward to six digits, and its end then lies inside.</summary>
    public Interval ToInterval()
    {
        if (_from is null) return default;
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

    public override string ToString() => ToInterval().ToString();

    private static Cut Later(Cut a, Cut b) => a.CompareTo(b) >= 0 ? a : b;

    private static Cut Earlier(Cut a, Cut b) => a.CompareTo(b) <= 0 ? a : b;

    private static bool Same(Cut? a, Cut? b) => ReferenceEquals(a, b)
        || (a is { IsEnd: false } && b is { IsEnd: false } && a.Numerator == b.Numerator && a.Denominator == b.Denominator && a.After == b.After);
}

/// <summary>The dilutions d at which d times a range of strengths lies in some strengths (clause M10): with some of it, or with all. Exact quotients.</summary>
internal static class Dilutions
{
    /// <summary>The dilutions at which some strength of the range does.</summary>
    /// <param name="atOne">The strengths undiluted.</param>
    /// <param name="inside">The strengths in which it is to lie.</param>
    public static Stretch WhereSome(Interval atOne, Stretch inside)
    {
        if (inside.IsEmpty) return default;
        Cut from = Cut.Start, to = Cut.End;
        if (inside.From is { } least && atOne.Upper is { } high)
        {
            var touches = !least.After && atOne.UpperIncluded;
            if (high > 0m) from = new Cut(least.Numerator, high, !touches);
            else if (least.Numerator > 0m || (least.Numerator == 0m && !touches)) return default;
        }

        if (inside.To is { } most)
        {
            var low = atOne.Lower ?? 0m;
            var touches = most.After && (atOne.Lower is null || atOne.LowerIncluded);
            if (low > 0m) to = new Cut(most.Numerator, low, touches);
            else if (most.Numerator < 0m || (most.Numerator == 0m && !touches)) return default;
        }

        return new Stretch(from, to);
    }

    /// <summary>The dilutions at which every strength of the range does: at which none lies before or after.</summary>
    /// <param name="atOne">The strengths undiluted.</param>
    /// <param name="inside">The strengths in which it is to lie.</param>
    public static Stretch WhereAll(Interval atOne, Stretch inside) => inside.IsEmpty ? default
        : Stretch.Whole.After(WhereSome(atOne, Stretch.Whole.Before(inside))).Before(WhereSome(atOne, Stretch.Whole.After(inside)));
}

/// <summary>Division with the result rounded in a stated direction to six significant digits, unless it is exact in fewer.</summary>
internal static class Rounding
{
    /// <summary>The finest step that a decimal can take: below it fewer than six digits are left.</summary>
    private const decimal Finest = 0.0000000000000000000000000001m;

    public static decimal Up(decimal numerator, decimal denominator, out bool exact) => Round(numerator, denominator, up: true, out exact);

    public static decimal Down(decimal numerator, decimal denominator, out bool exact) => Round(numerator, denominator, up: false, out exact);

    public static decimal Up(decimal value) => Round(value, 1m, up: true, out _, alwaysRound: true);

    public static decimal Down(decimal value) => Round(value, 1m, up: false, out _, alwaysRound: true);

    private static decimal Round(decimal numerator, decimal denominator, bool up, out bool exact, bool alwaysRound = false)
    {
        exact = true;
        if (denominator == 1m && !alwaysRound) return numerator;
        var quotient = numerator / denominator;
        if (quotient == 0m) return 0m;
        var step = 1m;
        var size = Math.Abs(quotient);
        while (size >= 1_000_000m) (size, step) = (size / 10m, step * 10m);
        while (size < 100_000m && step > Finest) (size, step) = (size * 10m, step / 10m);
        var whole = decimal.Floor(quotient / step) * step;
        exact = whole * denominator == numerator;
        if (exact) return whole;
        return up ? whole + step : whole;
    }
}
