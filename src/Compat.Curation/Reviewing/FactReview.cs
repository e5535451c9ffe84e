using Compat.Curation.Checking;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>
/// Compares what stands beside the rules on parts: by what reaches each agent, part and patient, and record by record what reaches no single place.
/// </summary>
internal static class FactReview
{
    /// <summary>The changes with the edits that made them; without one where what made it is not seen.</summary>
    public static IReadOnlyList<(RecordEdit? Cause, FactChange Change)> Of(EditList edits, CompiledBase before, CompiledBase after)
    {
        var sides = new ReachSides(before, after, edits);
        var found = new FactList(sides);
        Action<ReachSides, FactList>[] all = [MixingReach.Look, PersonReach.Look, ClaimReach.Look, ProtectionReach.Look, NeedReach.Look, TraitReach.Look];
        foreach (var look in all) look(sides, found);
        return edits.All.Where(edit => !edit.IsWording).SelectMany(edit => Of(edit).Select(change => ((RecordEdit?)edit, change))).Concat(found.All())
            .ToArray();
    }

    private static IEnumerable<FactChange> Of(RecordEdit edit) => (edit.Before ?? edit.After) switch
    {
        Convention => (edit.Before, edit.After) is (Convention one, Convention other) ? ConventionReview.Of(one, other) : [],
        HarmlessMeeting => RecordReview.Of(edit.Before as HarmlessMeeting, edit.After as HarmlessMeeting),
        StandingRule => RecordReview.Of(edit.Before as StandingRule, edit.After as StandingRule),
        InstructionWord => RecordReview.Of(edit.Before as InstructionWord, edit.After as InstructionWord),
        Occasion => RecordReview.Of(edit.Before as Occasion, edit.After as Occasion),
        LevelMeaning => RecordReview.Of(edit.Before as LevelMeaning, edit.After as LevelMeaning),
        TestStandard => RecordReview.Of(edit.Before as TestStandard, edit.After as TestStandard),
        Organism => (edit.Before, edit.After) is (Organism one, Organism other) ? RecordReview.Of(one, other) : [],
        _ => [],
    };
}

/// <summary>Compares records that hold for people and for the whole base. What is not proved to ask at least as much as before counts as loosened.</summary>
internal static class RecordReview
{
    public static IEnumerable<FactChange> Of(HarmlessMeeting? before, HarmlessMeeting? after)
    {
        if (after is not null) yield return new(ChangeKind.Loosened,
            $"`{after.Id}`: it is on record that nothing harmful happens where `{after.Agent}` meets `{With(after)}`");
        else yield return new(ChangeKind.Tightened,
            $"`{before!.Id}`: it is no longer on record that nothing harmful happens where `{before.Agent}` meets `{With(before)}`");
    }

    public static IEnumerable<FactChange> Of(StandingRule? before, StandingRule? after)
    {
        if (before is null) yield return new(ChangeKind.Tightened, $"`{after!.Id}` stands now");
        else if (after is null) yield return new(ChangeKind.Loosened, $"`{before.Id}` no longer stands: {before.Reason}");
        else if (RecordDifference.Fields(before, after)
            .All(field => RecordSet.For(Validation.RecordKind.StandingRule).IsWording(field) || field.StartsWith("when.", StringComparison.Ordinal))
            && BoxValues.Holds(after.When, before.When))
            yield return new(ChangeKind.Tightened, $"`{after.Id}` stands for more exposures");
        else yield return new(ChangeKind.Loosened, $"`{after.Id}` stands otherwise: it may demand less");
    }

    public static IEnumerable<FactChange> Of(InstructionWord? before, InstructionWord? after)
    {
        var loosened = before is null ? after!.Permits is not null : before.Forbids is not null || before.ListsNothing
            || !RecordDifference.AreSame(before.Permits, after?.Permits) || !RecordDifference.AreSame(before.Act, after?.Act);
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
        foreach (var change in before is null || after is null ? []
            : Other(before, after, level, nameof(after.Level), nameof(after.Includes))) yield return change;
        if (more.Length > 0) yield return new(ChangeKind.EfficacyLoosened,
            $"{level} includes {string.Join(", ", more.Select(Words.Of))}: what reaches it is taken to kill these too");
        if (less.Length > 0) yield return new(ChangeKind.Loosened,
            $"{level} no longer includes {string.Join(", ", less.Select(Words.Of))}: what needs it no longer needs these killed");
    }

