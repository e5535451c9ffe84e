using Compat.Cli.Wording;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Reviews;

/// <summary>Says what a review found in words that every format shares. Text of the data stands in backticks.</summary>
internal static class ReviewWords
{
    private const int LongestField = 160;

    /// <summary>What the changes of a kind are called.</summary>
    public static string Of(ChangeKind kind) => Plain(Words.Of(kind));

    /// <summary>A verdict.</summary>
    public static string Of(Verdict verdict) => Plain(Words.Of(verdict));

    /// <summary>From which verdict to which.</summary>
    public static string FromTo(AnswerChange change) =>
        change.IsNewSubject ? $"{(change.SubjectKind == SubjectKind.Material ? "material" : "part")} not on record -> {Of(change.To)}"
        : change.IsNewAgent ? $"agent not on record -> {Of(change.To)}"
        : change.IsInAnotherUnit ? $"strength in another unit -> {Of(change.To)}"
        : change.From == change.To ? $"{Of(change.To)}, as before" : $"{Of(change.From)} -> {Of(change.To)}";

    /// <summary>What was done to a record.</summary>
    public static string Of(RecordEdit edit) => edit.Action == EditAction.Renamed
        ? $"{Kind(edit)} `{edit.FormerId}` renamed to `{edit.Id}`"
        : $"{Kind(edit)} `{edit.Id}` {Words.Of(edit.Action)}";

    /// <summary>What caused the changes of a group.</summary>
    public static string Cause(ReviewGroup group) => group.Cause is { } edit ? Of(edit) : "several edits together, none of them alone";

    /// <summary>A field on both sides; of a record that is new or gone what it says or said.</summary>
    public static string Of(FieldChange field, RecordEdit edit)
    {
        var shown = field.Around(LongestField);
        return edit.Action is EditAction.Added or EditAction.Removed ? $"{shown.Field}: {Said(shown.After ?? shown.Before)}" : $"{shown.Field}: {Said(shown.Before)} -> {Said(shown.After)}";
    }

    /// <summary>The boxes of a group that are shown: of what is dangerous the worst of each kind of step, of what is not the first alone.</summary>
    public static IReadOnlyList<AnswerChange> Shown(ReviewGroup group, Names names) => group.Kind > ChangeKind.PreventsLess ? group.Answers.Take(1).ToArray()
        : group.Answers.GroupBy(change => $"{FromTo(change)} {change.Prevented} {change.Prevents} {string.Join(" ", change.SetAside)} {string.Join(" ", change.DutiesDropped.Select(duty => DutyWording.Of(duty, names)))}").Select(step => step.First()).ToArray();

    /// <summary>What else is to be said of a box: what was set aside, what was prevented.</summary>
    public static IEnumerable<string> Beside(AnswerChange change)
    {
        foreach (var one in change.SetAside.GroupBy(one => one.Rule)) yield return $"set aside: `{one.Key}`, by {Ids(one.Select(by => by.By).ToArray())}";
        if (change.Prevented is { } was && change.To > Verdict.NotAllowed) yield return $"prevented before: {Plain(Words.Of(was))}";
        if (change.Prevented is { } before && change.Prevents is { } now && before != now && change.To == Verdict.NotAllowed) yield return $"prevents now: {Plain(Words.Of(now))}, before: {Plain(Words.Of(before))}";
    }

    /// <summary>What becomes permitted that was forbidden, with the worst of it; null where nothing does.</summary>
    public static string? Worst(ReviewReport report)
    {
        var all = report.Groups.SelectMany(group => group.Answers).Where(change => change.Step == AnswerStep.ForbiddenToPermitted).Distinct().ToArray();
        if (all.Length == 0) return null;
        var worst = report.Groups.First(group => group.Answers.Any(change => change.Step == AnswerStep.ForbiddenToPermitted)).Answers[0];
        return $"{Count(all.Length, "box")} permitted that {(all.Length == 1 ? "was" : "were")} forbidden; the worst: `{Subject(worst)}` with `{worst.Agent}`{(worst.Prevented is { } was ? $", prevented before: {Plain(Words.Of(was))}" : "")}, on {Of(worst.EvidenceAfter)}";
    }

