using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class BoxTests
{
    private static readonly Interval AnyDilution = new(0, false, 1, true);

    [Fact]
    public void EveryPointInsideAListedBoxIsAllowedWhenAsked() => RandomRun.ForAll(Shape.Region, c =>
    {
        var kb = c.Build();
        var random = new Random(c.Seed);
        var grid = new ReferenceEvaluator(c.Data, c.Sites, c.Question).Samples;
        foreach (var box in kb.Ask(c.Question).Boxes.Take(6))
        {
            var point = PointIn(box, c, grid, random);
            var said = kb.Ask(point).Verdict;
            Assert.True(said >= Verdict.AllowedWithinLimits, $"{said} at {QuestionText.Of(point)} inside {Text(box)}");
            var true_ = new ReferenceEvaluator(c.Data, c.Sites, point).Point();
            Assert.True(true_.Verdict == Verdict.Allowed, $"reference {true_.Verdict} by {true_.Step} at {QuestionText.Of(point)} inside {Text(box)}");
        }
    }, share: 3);

    [Fact]
    public void TheListedBoxesHoldTheGoodChoicesAndNoOthers() => RandomRun.ForAll(Shape.Region, c =>
    {
        var answer = c.Build().Ask(c.Question);
        if (answer.BoxCount > 32) return;
        var reference = new ReferenceEvaluator(c.Data, c.Sites, c.Question);
        foreach (var choice in reference.Choices())
        {
            var verdict = reference.Of(choice, Interval.Closed(1, c.Question.Uses ?? 1));
            if (choice.Dilution is { IsPoint: true, Lower: { } d } && answer.Boxes.Any(b => IsNearAnEnd(d, b.Dilution))) continue;
            var listed = answer.Boxes.Any(b => Holds(b, choice));
            Assert.True(
                listed == (verdict == Verdict.Allowed),
                $"{choice} is {verdict}, {(listed ? "" : "not ")}listed; boxes:\n{string.Join("\n", answer.Boxes.Select(Text))}");
        }
    }, share: 3);

    [Fact]
    public void ListedBoxesAreMaximal() => RandomRun.ForAll(Shape.Region, c =>
    {
        var reference = new ReferenceEvaluator(c.Data, c.Sites, c.Question);
        var grid = reference.Samples;
        foreach (var box in c.Build().Ask(c.Question).Boxes.Take(4))
        {
            var exposureTimes = c.Question.ExposureTime is null ? grid.On(Axis.ExposureTime, box.ExposureTime).Select(Interval.Exactly).ToArray()
                : [c.Question.ExposureTime.Value];
            var dilutions = c.Question.Dilution is null && box.Dilution is { IsPoint: false } free ? grid.On(Axis.Dilution, free).Select(Interval.Exactly)
                .ToArray() : [box.Dilution ?? Interval.Exactly(1)];
            if (c.Question.ExposureTime is null)
            {
                foreach (var outside in JustOutside(grid.On(Axis.ExposureTime, Interval.Above(0)), box.ExposureTime))
                    Assert.False(
                        dilutions.All(d => reference.Of(new(box.Method, Interval.Exactly(outside), d), box.Uses) == Verdict.Allowed),
                        $"exposure time {outside} could join {Text(box)}");
            }

            if (c.Question.Dilution is null && box.Dilution is { IsPoint: false })
            {
                var label = c.Site!.Products[0].Dilution ?? AnyDilution;
                foreach (var outside in JustOutside(grid.On(Axis.Dilution, label), box.Dilution!.Value).Where(d => !IsNearAnEnd(d, box.Dilution)))
                    Assert.False(
                        exposureTimes.All(r => reference.Of(new(box.Method, r, Interval.Exactly(outside)), box.Uses) == Verdict.Allowed),
                        $"dilution {outside} could join {Text(box)}");
            }

            if (c.Question.Uses is null && box.Uses.Upper is { } last)
            {
                var more = Interval.Closed(1, last + 1);
                Assert.False(
                    exposureTimes.All(r => dilutions.All(d => reference.Of(new(box.Method, r, d), more) == Verdict.Allowed)),
                    $"one more use could join {Text(box)}");
            }
        }
    }, share: 3);

    private static IEnumerable<decimal> JustOutside(List<decimal> grid, Interval range)
    {
        var inside = grid.Where(range.Contains).ToArray();
        if (inside.Length == 0) yield break;
        var (first, last) = (grid.IndexOf(inside[0]), grid.IndexOf(inside[^1]));
        if (first > 0) yield return grid[first - 1];
        if (last < grid.Count - 1) yield return grid[last + 1];
    }

    private static bool Holds(AllowedBox box, Choice choice) => box.Method == choice.Method && box.Uses.Contains(1)
        && choice.ExposureTime.LiesIn(box.ExposureTime) && (box.Dilution is not { } diluted || choice.Dilution.LiesIn(diluted));

    /// <summary>Limits of a dilution are shown rounded inward to six digits: what lies between is not promised.</summary>
    private static bool IsNearAnEnd(decimal d, Interval? range) =>
        range is { } r
            && ((r.Lower is { } low && d != low && Math.Abs(d - low) <= d * 0.00001m)
            || (r.Upper is { } high && d != high && Math.Abs(d - high) <= d * 0.00001m));

    private static Question PointIn(AllowedBox box, Case c, Samples grid, Random random)
    {
        decimal One(Axis axis, Interval range)
        {
            var values = grid.On(axis, range);
            var value = values[random.Next(values.Count)];

            // A question takes 18 digits: a sample between two ends may have more.
            return decimal.Round(value, 15) is var near && range.Contains(near) ? near : value;
        }

        var agent = c.Question.Agent is { } a ? new ReferenceTrees(c.Data, []).Basis(a) : null;
        return c.Question with
        {
            Method = box.Method,
            ExposureTime = Interval.Exactly(One(Axis.ExposureTime, box.ExposureTime)),
            Temperature = Interval.Exactly(One(Axis.Temperature, box.Temperature)),
            Ph = Interval.Exactly(One(Axis.Ph, box.Ph)),
            Uses = (int)One(Axis.Uses, box.Uses),
            Strength = agent is { } basis ? new Strength(Interval.Exactly(One(Axis.Strength, box.Strength!.Value)), StrengthUnit.PercentOf(basis)) : null,
            Dilution = c.Question.Product is null ? null : Interval.Exactly(One(Axis.Dilution, box.Dilution!.Value)),
        };
    }

    private static string Text(AllowedBox b) =>
        $"{b.Method}, strength {b.Strength}, dilution {b.Dilution}, exposure time {b.ExposureTime}, temperature {b.Temperature}, pH {b.Ph}, uses {b.Uses}";
}
