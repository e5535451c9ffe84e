using Compat.Exposures;
using Compat.Knowledge;

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
    public IEnumerable<GridPoint> EveryPoint()
    {
        for (var v = 0; v < _variants.Count; v++)
        {
            for (var c = 0; c < _components.Count; c++)
            {
                foreach (var at in Exposures(_components[c]))
                {
                    var variant = _variants[v];
                    if (variant.Type is not null && at.Method != ApplicationMethod.Chamber && at.Method > variant.Wettest) continue;
                    yield return Point(v, c, at);
                }
            }
        }
    }

    private GridPoint Point(int v, int c, Exposure at)
    {
        var (variant, component) = (_variants[v], _components[c]);
        var e = at with { Residence = EffectiveResidence(variant, at.Residence) };
        var applicable = _reaching[(variant, component)].Where(a => Holds(a, e)).ToArray();
        bool Overrides(Applicable q, Applicable a) => ((q.Voice == a.Voice && q.Voice != DutiesOnly) || q.Voice == 0) && q.Rule.Overrides.Contains(a.Rule.Id);
        bool Acts(Applicable a) => a.Rule.Edition is not null || !applicable.Any(q => !q.Rule.Allows && Overrides(q, a));
        bool IsLive(Applicable a) => a.Rule.Edition is not null || !applicable.Any(q => Overrides(q, a) && Acts(q));
        return new(
            applicable.Where(a => a.Voice != DutiesOnly).Select(a => new Heard(a.Rule, a.Voice, IsLive(a))).ToArray(),
            Judge(variant, component, at),
            applicable.Where(a => a.Voice is 0 or DutiesOnly && a.Rule.Allows && IsLive(a)).Select(a => a.Rule).ToArray(),
            other => other.Point(v, c, at));
    }

    private IEnumerable<Exposure> Exposures(Component component) =>
        from method in _question.Method is { } stated ? [stated] : MethodSet.All.Methods
        from dilution in _product is null ? [1m] : _question.Dilution is { } diluted ? Grid(Axis.Dilution, diluted) : [1m]
        from residence in Grid(Axis.Residence, _question.Residence ?? Interval.Above(0))
        from temperature in Grid(Axis.Temperature, _question.Temperature ?? Interval.Closed(-40, 200))
        from ph in Grid(Axis.Ph, _question.Ph ?? Interval.Closed(-1, 15))
        from uses in Grid(Axis.Uses, _question.Uses is { } n ? Interval.Exactly(n) : AnyUse)
        from strength in Grid(Axis.Strength, component.StrengthAt(dilution))
        select new Exposure(method, residence, dilution, temperature, ph, uses, strength);

    /// <summary>Whether at some exposure every variant is allowed, without a duty of the kind (of none: at all).</summary>
    public bool AnyAllowed(DutyKind? without, Interval uses)
    {
        var component = _components.Single();
        var own = _trees.Duties(component.Agent).Concat(_variants[0].Type is { } type ? _trees.Duties(type) : []);
        return Exposures(component).Where(at => uses.Contains(at.Uses)).Any(at =>
        {
            if (_variants.Any(v => v.Type is not null && at.Method != ApplicationMethod.Chamber && at.Method > v.Wettest)) return false;
            var points = Enumerable.Range(0, _variants.Count).Select(v => Point(v, 0, at)).ToArray();
            return points.All(point => point.Truth.Verdict == Verdict.Allowed)
                && (without is not { } kind || !points.SelectMany(point => point.Truth.Allowing.SelectMany(voice => voice).Concat(point.Accompanying)).SelectMany(rule => rule.Duties).Concat(own).Any(duty => duty.Kind == kind));
        });
    }
}
