using FsCheck;
using FsCheck.Fluent;
using Interval = Compat.Space.Interval;

namespace Compat.Tests.Space;

public sealed class IntervalTests
{
    private static readonly decimal[] Values = [-1, 0, 0.5m, 1, 2, 3];

    private static readonly Gen<Interval> Intervals = Gen.OneOf(Gen.Constant(default(Interval)), Gen.Constant(Interval.Whole), Stated);

    private static Gen<Interval> Stated =>
        from low in Gen.Elements<decimal?>(null, 0, 1, 2)
        from lowIn in Gen.Elements(true, false)
        from high in Gen.Elements<decimal?>(null, 0, 1, 2)
        from highIn in Gen.Elements(true, false)
        select new Interval(low, lowIn, high, highIn);

    [Theory]
    [InlineData(null, 120, "<= 2 min")]
    [InlineData(30, 90, "30..90 s")]
    [InlineData(60, 3600, "1..60 min")]
    [InlineData(null, 604800, "<= 7 d")]
    [InlineData(0, 60, "0..1 min")]
    [InlineData(90, null, ">= 90 s")]
    public void Seconds_are_written_in_the_largest_unit_that_gives_whole_numbers(int? low, int? high, string written) =>
        Assert.Equal(written, new Interval(low, true, high, true).ToDurations());

    [Theory]
    [InlineData(true, true, true, true)]
    [InlineData(false, true, false, true)]
    [InlineData(true, false, true, false)]
    [InlineData(false, false, false, false)]
    public void AnEndLiesInAsItIsWritten(bool lowerIncluded, bool upperIncluded, bool holdsLower, bool holdsUpper)
    {
        var interval = new Interval(5, lowerIncluded, 70, upperIncluded);
        Assert.Equal(holdsLower, interval.Contains(5));
        Assert.Equal(holdsUpper, interval.Contains(70));
        Assert.True(interval.Contains(5.0000001m));
        Assert.False(interval.Contains(70.0000001m));
    }

    [Fact]
    public void WithoutEndLiesOnlyWhereNoUpperEndIs()
    {
        Assert.True(Interval.AtLeast(60).Contains(Interval.WithoutEnd));
        Assert.True(Interval.Whole.Contains(Interval.WithoutEnd));
        Assert.False(Interval.AtMost(1_000_000).Contains(Interval.WithoutEnd));
    }

    [Fact]
    public void Default_OfAnInterval_HoldsNoValue()
    {
        Interval nothing = default;
        Assert.True(nothing.IsEmpty && !nothing.IsWhole && !nothing.IsPoint);
        Assert.All(Values, value => Assert.False(nothing.Contains(value)));
        Assert.False(nothing.Contains(Interval.WithoutEnd));
        Assert.NotEqual(Interval.Whole, nothing);
        Assert.False(Interval.Whole.IsEmpty);
        Assert.Equal(nothing, (new Interval[1])[0]);
        Assert.Equal(nothing, nothing.Scale(2m));
        Assert.Equal(("none", "none", "none"), (nothing.ToString(), nothing.ToString("s"), nothing.ToDurations()));
        Assert.Equal(Interval.Whole, default(AxisLimit).Range);
        Assert.Equal(default, new AxisLimit(AxisStatement.NotNamed, Interval.Whole));
        Assert.True(AxisLimit.Within(default).Range.IsEmpty);
    }

    [Fact]
    public void Empty_OfTwoIntervals_AddsNothingAndMeetsNothing() => Pairs((a, b) =>
    {
        Assert.Equal(a.Equals(b), b.Equals(a));
        if (a.Equals(b)) Assert.Equal(a.GetHashCode(), b.GetHashCode());
        if (!a.IsEmpty) return;
        Assert.Equal(b, a.Hull(b));
        Assert.Equal(b.IsEmpty ? a : b, b.Hull(a));
        Assert.True(a.Intersect(b).IsEmpty && b.Intersect(a).IsEmpty && a.LiesIn(b));
        Assert.Equal(b.IsEmpty, b.LiesIn(a));
    });

    [Fact]
    public void AnAbsentEndIsNeverIncluded() => Assert.Equal(Interval.Whole, new Interval(null, true, null, true));

    [Fact]
    public void RangesThatTouchAtAnOpenEndShareNothing()
    {
        Assert.True(Interval.Below(5).Intersect(Interval.AtLeast(5)).IsEmpty);
        Assert.Equal(Interval.Exactly(5), Interval.AtMost(5).Intersect(Interval.AtLeast(5)));
    }

    [Fact]
    public void TheIntersectionHoldsExactlyWhatBothHold() => Pairs((a, b) =>
        Assert.All(Values, v => Assert.Equal(a.Contains(v) && b.Contains(v), a.Intersect(b).Contains(v))));

    [Fact]
    public void TheHullHoldsBothAndNoEndOfItsOwn() => Pairs((a, b) =>
    {
        if (a.IsEmpty || b.IsEmpty) return;
        var hull = a.Hull(b);
        Assert.True(a.LiesIn(hull) && b.LiesIn(hull), $"{a} and {b} in {hull}");
        Assert.Contains(hull.Lower, new[] { a.Lower, b.Lower });
        Assert.Contains(hull.Upper, new[] { a.Upper, b.Upper });
    });

    [Fact]
    public void OneLiesInAnotherWhereEveryValueDoes() => Pairs((a, b) =>
    {
        if (!a.LiesIn(b)) return;
        Assert.All(Values, v => Assert.True(!a.Contains(v) || b.Contains(v)));
    });

    [Theory]
    [InlineData("= 5", 5, true, 5, true)]
    [InlineData("5..10", 5, true, 10, true)]
    [InlineData("> 5 and < 10", 5, false, 10, false)]
    [InlineData(">= 5 and < 10", 5, true, 10, false)]
    public void ItIsWrittenAsACuratorWritesIt(string text, int low, bool lowIn, int high, bool highIn) =>
        Assert.Equal(text, new Interval(low, lowIn, high, highIn).ToString());

    [Fact]
    public void OneSidedRangesAreWrittenWithTheirUnit()
    {
        Assert.Equal("<= 70 % v/v", Interval.AtMost(70).ToString("% v/v"));
        Assert.Equal("> 0.05 % w/v", Interval.Above(0.0500m).ToString("% w/v"));
        Assert.Equal("any", Interval.Whole.ToString("°C"));
    }

    [Fact]
    public void TheEndsKeepTheirOpennessWhenTheUnitChanges() =>
        Assert.Equal(new Interval(0.05m, false, 0.1m, true), new Interval(500, false, 1000, true).Scale(0.0001m));

    private static void Pairs(Action<Interval, Interval> holds) =>
        Check.One(Config.QuickThrowOnFailure.WithMaxTest(1_000),
            Prop.ForAll(Arb.From(Gen.Two(Intervals)), (Action<(Interval, Interval)>)(pair => holds(pair.Item1, pair.Item2))));
}
