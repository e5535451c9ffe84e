using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Compares what stands beside the rules on parts: by what reaches each agent, part and patient, and record by record what reaches no single place.</summary>
internal static class FactReview
{
    /// <summary>Fields that decision maps or the walks over all places compare, of the records that are not compared as a whole. One that is added later is told as another until it stands here.</summary>
    private static readonly Dictionary<RecordKind, string[]> Compared = new()
    {
        [RecordKind.Rule] = ["target", "agent", "product", "composition-dated", "when", "allows", "whole-class", "seen-with", "overrides", "duties", "damage", "edition", "known-by", "counts-towards", "tested", "is-second-source", "rests-on", "sources"],
        [RecordKind.Source] = ["kind", "recalled", "trust", "is-well-founded"],
        [RecordKind.Part] = ["under", "materials", "materials-known", "wettest", "never", "geometry", "touched-by", "patients", "soil", "way-out", "function-check", "dry-before-power", "water-ingress", "duties", "sources"],
        [RecordKind.Agent] = ["under", "cas", "ec", "basis", "density", "available-chlorine", "nature", "usual", "leaves", "chamber", "inactivated-by", "bound-by", "hazards", "duties", "sources"],
        [RecordKind.Material] = ["under", "delicate", "declared-only-suffices", "sources"],
        [RecordKind.Organism] = ["group", "own-claim", "sources"],
        [RecordKind.Level] = ["level", "includes", "sources"],
    };

    /// <summary>The changes with the edits that made them; without one where what made it is not seen.</summary>
    public static IReadOnlyList<(RecordEdit? Cause, FactChange Change)> Of(EditList edits, CompiledBase before, CompiledBase after)
    {
        var sides = new ReachSides(before, after, edits);
        var found = new FactList(sides);
        foreach (var look in new Action<ReachSides, FactList>[] { MixingReach.Look, PersonReach.Look, ClaimReach.Look, ProtectionReach.Look, NeedReach.Look, TraitReach.Look }) look(sides, found);
        return edits.All.Where(edit => !edit.IsWording).SelectMany(edit => Of(edit).Concat(NotCompared(edit)).Select(change => ((RecordEdit?)edit, change))).Concat(found.All()).ToArray();
    }

    private static bool HasOtherSourcesOnly(RecordEdit edit) =>
        edit.Action == EditAction.Changed && edit.Fields.All(field => field is "sources" or "reviewed");

    private static IEnumerable<FactChange> Of(RecordEdit edit) => (edit.Before ?? edit.After) switch
    {
        Convention => (edit.Before, edit.After) is (Convention one, Convention other) ? ConventionReview.Of(one, other) : [],
        StandingRule or InstructionWord or Occasion or LevelMeaning or TestStandard when HasOtherSourcesOnly(edit) => [],
        HarmlessMeeting => RecordReview.Of(edit.Before as HarmlessMeeting, edit.After as HarmlessMeeting),
        StandingRule => RecordReview.Of(edit.Before as StandingRule, edit.After as StandingRule),
        InstructionWord => RecordReview.Of(edit.Before as InstructionWord, edit.After as InstructionWord),
        Occasion => RecordReview.Of(edit.Before as Occasion, edit.After as Occasion),
        LevelMeaning => RecordReview.Of(edit.Before as LevelMeaning, edit.After as LevelMeaning),
        TestStandard => RecordReview.Of(edit.Before as TestStandard, edit.After as TestStandard),
        Organism => (edit.Before, edit.After) is (Organism one, Organism other) ? RecordReview.Of(one, other) : [],
        _ => [],
    };

    /// <summary>What nobody compares: it may loosen anything.</summary>
    private static IEnumerable<FactChange> NotCompared(RecordEdit edit)
    {
        if (edit.Action != EditAction.Changed || !Compared.TryGetValue(edit.Kind, out var known)) yield break;
        var left = edit.Fields.Where(field => !known.Contains(field.Split('.')[0]) && !RecordSet.For(edit.Kind).IsWording(field)).ToArray();
        if (left.Length > 0) yield return new(ChangeKind.Loosened, $"{string.Join(", ", left)} of `{edit.Id}` is another, and what that does to the answers is not compared");
    }
}
