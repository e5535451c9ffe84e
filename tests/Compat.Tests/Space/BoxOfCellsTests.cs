using FsCheck;
using FsCheck.Fluent;

namespace Compat.Tests.Space;

/// <summary>Holds cutting, subtraction and joining against single cells: three axes of four cells each.</summary>
public sealed class BoxOfCellsTests
{
    private const int Cells = 4;
    private static readonly Axis[] _axes = [Axis.Strength, Axis.ExposureTime, Axis.Uses];

    private static Box<Run> All { get; } = Made(Run.Of(0, Cells - 1), Run.Of(0, Cells - 1), Run.Of(0, Cells - 1));

    [Fact]
    public void Default_OfABoxAndAnExtent_IsEmpty()
    {
        Assert.True(default(Run).IsEmpty && default(Stretch).IsEmpty && default(Box<Run>).IsEmpty && default(Box<Stretch>).IsEmpty);
        Assert.False(default(Stretch).Meets(Stretch.Whole) || Stretch.Whole.Meets(default) || Stretch.Whole.LiesIn(default));
        Assert.Equal(default, Stretch.Whole.Intersect(default));
        Assert.Empty(Subtraction.MaximalBoxes(default(Box<Run>), []));
    }

    [Fact]
    public void Subtraction_OfHoles_LeavesAllOtherCellsInMaximalBoxes() => ForAll(holes =>
    {
        var left = Subtraction.MaximalBoxes(All, holes);
        Assert.All(Points(All), point => Assert.Equal(!IsIn(holes, point), IsIn(left, point)));
        Assert.All(left, box => Assert.DoesNotContain(holes, hole => hole.Meets(box)));
        Assert.All(left, box => Assert.All(Wider(box), wider => Assert.Contains(holes, hole => hole.Meets(wider))));
        Assert.Equal(left.Count, left.Distinct().Count());
    });

    [Fact]
    public void Subtraction_OfWhatIsAnchored_LeavesBoxesThatHoldTheStart() => ForAll(holes =>
    {
        var left = Subtraction.MaximalBoxes(All, holes, Axis.Uses);
        Assert.All(left, box => Assert.Equal(0, box.Uses.Low));
        Assert.All(Points(All), point => Assert.Equal(
            !holes.Exists(hole => hole.Meets(point with { Uses = Run.Of(0, point.Uses.Low) })), IsIn(left, point)));
    });

    [Fact]
    public void Cutter_AlongWhatCrosses_TilesTheBox() => ForAll(boxes =>
    {
        var visitor = new Tiles(boxes);
        Assert.True(Cutter.Cut(ref visitor, All, boxes));
        Assert.All(Points(All), point => Assert.Single(visitor.Found, tile => point.LiesIn(tile)));
        Assert.All(visitor.Found, tile => Assert.All(boxes, box => Assert.True(!box.Meets(tile) || tile.LiesIn(box))));
    });

    [Fact]
    public void Joining_OfTiles_HoldsTheSameCellsInFewerBoxes() => ForAll(boxes =>
    {
        var visitor = new Tiles(boxes);
        Cutter.Cut(ref visitor, All, boxes);
        var joined = Joining.Of(visitor.Found.ConvertAll(tile => (Box: tile, In: IsIn(boxes, tile))), one => one.In.ToString(),
            one => one.Box, (one, _, box) => (box, one.In));
        Assert.All(Points(All), point => Assert.Equal(IsIn(boxes, point), Assert.Single(joined, one => point.LiesIn(one.Box)).In));
        Assert.All(joined, one => Assert.All(joined.Where(other => other.In == one.In && other != one), other => Assert.False(Touch(one.Box, other.Box))));
    });

    private static void ForAll(Action<List<Box<Run>>> holds)
    {
        var run = Gen.Choose(0, Cells - 1).Two().Select(ends => Run.Of(Math.Min(ends.Item1, ends.Item2), Math.Max(ends.Item1, ends.Item2)));
        var boxes = run.Three().Select(runs => Made(runs.Item1, runs.Item2, runs.Item3)).ListOf(4).Select(list => list.ToList());
        Check.One(Config.QuickThrowOnFailure.WithMaxTest(300).WithQuietOnSuccess(true), Prop.ForAll(Arb.From(boxes), holds));
    }

    private static bool IsIn(List<Box<Run>> boxes, Box<Run> one) => boxes.Exists(box => one.LiesIn(box));

    private static Box<Run> Made(Run strength, Run exposureTime, Run uses) =>
        Box<Run>.Whole with { Strength = strength, ExposureTime = exposureTime, Uses = uses };

    private static IEnumerable<Box<Run>> Points(Box<Run> of) =>
        from strength in Each(of.Strength) from exposureTime in Each(of.ExposureTime) from uses in Each(of.Uses) select Made(strength, exposureTime, uses);

    private static IEnumerable<Run> Each(Run run) => Enumerable.Range(run.Low, run.Length).Select(cell => Run.Of(cell, cell));

    private static IEnumerable<Box<Run>> Wider(Box<Run> box) =>
        from axis in _axes
        from run in new[] { Run.Of(box[axis].Low - 1, box[axis].High), Run.Of(box[axis].Low, box[axis].High + 1) }
        where run.LiesIn(All[axis])
        select box.With(axis, run);

    private static bool Touch(Box<Run> one, Box<Run> other) =>
        Array.Exists(_axes, axis => one.With(axis, default).Equals(other.With(axis, default)) && one[axis].EndsAt(other[axis]));

    private sealed class Tiles(List<Box<Run>> boxes) : ICutVisitor<Run, List<Box<Run>>>
    {
        public List<Box<Run>> Found { get; } = [];

        public Next Look(in Box<Run> box, List<Box<Run>> known, out List<Box<Run>> inside, out Box<Run> crossing)
        {
            var here = box;
            inside = boxes.FindAll(one => one.Meets(here) && !here.LiesIn(one));
            crossing = inside.Count > 0 ? inside[0] : default;
            if (inside.Count == 0) Found.Add(box);
            return inside.Count > 0 ? Next.Halve : Next.Done;
        }
    }
}
