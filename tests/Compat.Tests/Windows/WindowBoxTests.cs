using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Windows;

/// <summary>The listed boxes of windows against the slow reference, on random cases.</summary>
public sealed class WindowBoxTests
{
    private const int PointsOfACase = 12;

    [Fact]
    public void EveryPointInsideAListedBoxIsInTheWindow() => RandomRun.ForAll(Shape.Whole, c =>
    {
        var window = c.Build().WindowOf(c.Question);
        if (!window.IsOpen) return;
        var reference = new ReferenceWhole(c.Data, c.Sites, c.Question);
        var random = new Random(c.Seed);
        foreach (var box in window.Boxes.Take(4))
        {
            for (var i = 0; i < PointsOfACase / 2; i++)
            {
                if (PointIn(reference, c.Question, box, random) is { } at)
                    Assert.True(reference.InWindow(at), $"{at} lies in {box} but not in the window\n{c}");
            }
        }
    }, share: 20);

    [Fact]
    public void EveryPointOfTheWindowLiesInAListedBox() => RandomRun.ForAll(Shape.Whole, c =>
    {
        var window = c.Build().WindowOf(c.Question);
        if (window.BoxCount > window.Boxes.Count) return;
        var reference = new ReferenceWhole(c.Data, c.Sites, c.Question);
        var random = new Random(c.Seed);
        var whole = new WindowBox
        {
            Method = ApplicationMethod.DampWipe,
            ContactTime = Interval.Above(0),
            ExposureTime = Interval.Above(0),
            Uses = Interval.AtLeast(1),
            Dilution = reference.DilutionsAtHand,
            Temperature = reference.TemperaturesAtHand,
            Ph = reference.PhAtHand ?? Interval.Whole,
        };
        for (var i = 0; i < PointsOfACase; i++)
        {
            var methods = reference.Methods;
            if (PointIn(reference, c.Question, whole with { Method = methods[random.Next(methods.Length)] }, random) is not { } at || !reference.InWindow(at))
                continue;
            Assert.True(window.Boxes.Any(box => Holds(box, at, c.Question)), $"{at} is in the window but in no box\n{c}");
        }
    }, share: 20);

    [Fact]
    public void ExposureTimeIsNeverShorterThanContactTime() => RandomRun.ForAll(Shape.Whole, c =>
    {
        foreach (var box in c.Build().WindowOf(c.Question).Boxes)
        {
            Assert.True((box.ExposureTime.Lower ?? 0) >= (box.ContactTime.Lower ?? 0), $"{box}\n{c}");
            Assert.True(
                box.ExposureTime.Upper is not { } most || most >= (box.ContactTime.Upper ?? box.ContactTime.Lower ?? 0)
                || c.Question.ExposureTime is not null, $"{box}\n{c}");
        }
    }, share: 10);

    private static bool Holds(WindowBox box, WholePoint at, Question question) =>
        box.Method == at.Method && box.ContactTime.Contains(at.ContactTime) && box.Uses.Contains(at.Uses)
        && (question.ExposureTime is not null || box.ExposureTime.Contains(at.ExposureTime.Lower!.Value))
        && (box.Dilution is not { } dilution || question.Dilution is not null || dilution.Contains(at.Dilution))
        && (question.Temperature is not null || box.Temperature.Contains(at.Temperature.Lower!.Value))
        && (at.Ph is null || question.Ph is not null || box.Ph.Contains(at.Ph.Value.Lower!.Value));

    /// <summary>A point of a box at or between boundaries; null where an axis has none there.</summary>
    private static WholePoint? PointIn(ReferenceWhole reference, Question question, WindowBox box, Random random)
    {
        decimal? One(IEnumerable<decimal> of) => of.ToArray() is { Length: > 0 } all ? all[random.Next(all.Length)] : null;
        if (One(reference.ContactTimes().Concat(Ends(box.ContactTime)).Where(box.ContactTime.Contains)) is not { } wet) return null;
        var exposureTime = question.ExposureTime;
        if (exposureTime is null
            && One(reference.Samples.On(Axis.ExposureTime, box.ExposureTime).Append(wet)
            .Where(r => r >= wet && box.ExposureTime.Contains(r))) is { } r) exposureTime = Interval.Exactly(r);
        var temperature = question.Temperature;
        if (temperature is null && One(reference.Samples.On(Axis.Temperature, box.Temperature)) is { } t) temperature = Interval.Exactly(t);
        var ph = question.Ph;
        if (question.Agent is not null && ph is null && One(reference.Samples.On(Axis.Ph, box.Ph)) is { } p) ph = Interval.Exactly(p);
        var uses = question.Uses ?? (int?)One(reference.Samples.On(Axis.Uses, box.Uses).Where(u => u < 1_000_000));
        if (One(reference.Samples.On(Axis.Dilution, question.Dilution is { } d ? d : box.Dilution ?? Interval.Exactly(1))) is not { } dilution) return null;
        return exposureTime is null || temperature is null
            || uses is null ? null : new(box.Method, dilution, exposureTime.Value, temperature.Value, ph, uses.Value, wet);
    }

    private static IEnumerable<decimal> Ends(Interval i) => new[] { i.Lower, i.Upper }.OfType<decimal>();
}
