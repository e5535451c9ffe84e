using FsCheck;
using FsCheck.Fluent;
using Interval = Compat.Space.Interval;

namespace Compat.Tests.Space;

using Dilutions = Compat.Space.Dilutions;

/// <summary>Holds the dilutions at which some or all of a range lies in some strengths against single dilutions.</summary>
public sealed class DilutionsTests
{
    [Fact]
    public void WhereSomeAndWhereAll_OfEveryDilution_SayWhatItDoes()
    {
        int some = 0, all = 0;
        ForAll((atOne, inside) =>
        {
            var (reaching, holding) = (Dilutions.WhereSome(atOne, inside), Dilutions.WhereAll(atOne, inside));
            foreach (var (share, of) in from share in Enumerable.Range(1, 12) from of in Enumerable.Range(1, 6) select (share, of))
            {
                var (dilution, diluted) = (new Stretch(new Cut(share, of, after: false), new Cut(share, of, after: true)), Times(atOne, share, of));
                Assert.Equal(diluted.Meets(inside), dilution.Meets(reaching));
                Assert.Equal(diluted.LiesIn(inside), dilution.Meets(holding));
                some += dilution.Meets(reaching) ? 1 : 0;
                all += dilution.Meets(holding) ? 1 : 0;
            }
        });
        Assert.True(all > 1000 && some > all, $"{all} of {some}");
    }

    private static Stretch Times(Interval range, int share, int of) => new(
        range.Lower is { } low ? new Cut(low * share, of, !range.LowerIncluded) : Cut.Start,
        range.Upper is { } high ? new Cut(high * share, of, range.UpperIncluded) : Cut.End);

    private static void ForAll(Action<Interval, Stretch> holds)
    {
        var figure = Gen.Choose(0, 6).Select(n => (decimal)n);
        var included = Gen.Elements(true, false);
        var range = from a in figure
                    from b in figure
                    from low in included
                    from high in included
                    from bounded in Gen.Choose(0, 4)
                    select new Interval(Math.Min(a, b), low, bounded == 0 ? null : Math.Max(a, b), high);
        var inside = from one in range from open in Gen.Choose(0, 4) select open == 0 ? new Interval(null, false, one.Upper, one.UpperIncluded) : one;
        var pairs = from one in range from other in inside where !one.IsEmpty && !other.IsEmpty select (one, Stretch.Of(other));
        Check.One(Config.QuickThrowOnFailure.WithMaxTest(1000).WithQuietOnSuccess(true), Prop.ForAll(Arb.From(pairs), pair => holds(pair.one, pair.Item2)));
    }
}
