using Compat.Efficacy;
using Compat.Evaluation;
using Compat.Exposures;
using Compat.Instructions;
using Compat.Knowledge;
using Compat.Mixing;
using Compat.Occasions;
using Compat.People;

namespace Compat.Curation.Reviewing;

/// <summary>Compares records that hold for people and for the whole base. What is not proved to ask at least as much as before counts as loosened.</summary>
internal sealed class RecordReview(ReviewTrees trees)
{
    public IEnumerable<FactChange> Of(MixingHazard? before, MixingHazard? after)
    {
        if (before is not null && !trees.Of(isBefore: false).MixingHazards.Any(other => Covers(other, before)))
            yield return new(ChangeKind.Loosened, $"`{before.Id}`: what is on record of `{before.Agent}` with `{With(before)}` asks less, or is gone ({Words.Of(before.Severity)}{(after is null ? "" : ", now " + Words.Of(after.Severity))})");
        else if (after is not null) yield return new(ChangeKind.Tightened, $"`{after.Id}`: a hazard of `{after.Agent}` with `{With(after)}` is on record ({Words.Of(after.Severity)})");
    }

    public static IEnumerable<FactChange> Of(HarmlessMeeting? before, HarmlessMeeting? after)
    {
        if (after is not null) yield return new(ChangeKind.Loosened, $"`{after.Id}`: it is on record that nothing harmful happens where `{after.Agent}` meets `{With(after.WithAgent, after.WithSoil, after.WithMaterial)}`");
        else yield return new(ChangeKind.Tightened, $"`{before!.Id}`: it is no longer on record that nothing harmful happens where `{before.Agent}` meets `{With(before.WithAgent, before.WithSoil, before.WithMaterial)}`");
    }

    public IEnumerable<FactChange> Of(NeedRule? before, NeedRule? after)
    {
        var needs = trees.Of(isBefore: false).Needs;
        var lowered = before?.TouchedBy.Where(contact => !needs.Any(need => need.TouchedBy.Contains(contact) && need.Soil.All(soil => before.Soil.Count == 0 ? need.Soil.Count == 0 : before.Soil.Contains(soil))
            && (before.Level is null ? need.Level is null : need.Level >= before.Level) && (need.CleanFirst || !before.CleanFirst))).ToArray() ?? [];
        if (lowered.Length > 0) yield return new(ChangeKind.Loosened, $"`{before!.Id}`: what is touched by {string.Join(", ", lowered.Select(Words.Of))} needs less than {(before.Level is { } level ? Words.Of(level) : "to be kept dry")}");
        else if (after is not null) yield return new(ChangeKind.Tightened, $"`{after.Id}`: {(after.Level is { } level ? Words.Of(level) : "kept dry")} for what is touched by {string.Join(", ", after.TouchedBy.Select(Words.Of))}");
    }

    public static IEnumerable<FactChange> Of(StandingRule? before, StandingRule? after)
    {
        if (before is null) yield return new(ChangeKind.Tightened, $"`{after!.Id}` stands now");
        else if (after is null) yield return new(ChangeKind.Loosened, $"`{before.Id}` no longer stands: {before.Reason}");
        else if (RecordDifference.Fields(before, after).All(field => RecordSet.For(Validation.RecordKind.StandingRule).IsWording(field) || field.StartsWith("when.", StringComparison.Ordinal)) && Holds(after.When, before.When))
            yield return new(ChangeKind.Tightened, $"`{after.Id}` stands for more exposures");
        else yield return new(ChangeKind.Loosened, $"`{after.Id}` stands otherwise: it may demand less");
    }

    public static IEnumerable<FactChange> Of(Protection? before, Protection? after)
    {
        if (before is null) yield return new(ChangeKind.Tightened, $"`{after!.Id}`: protection of staff from `{after.Agent}` is on record");
        else if (after is null) yield return new(ChangeKind.DutiesDropped, $"`{before.Id}`: protection of staff from `{before.Agent}` is gone");
        else yield return new(ChangeKind.DutiesDropped, $"`{after.Id}`: protection of staff from `{after.Agent}` is another");
    }

    public static IEnumerable<FactChange> Of(InstructionWord? before, InstructionWord? after)
    {
        var loosened = before is null ? after!.Permits is not null : before.Forbids is not null || before.ListsNothing || !RecordDifference.AreSame(before.Permits, after?.Permits) || !RecordDifference.AreSame(before.Act, after?.Act);
        yield return new(loosened ? ChangeKind.Loosened : ChangeKind.Tightened, $"the words of `{(after ?? before)!.Id}` are read otherwise");
    }

    public static IEnumerable<FactChange> Of(Occasion? before, Occasion? after)
    {
        yield return before is null ? new(ChangeKind.Tightened, $"the occasion `{after!.Id}` is on record")
            : new(ChangeKind.Loosened, $"the occasion `{before.Id}` {(after is null ? "is gone" : "asks something else")}");
    }

