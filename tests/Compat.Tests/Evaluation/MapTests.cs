using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Evaluation;

public sealed class MapTests
{
    /// <summary>Points inside, on and just outside every boundary.</summary>
    [Fact]
    public void OneCellHoldsEachPointAndSaysWhatThePointQuestionSays() => RandomRun.ForAll(Shape.Map, c =>
    {
        var kb = c.Build();
        var map = kb.Map(c.Question);
        var random = new Random(c.Seed);
        var trees = new ReferenceTrees(c.Data, []);
        var grid = new ReferenceEvaluator(c.Data, c.Sites, c.Question).Samples;
        var basis = trees.Basis(c.Question.Agent!);
        var axes = new Dictionary<Axis, List<decimal>>
        {
            [Axis.Strength] = basis is null ? [1] : grid.On(Axis.Strength, trees.WholeStrength(c.Question.Agent!)),
            [Axis.ExposureTime] = grid.On(Axis.ExposureTime, Interval.Above(0)),
            [Axis.Temperature] = grid.On(Axis.Temperature, Interval.Whole),
            [Axis.Ph] = grid.On(Axis.Ph, Interval.Whole),
            [Axis.Uses] = grid.On(Axis.Uses, Interval.AtLeast(1)),
        };
        var methods = trees.Line(c.Question.Agent!).Any(a => a.Chamber) ? [ApplicationMethod.Chamber] : MethodSet.Ladder.Methods;
        for (var i = 0; i < 12; i++)
        {
            var method = methods[random.Next(methods.Count)];
            var at = axes.ToDictionary(a => a.Key, a => a.Value[random.Next(a.Value.Count)]);
            var cells =
                map.Cells.Where(cell => cell.Method == method && cell.Strength.Contains(at[Axis.Strength]) && cell.ExposureTime.Contains(at[Axis.ExposureTime])
                && cell.Temperature.Contains(at[Axis.Temperature]) && cell.Ph.Contains(at[Axis.Ph]) && cell.Uses.Contains(at[Axis.Uses])).ToArray();
            var point = c.Question with
            {
                Method = method,
                Strength = basis is { } of ? new Strength(Interval.Exactly(at[Axis.Strength]), StrengthUnit.PercentOf(of)) : null,
                ExposureTime = Interval.Exactly(at[Axis.ExposureTime]),
                Temperature = Interval.Exactly(at[Axis.Temperature]),
                Ph = Interval.Exactly(at[Axis.Ph]),
                Uses = (int)at[Axis.Uses],
            };
            Assert.True(cells.Length == 1, $"{cells.Length} cells hold {QuestionText.Of(point)}");
            var expected = new ReferenceEvaluator(c.Data, c.Sites, point).Point();
            Assert.True(
                expected.Verdict == cells[0].Verdict,
                $"reference {expected.Verdict} by {expected.Step}, cell {cells[0].Verdict} {cells[0].Reason.Code} at {QuestionText.Of(point)}");
            if (point.Uses == 1) Assert.Equal(cells[0].Verdict, PointTests.Plainly(kb.Ask(point).Verdict));
        }
    }, share: 4);
}