    public static IEnumerable<FactChange> Of(TestStandard? before, TestStandard? after)
    {
        var reach = Reach(after).Except(Reach(before)).ToArray();
        var lost = Reach(before).Except(Reach(after)).ToArray();
        var code = (after ?? before)!.Code;
        if (reach.Length > 0) yield return new(ChangeKind.EfficacyLoosened, $"the test `{code}` shows more on devices: {string.Join(", ", reach)}");
        if (lost.Length > 0) yield return new(ChangeKind.Tightened, $"the test `{code}` shows less on devices: {string.Join(", ", lost)}");

        static string[] Reach(TestStandard? test) => test is null ? [] :
        [
            .. from method in Enum.GetValues<ApplicationMethod>()
               where test.SpeaksOf(method)
               from target in test.Shows
               select $"{target} by {Words.Of(method)}{(test.Step == TestStep.Practical ? ", on what is disinfected" : "")}",
        ];
    }

    /// <summary>What no walk and no line here compares: it may loosen anything.</summary>
    public static IEnumerable<FactChange> Other(object before, object after, string id, params string[] compared)
    {
        var fields = string.Join(", ", RecordDifference.FieldsBut(before, after, compared));
        if (fields.Length > 0) yield return new(ChangeKind.Loosened, $"{fields} of `{id}` is another, and what that does to the answers is not compared");
    }

    public static IEnumerable<FactChange> Of(Organism before, Organism after)
    {
        foreach (var change in Other(before, after, after.Id.Value, nameof(after.OwnClaim), nameof(after.Group))) yield return change;
        if (before.OwnClaim && !after.OwnClaim) yield return new(ChangeKind.EfficacyLoosened, $"a claim for its group suffices for `{after.Id}`");
        if (!before.OwnClaim && after.OwnClaim) yield return new(ChangeKind.Tightened, $"`{after.Id}` needs a claim of its own");
        if (before.Group != after.Group) yield return new(ChangeKind.EfficacyLoosened,
            $"`{after.Id}` is one of {Words.Of(after.Group)}, before of {Words.Of(before.Group)}");
    }

    private static string With(HarmlessMeeting one) => one.WithAgent?.Value ?? one.WithMaterial?.Value ?? Words.Of(one.WithSoil!.Value);
}

/// <summary>Says which way a figure of our own caution was moved. Figures that fill in what rules leave out show in the answers instead.</summary>
internal static class ConventionReview
{
    public static IEnumerable<FactChange> Of(Convention before, Convention after)
    {
        if (before.Order != after.Order) yield return new(ChangeKind.Loosened,
            $"the convention `{Words.Of(before.Key)}` goes {after.Order}, before {before.Order}: plans may take another product");
        bool? loosened = before.Key switch
        {
            ConventionKey.IngressWetWipe or ConventionKey.IngressSpray or ConventionKey.IngressRinse or ConventionKey.IngressImmerse =>
                !after.Range.LiesIn(before.Range),
            ConventionKey.AssumedTemperature or ConventionKey.SolutionDensity or ConventionKey.WaterPh or ConventionKey.PurifiedWaterPh =>
                !before.Range.LiesIn(after.Range),
            ConventionKey.WindowShare or ConventionKey.WindowLeast => Figure(after) < Figure(before),
            ConventionKey.UsesShare or ConventionKey.MostProducts => Figure(after) > Figure(before),
            _ => null,
        };
        foreach (var change in RecordReview.Other(before, after, Words.Of(after.Key), nameof(after.Key), nameof(after.Range), nameof(after.Methods),
            nameof(after.Consequences), nameof(after.Hazards), nameof(after.Order)))
            yield return change;
        if (loosened is null || before.Range.Equals(after.Range)) yield break;
        yield return new(loosened == true ? ChangeKind.Loosened
            : ChangeKind.Tightened, $"the convention `{Words.Of(before.Key)}` is {after.Range}, before {before.Range}");
    }

    private static decimal Figure(Convention one) => one.Range.Upper ?? one.Range.Lower ?? 0m;
}