    public static IEnumerable<FactChange> Of(LevelMeaning? before, LevelMeaning? after)
    {
        var more = (after?.Includes ?? []).Except(before?.Includes ?? []).ToArray();
        var less = (before?.Includes ?? []).Except(after?.Includes ?? []).ToArray();
        var level = Words.Of((after ?? before)!.Level);
        if (more.Length > 0) yield return new(ChangeKind.EfficacyLoosened, $"{level} includes {string.Join(", ", more.Select(Words.Of))}: what reaches it is taken to kill these too");
        if (less.Length > 0) yield return new(ChangeKind.Loosened, $"{level} no longer includes {string.Join(", ", less.Select(Words.Of))}: what needs it no longer needs these killed");
    }

    public static IEnumerable<FactChange> Of(TestStandard? before, TestStandard? after)
    {
        var reach = Reach(after).Except(Reach(before)).ToArray();
        var lost = Reach(before).Except(Reach(after)).ToArray();
        var code = (after ?? before)!.Code;
        if (reach.Length > 0) yield return new(ChangeKind.EfficacyLoosened, $"the test `{code}` shows more on devices: {string.Join(", ", reach)}");
        if (lost.Length > 0) yield return new(ChangeKind.Tightened, $"the test `{code}` shows less on devices: {string.Join(", ", lost)}");

        static string[] Reach(TestStandard? test) => test is null ? [] :
            [.. from method in Enum.GetValues<ApplicationMethod>() where test.SpeaksOf(method) from target in test.Shows select $"{target} by {Words.Of(method)}{(test.Step == TestStep.Practical ? ", on what is disinfected" : "")}"];
    }

    public static IEnumerable<FactChange> Of(Organism before, Organism after)
    {
        if (before.OwnClaim && !after.OwnClaim) yield return new(ChangeKind.EfficacyLoosened, $"a claim for its group suffices for `{after.Id}`");
        if (!before.OwnClaim && after.OwnClaim) yield return new(ChangeKind.Tightened, $"`{after.Id}` needs a claim of its own");
        if (before.Group != after.Group) yield return new(ChangeKind.EfficacyLoosened, $"`{after.Id}` is one of {Words.Of(after.Group)}, before of {Words.Of(before.Group)}");
    }

    /// <summary>Whether a hazard of HEAD says at least what one of BASE said.</summary>
    private bool Covers(MixingHazard other, MixingHazard hazard) =>
        Meets(other, hazard) && other.Severity <= hazard.Severity && (other.OnlyWhere is null || other.OnlyWhere == hazard.OnlyWhere)
        && hazard.Effects.All(other.Effects.Contains) && (hazard.SeparatedBy.Count == 0 ? other.SeparatedBy.Count == 0 : other.SeparatedBy.Count > 0 && other.SeparatedBy.All(hazard.SeparatedBy.Contains));

    /// <summary>Whether one range of strengths lies in another; null is every strength.</summary>
    private static bool Lies(Interval? inner, Interval? outer) => outer is not { } wide || (inner is { } narrow && narrow.LiesIn(wide));

    private bool Meets(MixingHazard other, MixingHazard hazard)
    {
        if (hazard.WithAgent is { } with)
        {
            return other.WithAgent is { } partner
                && ((IsBelow(hazard.Agent, other.Agent) && IsBelow(with, partner) && Lies(hazard.Strength, other.Strength) && Lies(hazard.WithStrength, other.WithStrength))
                    || (IsBelow(hazard.Agent, partner) && IsBelow(with, other.Agent) && Lies(hazard.Strength, other.WithStrength) && Lies(hazard.WithStrength, other.Strength)));
        }

        return IsBelow(hazard.Agent, other.Agent) && Lies(hazard.Strength, other.Strength) && Equals(hazard.WithSoil, other.WithSoil) && Equals(hazard.WithMaterial, other.WithMaterial) && other.WithAgent is null;
    }

    private bool IsBelow(AgentId agent, AgentId other) => trees.IsAtOrBelow(agent, other, isBefore: false);

    private static string With(MixingHazard hazard) => With(hazard.WithAgent, hazard.WithSoil, hazard.WithMaterial);

    private static string With(AgentId? agent, SoilKind? soil, MaterialId? material) => agent?.Value ?? material?.Value ?? Words.Of(soil!.Value);

    private static bool Holds(ExposureBox box, ExposureBox other)
    {
        var (wide, narrow) = (PersonReview.Box(box), PersonReview.Box(other));
        var methods = box.Methods.Statement != AxisStatement.Within || (other.Methods.Statement == AxisStatement.Within && other.Methods.Methods.Intersect(box.Methods.Methods).Equals(other.Methods.Methods));
        return methods && narrow.Select((Span span, int axis) => span.LiesIn(wide[axis])).All(lies => lies);
    }
}
