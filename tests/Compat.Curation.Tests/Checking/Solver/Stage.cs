using Compat.Exposures;
using Compat.Knowledge;

namespace Compat.Tests.Reference;

/// <summary>A rule as it reaches one variant: its voice, its filled-in box, whether the part can meet its duties.</summary>
internal sealed record StagedRule(Rule Rule, int Voice, IReadOnlyDictionary<Axis, Interval> Box, MethodSet Methods, bool DutiesCanBeMet);

/// <summary>One variant before any exposure is chosen.</summary>
internal sealed record Stage(IReadOnlyList<StagedRule> Rules, int Materials, bool MaterialsKnown, bool OwnDutiesCanBeMet, MethodSet Stood, IReadOnlyList<Duty> OwnDuties);

/// <summary>States a question for a solver: what reaches what, with no exposure chosen.</summary>
internal sealed partial class ReferenceEvaluator
{
    public const int VoiceOfDuties = DutiesOnly;

    public IReadOnlyList<Stage> Stages() => _variants.Select(variant =>
    {
        var component = _components.Single();
        var own = _trees.Duties(component.Agent).Concat(variant.Type is null ? [] : _trees.Duties(variant.Type)).ToArray();
        return new Stage(
            _reaching[(variant, component)].Select(a => new StagedRule(a.Rule, a.Voice, a.Box, MethodSet.Of(MethodSet.All.Methods.Where(m => _trees.HoldsMethod(a.Rule, m)).ToArray()), a.Rule.Duties.All(d => CanBeMet(d, variant)))).ToArray(),
            variant.Materials.Count,
            variant.MaterialsKnown,
            own.All(d => CanBeMet(d, variant)),
            MethodSet.Of(MethodSet.All.Methods.Where(m => variant.Type is null || m == ApplicationMethod.Chamber || m <= variant.Wettest).ToArray()),
            own);
    }).ToArray();

    /// <summary>The residences that can be judged when one of these is asked.</summary>
    public Interval[] Judged(Interval asked)
    {
        var shortest = EffectiveResidence(_variants[0], 0.000001m);
        if (shortest == Interval.WithoutEnd) return [Interval.Exactly(Interval.WithoutEnd)];
        if (shortest < 1m) return [asked];
        var late = asked.Intersect(Interval.AtLeast(shortest));
        return asked.Lower is { } low && low >= shortest ? [late] : [late, Interval.Exactly(shortest)];
    }
}
