namespace Compat.Tests.Reference;

/// <summary>A rule that applies at a point, with the voice it speaks in (0: part and device; then one a material) and whether it is live.</summary>
internal sealed record Heard(Rule Rule, int Voice, bool IsLive);

/// <summary>One point of the grid, on one variant, with one component: what applies, and what it answers.</summary>
internal sealed record GridPoint(IReadOnlyList<Heard> Heard, PointTruth Truth, IReadOnlyList<Rule> Accompanying, Func<ReferenceEvaluator, GridPoint> Elsewhere);

/// <summary>Walks the whole grid of boundaries, midpoints and values beyond: what the check computes in boxes is counted here point by point.</summary>
internal sealed partial class ReferenceEvaluator
{
    private static readonly Interval AnyUse = Interval.AtLeast(1);

    /// <summary>Every point at which rules decide: no barrier stands before it.</summary>
    public IEnumerable<GridPoint> EveryPoint() =>
        from i in Enumerable.Range(0, _judged.Length)
        from at in Exposures(_judged[i].Component)
        where !IsTooWet(_judged[i].Variant, at.Method)
        select Point(i, at.Method, at.Values);

    private static bool IsTooWet(Variant variant, ApplicationMethod method) =>
        variant.Type is not null && method != ApplicationMethod.Chamber && method > variant.Wettest;

    private GridPoint Point(int i, ApplicationMethod method, decimal[] at)
    {
        var (variant, component, reaching) = _judged[i];
        var effective = at.ToArray();
        effective[(int)Axis.ExposureTime] = EffectiveExposureTime(variant, at[(int)Axis.ExposureTime]);
        var applicable = reaching.Where(r => Trees.Methods(r.Rule).Contains(method) && r.Box.Zip(effective).All(on => on.First.Contains(on.Second))).ToArray();
        bool Overrides(Reaching q, Reaching r) => ((q.Voice == r.Voice && q.Voice != DutiesOnly) || q.Voice == PartVoice)
            && q.Rule.Overrides.Contains(r.Rule.Id);
        bool Acts(Reaching r) => r.Rule.Edition is not null || !applicable.Any(q => !q.Rule.Allows && Overrides(q, r));
        bool IsLive(Reaching r) => r.Rule.Edition is not null || !applicable.Any(q => Overrides(q, r) && Acts(q));
        return new(
            applicable.Where(r => r.Voice != DutiesOnly).Select(r => new Heard(r.Rule, r.Voice, IsLive(r))).ToArray(),
            Judge(variant, component, reaching, method, at.ToArray()),
            applicable.Where(r => r.Voice is PartVoice or DutiesOnly && r.Rule.Allows && IsLive(r)).Select(r => r.Rule).ToArray(),
            other => other.Point(i, method, at));
    }

    private IEnumerable<(ApplicationMethod Method, decimal[] Values)> Exposures(Component component) =>
        from method in _question.Method is { } stated ? [stated] : MethodSet.All.Methods
        from dilution in _product is null || _question.Dilution is not { } diluted ? [1m] : Samples.On(Axis.Dilution, diluted)
        from exposureTime in Samples.On(Axis.ExposureTime, _question.ExposureTime ?? Interval.Above(0))
        from temperature in Samples.On(Axis.Temperature, _question.Temperature ?? Interval.Closed(-40, 200))
        from ph in Samples.On(Axis.Ph, _question.Ph ?? Interval.Closed(-1, 15))
        from uses in Samples.On(Axis.Uses, _question.Uses is { } n ? Interval.Exactly(n) : AnyUse)
        from strength in Samples.On(Axis.Strength, component.Strength.Scale(dilution))
        select (method, (decimal[])[strength, dilution, exposureTime, temperature, ph, uses]);

    /// <summary>Whether at some exposure every variant is allowed, at every use up to that one, without a duty of the kind (of none: at all).</summary>
    public bool AnyAllowed(DutyKind? without, Interval uses)
    {
        var component = Components.Single();
        var own = Trees.Line(component.Agent).SelectMany(a => a.Duties).Concat(Trees.Line(_judged[0].Variant.Type).SelectMany(p => p.Duties)).ToArray();
        return Exposures(component).Where(at => uses.Contains(at.Values[(int)Axis.Uses])).Any(at =>
        {
            if (_judged.Any(one => IsTooWet(one.Variant, at.Method))) return false;
            var points = Enumerable.Range(0, _judged.Length).Select(i => Point(i, at.Method, at.Values)).ToArray();
            return Enumerable.Range(0, _judged.Length).All(i => UsesUpTo(at).All(values => Point(i, at.Method, values).Truth.Verdict == Verdict.Allowed))
                && (without is not { } kind || !points.SelectMany(point => point.Truth.Allowing.SelectMany(voice => voice).Concat(point.Accompanying))
                    .SelectMany(rule => rule.Duties).Concat(own).Any(duty => duty.Kind == kind));
        });
    }

    /// <summary>The exposure at every use up to its own: a question that asks of some uses asks of all before them.</summary>
    private IEnumerable<decimal[]> UsesUpTo((ApplicationMethod Method, decimal[] Values) at)
    {
        foreach (var uses in Samples.On(Axis.Uses, Interval.Closed(1, at.Values[(int)Axis.Uses])))
        {
            var values = at.Values.ToArray();
            values[(int)Axis.Uses] = uses;
            yield return values;
        }
    }
}
