using Compat.Efficacy;
using Compat.Exposures;
using Compat.Knowledge;

namespace Compat.Curation.Reviewing;

/// <summary>Compares what is said of agents, part types and materials that no decision map shows: what is taken where a question leaves it out, hazards, who touches a part.</summary>
internal static class TraitReview
{
    public static IEnumerable<FactChange> Of(AgentClass before, AgentClass after)
    {
        foreach (var (axis, was, now) in new[] { ("strength", before.Usual.Strength, after.Usual.Strength), ("ph", before.Usual.Ph, after.Usual.Ph), ("temperature", before.Usual.Temperature, after.Usual.Temperature) })
        {
            if (was.Equals(now)) continue;
            var loosened = now is { } range && !(was is { } former && former.LiesIn(range));
            yield return new(loosened ? ChangeKind.Loosened : ChangeKind.Tightened, $"a question on `{after.Id}` that leaves the {axis} out is judged over {Shown(now)}, before over {Shown(was)}");
        }

        if (before.Chamber != after.Chamber) yield return new(ChangeKind.Loosened, $"a question on `{after.Id}` that leaves the method out is {(after.Chamber ? "now" : "no longer")} asked of the chamber");
        if (before.Density != after.Density || before.AvailableChlorine != after.AvailableChlorine) yield return new(ChangeKind.Loosened, $"strengths of `{after.Id}` are converted otherwise");
        foreach (var text in Gone("a hazard of", before.Hazards.Select(Words.Of), after.Hazards.Select(Words.Of), after.Id.Value)
            .Concat(Gone("what inactivates", before.InactivatedBy.Select(id => id.Value), after.InactivatedBy.Select(id => id.Value), after.Id.Value))
            .Concat(Gone("what binds", before.BoundBy, after.BoundBy, after.Id.Value))) yield return new(ChangeKind.Loosened, text);
    }

    public static IEnumerable<FactChange> Of(PartType before, IReadOnlyList<NeedRule> needsBefore, PartType after, IReadOnlyList<NeedRule> needsAfter)
    {
        if (before.TouchedBy != after.TouchedBy)
        {
            var (was, now) = (LevelOf(before.TouchedBy, needsBefore), LevelOf(after.TouchedBy, needsAfter));
            yield return new(now < was || after.TouchedBy is null ? ChangeKind.Loosened : ChangeKind.Tightened, $"`{after.Id}` is touched by {Shown(after.TouchedBy)}, before by {Shown(before.TouchedBy)}");
        }

        foreach (var text in Gone("a kind of patient of", before.Patients.Select(Words.Of), after.Patients.Select(Words.Of), after.Id.Value)
            .Concat(Gone("a soil of", (before.Soil ?? []).Select(Words.Of), (after.Soil ?? []).Select(Words.Of), after.Id.Value))) yield return new(ChangeKind.Loosened, text);
        if (before.DryBeforePower is { } seconds && !(after.DryBeforePower >= seconds)) yield return new(ChangeKind.DutiesDropped, $"`{after.Id}` is dry {after.DryBeforePower ?? 0:0.##} s before power, before {seconds:0.##} s");
        if (before.FunctionCheck is not null && after.FunctionCheck is null) yield return new(ChangeKind.DutiesDropped, $"the function check of `{after.Id}` is gone");
    }

    public static IEnumerable<FactChange> Of(Material before, Material after)
    {
        if (before.DeclaredOnlySuffices == after.DeclaredOnlySuffices) yield break;
        yield return new(
            after.DeclaredOnlySuffices ? ChangeKind.Loosened : ChangeKind.Tightened,
            $"what a data sheet leaves out {(after.DeclaredOnlySuffices ? "no longer matters" : "matters now")} on `{after.Id}`");
    }

    private static IEnumerable<string> Gone(string what, IEnumerable<string> before, IEnumerable<string> after, string id) =>
        before.Except(after).Select(one => $"{what} `{id}` is gone: {one}");

    private static Level? LevelOf(TouchedBy? contact, IReadOnlyList<NeedRule> needs) =>
        contact is { } known ? needs.Where(need => need.Soil.Count == 0 && need.TouchedBy.Contains(known)).Max(need => need.Level) ?? Level.Cleaned : null;

    private static string Shown(TouchedBy? contact) => contact is { } known ? Words.Of(known) : "what its parent says";

    private static string Shown(Interval? range) => range is { } known ? known.ToString() : "the whole axis or what its class says";
}
