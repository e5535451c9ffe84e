using Compat.Tests.Reference;
using Google.OrTools.Sat;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>One exposure as ranks on every axis.</summary>
internal sealed class SolverExposure
{
    private readonly ReferenceEvaluator _asked;
    private readonly Question _question;
    private readonly Dictionary<Axis, (RankTable Table, IntVar Rank)> _axes = [];
    private readonly Dictionary<(Axis, Interval), ILiteral> _within = [];

    public SolverExposure(ReferenceEvaluator asked, Question question, IReadOnlyList<Stage> stages, IReadOnlyList<StandingRule> standing)
    {
        _asked = asked;
        _question = question;
        var judged = asked.Judged(question.ExposureTime!.Value);
        foreach (var axis in new[] { Axis.Strength, Axis.ExposureTime, Axis.Temperature, Axis.Ph, Axis.Uses })
        {
            var domain = axis switch
            {
                Axis.Strength => question.Strength?.Range ?? Interval.Whole,
                Axis.ExposureTime => question.ExposureTime!.Value,
                Axis.Temperature => question.Temperature!.Value,
                Axis.Ph => question.Ph!.Value,
                _ => Interval.AtLeast(1),
            };
            var boundaries = stages.SelectMany(stage => stage.Rules).Where(rule => rule.Box.ContainsKey(axis)).Select(rule => rule.Box[axis])
                .Concat(standing.Select(rule => rule.When.On(axis).Range))
                    .Concat(axis == Axis.ExposureTime ? judged.Where(one => one.Upper != Interval.WithoutEnd) : []);
            var table = new RankTable(boundaries, domain, axis == Axis.Uses);
            _axes[axis] = (table, Circuit.Rank(table.All()));
        }

        Method = Circuit.Rank(MethodSet.All.Methods.Select(method => (long)method));
        Circuit.Model.AddBoolOr([Judged(judged)]);
    }

    public Circuit Circuit { get; } = new();

    public IntVar Method { get; }

    /// <summary>For each rule of a stage whether it holds here.</summary>
    public ILiteral[] Holds(Stage stage) => Holds(stage, (axis, range) => Within(axis, range));

    /// <summary>
    /// The same at the first use of those asked: rules that allow begin there, so an answer about some uses is good where the first and the last are.
    /// </summary>
    public ILiteral[] HoldsAtFirstUse(Stage stage) =>
        Holds(stage, (axis, range) => axis != Axis.Uses ? Within(axis, range) : range.Contains(1) ? Circuit.True : Circuit.False);

    private ILiteral[] Holds(Stage stage, Func<Axis, Interval, ILiteral> within) => stage.Rules.Select(rule => Circuit.And(
        [.. rule.Box.Select(axis => within(axis.Key, axis.Value)),
            Circuit.Or(rule.Methods.Methods.Select(method => Circuit.Within(Method, (int)method, (int)method)))])).ToArray();

    /// <summary>Whether the exposure lies in the box of a standing rule.</summary>
    public ILiteral Within(StandingRule standing) => Circuit.And(
    [
        .. new[] { Axis.Strength, Axis.Temperature, Axis.Ph, Axis.Uses }.Where(axis => standing.When.On(axis).Statement == AxisStatement.Within)
            .Select(axis => Within(axis, standing.When.On(axis).Range)),
        Judged(_asked.Judged(_question.ExposureTime!.Value.Intersect(standing.When.ExposureTime.Range))),
        standing.When.Methods.Statement == AxisStatement.Within
            ? Circuit.Or(standing.When.Methods.Methods.Methods.Select(method => Circuit.Within(Method, (int)method, (int)method))) : Circuit.True,
    ]);

    private ILiteral Judged(Interval[] exposureTimes)
    {
        var (table, rank) = _axes[Axis.ExposureTime];
        return Circuit.Or(exposureTimes.Where(one => !one.IsEmpty).Select(one =>
            one.Equals(Interval.Exactly(Interval.WithoutEnd)) ? Circuit.Within(rank, table.Last, table.Last) : Within(Axis.ExposureTime, one)));
    }

    private ILiteral Within(Axis axis, Interval interval)
    {
        if (interval.IsWhole) return Circuit.True;
        if (_within.TryGetValue((axis, interval), out var known)) return known;
        var (table, rank) = _axes[axis];
        var (low, high) = table.Of(interval);
        return _within[(axis, interval)] = Circuit.Within(rank, low, high);
    }
}
