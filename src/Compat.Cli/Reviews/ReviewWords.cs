using Compat.Curation.Reviewing;
using Compat.Exposures;

namespace Compat.Cli.Reviews;

/// <summary>Says what a review found in words that every format shares. Text of the data stands in backticks.</summary>
internal static class ReviewWords
{
    /// <summary>What the changes of a kind are called.</summary>
    public static string Of(ChangeKind kind) => Plain(Words.Of(kind));

    /// <summary>A verdict.</summary>
    public static string Of(Verdict verdict) => Plain(Words.Of(verdict));

    /// <summary>From which verdict to which.</summary>
    public static string FromTo(AnswerChange change) =>
        change.IsNewAgent ? $"agent not on record -> {Of(change.To)}"
        : change.IsInAnotherUnit ? $"strength in another unit -> {Of(change.To)}"
        : change.From == change.To ? $"{Of(change.To)}, as before" : $"{Of(change.From)} -> {Of(change.To)}";

    /// <summary>What was done to a record.</summary>
    public static string Of(RecordEdit edit) => edit.Action == EditAction.Renamed
        ? $"{Kind(edit)} `{edit.FormerId}` renamed to `{edit.Id}`"
        : $"{Kind(edit)} `{edit.Id}` {Words.Of(edit.Action)}";

    /// <summary>What caused the changes of a group.</summary>
    public static string Cause(ReviewGroup group) => group.Cause is { } edit ? Of(edit) : "several edits together, none of them alone";

    /// <summary>A field on both sides.</summary>
    public static string Of(FieldChange field) => $"{field.Field}: {Said(field.Before)} -> {Said(field.After)}";

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
        var now = Of(change.EvidenceAfter);
        if (change.IsNewAgent || change.IsInAnotherUnit || change.From == Verdict.NotEstablished) return $"{now}; nothing was on record before";
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
    public static string Decided(AnswerChange change) => $"{Ids(change.DecidedBefore)} before, {Ids(change.DecidedAfter)} now";

    /// <summary>One thing or several.</summary>
    public static string Count(int count, string what)
    {
        if (count == 1) return $"1 {what}";
        var words = what.Split(' ', 2);
        return words.Length == 2 && words[1].StartsWith("of ", StringComparison.Ordinal) ? $"{count} {words[0]}s {words[1]}"
            : what == "material alone" ? $"{count} materials alone" : what == "box" ? $"{count} boxes" : $"{count} {what}s";
    }

    private static string Ids(IReadOnlyList<RuleId> ids) => ids.Count == 0 ? "no rule" : string.Join(", ", ids.Take(3).Select(id => $"`{id}`")) + (ids.Count > 3 ? $" and {ids.Count - 3} more" : "");

    private static string Kind(RecordEdit edit) => Plain(Words.Of(edit.Kind));

    private static string Said(string? text) => text is null ? "not stated" : $"`{text.Replace('`', '\'')}`";

    private static string Plain(string word) => word.Replace('-', ' ');
}