/// <summary>Where a statement beside the rules on parts reaches: an agent, a part type or a material, and what meets it.</summary>
/// <param name="Subject">The id of the agent; of a trait that of the part type or material; of a need the contact.</param>
/// <param name="With">What meets it: an agent, a soil or a material, a kind of patient, an act; null where nothing need.</param>
/// <param name="Part">The part type on which they meet; null where none is asked.</param>
public sealed record FactPlace(string Subject, string? With = null, string? Part = null)
{
    private const int MostNames = 6;

    /// <summary>Several places in one line, those that meet the same together; of many the first, and how many more.</summary>
    internal static string Line(IReadOnlyList<FactPlace> places)
    {
        var bySubject = places.GroupBy(place => place.Subject).Select(group => (Subject: group.Key, Beside: Beside(group.ToArray())));
        var lines = bySubject.GroupBy(one => one.Beside, one => one.Subject).Select(group => Names(group) + group.Key).ToArray();
        return string.Join("; ", lines.Take(MostNames)) + (lines.Length > MostNames ? $"; and {lines.Skip(MostNames).Count()} more" : "");
    }

    private static string Beside(IReadOnlyList<FactPlace> places)
    {
        var with = places.Select(place => place.With).OfType<string>().Distinct().ToArray();
        var parts = places.Any(place => place.Part is null) ? [] : places.Select(place => place.Part!).Distinct().ToArray();
        return (with.Length == 0 ? "" : $" with {Names(with)}") + (parts.Length == 0 ? "" : $" on {Names(parts)}");
    }

    private static string Names(IEnumerable<string> names)
    {
        var all = names.Distinct().ToArray();
        return string.Join(", ", all.Take(MostNames).Select(name => $"`{name}`")) + (all.Length > MostNames ? $" and {all.Length - MostNames} more" : "");
    }
}

/// <summary>Gathers what was found place by place: the same of several places is one change, with the edits that made it.</summary>
internal sealed class FactList(ReachSides sides)
{
    private const int Many = 12;

    private readonly Dictionary<(RecordKind About, ChangeKind Kind, string Text), Entry> _found = [];

    /// <summary>Adds what is so at a place.</summary>
    /// <param name="about">What kind of statement reaches the place.</param>
    /// <param name="kind">In which way it changed.</param>
    /// <param name="text">What it means.</param>
    /// <param name="place">The place.</param>
    /// <param name="causes">The edits that may have made it so: those of the statement itself, else those of what stands above the place.</param>
    /// <param name="evidence">How well it is known now; null where it asks rather than permits.</param>
    public void Add(RecordKind about, ChangeKind kind, string text, FactPlace place, IEnumerable<RecordEdit> causes, EvidenceWeight? evidence = null)
    {
        if (!_found.TryGetValue((about, kind, text), out var entry)) _found[(about, kind, text)] = entry = new([], new(ReferenceEqualityComparer.Instance),
            evidence);
        entry.Places.Add(place);
        entry.Causes.UnionWith(causes);
    }

    /// <summary>The edits of some records; where none of them was edited, of the agent, and of the part, and of all above these.</summary>
    public IEnumerable<RecordEdit> Causes(RecordKind kind, IEnumerable<string> ids, IEnumerable<string> agents, string? part = null)
    {
        var own = ids.Select(id => sides.EditOf(kind, id)).OfType<RecordEdit>().ToArray();
        return own.Length > 0 ? own
            : agents.SelectMany(agent => sides.EditsAbove(RecordKind.Agent, agent)).Concat(part is null ? [] : sides.EditsAbove(RecordKind.Part, part));
    }

    /// <summary>All that was found, each change under every edit that may have made it.</summary>
    public IEnumerable<(RecordEdit? Cause, FactChange Change)> All()
    {
        foreach (var ((about, kind, text), entry) in _found)
        {
            var change = new FactChange(kind, $"{text}: {FactPlace.Line(entry.Places)}{(entry.Places.Count > Many ? $" ({entry.Places.Count} in all)" : "")}",
                entry.Evidence)
            { About = about, Reaches = entry.Places };
            if (entry.Causes.Count == 0) yield return (null, change);
            foreach (var cause in entry.Causes.OrderBy(edit => edit.Kind).ThenBy(edit => edit.Id, StringComparer.Ordinal)) yield return (cause, change);
        }
    }

    private sealed record Entry(List<FactPlace> Places, HashSet<RecordEdit> Causes, EvidenceWeight? Evidence);
}
