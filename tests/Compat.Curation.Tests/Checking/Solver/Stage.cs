namespace Compat.Tests.Reference;

/// <summary>A rule as it reaches one variant: its voice, its filled-in box, whether the part can meet its duties.</summary>
internal sealed record StagedRule(Rule Rule, int Voice, IReadOnlyDictionary<Axis, Interval> Box, MethodSet Methods, bool DutiesCanBeMet);

/// <summary>One variant before any exposure is chosen.</summary>
internal sealed record Stage(
    IReadOnlyList<StagedRule> Rules, int Materials, bool MaterialsKnown, bool OwnDutiesCanBeMet, MethodSet Stood, IReadOnlyList<Duty> OwnDuties);

/// <summary>States a question for a solver: what reaches what, with no exposure chosen.</summary>
internal sealed partial class ReferenceEvaluator
{
    public const int VoiceOfDuties = DutiesOnly;

    public IReadOnlyList<Stage> Stages() => _judged.Select(one =>
    {
        var (variant, component, reaching) = one;
        var own = Trees.Line(component.Agent).SelectMany(a => a.Duties).Concat(Trees.Line(variant.Type).SelectMany(p => p.Duties)).ToArray();
        return new Stage(
            reaching.Select(
                r => new StagedRule(
                    r.Rule, r.Voice, _axes.ToDictionary(axis => axis, axis => r.Box[(int)axis]), Trees.Methods(r.Rule),
                    r.Rule.Duties.All(d => CanBeMet(d, variant)))).ToArray(),
            variant.Materials.Length,
            variant.Known,
            own.All(d => CanBeMet(d, variant)),
            MethodSet.Of(MethodSet.All.Methods.Where(m => !IsTooWet(variant, m)).ToArray()),
            own);
    }).ToArray();

    /// <summary>The exposure times that can be judged when one of these is asked.</summary>
    public Interval[] Judged(Interval asked)
    {
        var shortest = EffectiveExposureTime(_judged[0].Variant, 0.000001m);
        if (shortest == Interval.WithoutEnd) return [Interval.Exactly(Interval.WithoutEnd)];
        if (shortest < 1m) return [asked];
        var late = asked.Intersect(Interval.AtLeast(shortest));
        return asked.Lower is { } low && low >= shortest ? [late] : [late, Interval.Exactly(shortest)];
    }
}