    /// <summary>What a rename or removal does to those who ask by the id; null where nobody can.</summary>
    public static string? IdGone(RecordEdit edit)
    {
        if (edit.Action is not (EditAction.Renamed or EditAction.Removed) || edit.Kind is not (Validation.RecordKind.Part or Validation.RecordKind.Agent or Validation.RecordKind.Material or Validation.RecordKind.Organism)) return null;
        return $"the id `{edit.FormerId ?? edit.Id}` is gone: a question or a site that names it is refused{(edit.KeepsFormerId ? ", `find` still finds it" : "")}";
    }

    /// <summary>How many part types, parts of devices, materials and agents the changes of a group touch; null where it holds none.</summary>
    public static string? Counts(ReviewGroup group)
    {
        if (group.Answers.Count == 0) return null;
        var counts = new[] { (SubjectKind.PartType, "part type"), (SubjectKind.DevicePart, "part of a device"), (SubjectKind.Material, "material alone") }
            .Select(one => (Count: group.Answers.Where(change => change.SubjectKind == one.Item1).Select(change => change.Subject).Distinct().Count(), Name: one.Item2))
            .Where(one => one.Count > 0).Select(one => Count(one.Count, one.Name));
        return string.Join(", ", counts.Append(Count(group.Answers.Select(change => change.Agent).Distinct().Count(), "agent")));
    }

    /// <summary>What a change is asked of, with the serial number where editions of instructions tell devices apart.</summary>
    public static string Subject(AnswerChange change) => change.Serial is { } serial ? $"{change.Subject}, serial {serial}" : change.Subject;

    /// <summary>How well a change is known, and whether that is stronger than what it replaces.</summary>
    public static string Evidence(AnswerChange change)
    {
        if (change.To == Verdict.NotEstablished) return "nothing on record now";
        if (change.BarrierAfter is not null) return "by no source: the part or its instructions keep it out";
        var now = Of(change.EvidenceAfter);
        if (change.BarrierBefore is not null) return $"{now}; no source forbade it before";
        if (change.IsNewSubject || change.IsNewAgent || change.IsInAnotherUnit || change.From == Verdict.NotEstablished) return $"{now}; nothing was on record before";
        var compared = change.EvidenceAfter.CompareTo(change.EvidenceBefore);
        return compared == 0 ? $"{now}, as before" : $"{now}, {(compared > 0 ? "stronger" : "weaker")} than before ({Of(change.EvidenceBefore)})";
    }

    /// <summary>A weight of evidence.</summary>
    public static string Of(EvidenceWeight weight) => weight switch
    {
        EvidenceWeight.Practice => "common practice or nothing",
        EvidenceWeight.Recalled => "a recalled source",
        EvidenceWeight.Copy => "a publication, read as a copy",
        _ => "a source read at its publisher",
    };

    /// <summary>The rules that decided before and decide now.</summary>
    public static string Decided(AnswerChange change) => $"{Decided(change.DecidedBefore, change.BarrierBefore)} before, {Decided(change.DecidedAfter, change.BarrierAfter)} now";

    private static string Decided(IReadOnlyList<RuleId> ids, Reason? barrier) => barrier?.Code switch
    {
        ReasonCode.TooWet => $"no rule (the part does not stand `{barrier.Arguments[0]}`)",
        ReasonCode.NotListed => "no rule (the instructions list other things only)",
        ReasonCode.ResidueStays => "no rule (the part stands no way to take the residue off)",
        _ => Ids(ids),
    };

    /// <summary>One thing or several.</summary>
    public static string Count(int count, string what)
    {
        if (count == 1) return $"1 {what}";
        var words = what.Split(' ', 2);
        return words.Length == 2 && words[1].StartsWith("of ", StringComparison.Ordinal) ? $"{count} {words[0]}s {words[1]}"
            : what == "material alone" ? $"{count} materials alone" : what == "box" ? $"{count} boxes" : $"{count} {what}s";
    }

    private static string Ids(IReadOnlyList<RuleId> ids) => ids.Count == 0 ? "no rule" : string.Join(", ", ids.Take(3).Select(id => $"`{id}`")) + (ids.Count > 3 ? $" and {ids.Count - 3} more" : "");

    private static string Kind(RecordEdit edit) => edit.CalledAs ?? Plain(Words.Of(edit.Kind));

    private static string Said(string? text) => text is null ? "not stated" : $"`{text.Replace('`', '\'')}`";

    private static string Plain(string word) => word.Replace('-', ' ');
}
