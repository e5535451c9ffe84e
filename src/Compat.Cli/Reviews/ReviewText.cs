using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Reviews;

/// <summary>Writes what a review found for people: one heading an edit, its line with a caret, the widest box, a question to ask.</summary>
internal sealed class ReviewText(TextWriter writer, ReviewCall call, Names names)
{
    public void Write(ReviewReport report)
    {
        foreach (var finding in report.Contradictions) Line($"{call.Where(finding)}: error: contradiction: {finding.Message}");
        foreach (var finding in report.BrokenStandingRules) Line($"{call.Where(finding)}: error: broken standing rule: {finding.Message}");
        if (report.IsBroken) Line("");
        foreach (var line in StaleWords.Report(call, names)) Line(line);
        foreach (var group in report.Groups) Write(group);
        WriteList("new", report.WithoutEffect(EditAction.Added).Where(edit => !edit.IsWording));
        WriteList("gone", report.WithoutEffect(EditAction.Removed));
        WriteList("changes no answer", report.WithoutEffect(EditAction.Changed).Where(edit => !edit.IsWording));
        WriteList("renamed", report.Edits.Where(edit => edit.Action == EditAction.Renamed));
        WriteList("wording only", report.WithoutEffect(EditAction.Changed).Where(edit => edit.IsWording));
        if (ReviewWords.Worst(report) is { } worst) Line(worst);
        Line(Sum(report));
        if (call.Stale is { } stale) Line(StaleWords.Sum(stale, call.Plans));
    }

    /// <summary>What was found in one line.</summary>
    public static string Sum(ReviewReport report)
    {
        var broken = new[] { Broken(report.Contradictions.Count, "contradiction"), Broken(report.BrokenStandingRules.Count, "broken standing rule") };
        if (report.IsWithoutChange && !report.IsBroken) return "no answer changes" + (report.Edits.Count == 0 ? "" : $" ({ReviewWords.Count(report.Edits.Count, "record")} edited)");
        return string.Join(", ", broken.OfType<string>().Concat(report.Groups.GroupBy(group => group.Kind).Select(kind => $"{ReviewWords.Of(kind.Key)}: {Size(kind)}")));
    }

    private static string? Broken(int count, string what) => count == 0 ? null : ReviewWords.Count(count, what);

    private static string Size(IEnumerable<ReviewGroup> groups)
    {
        var boxes = groups.Sum(group => group.Answers.Count);
        var facts = groups.Sum(group => group.Facts.Count);
        return string.Join(" and ", new[] { boxes > 0 ? ReviewWords.Count(boxes, "box") : null, facts > 0 ? ReviewWords.Count(facts, "statement") : null }.OfType<string>());
    }

    private void Write(ReviewGroup group)
    {
        Line($"{(group.Cause is null ? call.Directory : call.Where(group.Cause))}: {ReviewWords.Of(group.Kind)}: {ReviewWords.Cause(group)}");
        if (group.Cause is { } cause)
        {
            if (call.Places.Of(cause) is { } place) writer.Write(DiagnosticText.Excerpt(place));
            foreach (var field in call.Places.FieldsOf(cause)) Line("  " + ReviewWords.Of(field, cause));
        }

        foreach (var fact in group.Facts) Line($"  {fact.Text}{(fact.Evidence is { } weight ? $"; evidence: {ReviewWords.Of(weight)}" : "")}");
        if (ReviewWords.Counts(group) is { } counts) Line("  " + counts);
        var shown = call.IsVerbose ? group.Answers : ReviewWords.Shown(group, names);
        foreach (var change in shown) Write(change);
        if (shown.Count < group.Answers.Count) Line($"  and {ReviewWords.Count(group.Answers.Count - shown.Count, "box")} more of the same: see --verbose");
        Line("");
    }

    private void Write(AnswerChange change)
    {
        Line($"  `{ReviewWords.Subject(change)}` with `{change.Agent}`: {ReviewWords.FromTo(change)}");
        Line($"    at: {ReviewCall.At(change)}");
        Line($"    decided by: {ReviewWords.Decided(change)}");
        foreach (var line in ReviewWords.Beside(change)) Line($"    {line}");
        foreach (var duty in change.DutiesDropped) Line($"    no longer: {Of(duty)}");
        foreach (var duty in change.DutiesAdded) Line($"    now also: {Of(duty)}");
        Line($"    evidence: {ReviewWords.Evidence(change)}");
        Line($"    {call.AskWhere}: {call.Ask(change)}");
    }

    private string Of(Duty duty) => DutyWording.Of(duty, names).Replace('\u00a0', ' ');

    private void WriteList(string what, IEnumerable<RecordEdit> edits)
    {
        var all = edits.ToArray();
        if (all.Length == 0) return;
        Line(what + ":");
        foreach (var edit in all)
        {
            Line($"  {call.Where(edit)}: {ReviewWords.Of(edit)}{(edit.Fields.Count > 0 ? ": " + string.Join(", ", edit.Fields) : "")}");
            if (ReviewWords.IdGone(edit) is { } gone) Line($"    {gone}");
            foreach (var field in call.Places.FieldsOf(edit)) Line($"    {ReviewWords.Of(field, edit)}");
        }

        Line("");
    }

    private void Line(string text) => writer.Write(text.Length == 0 ? "\n" : Printable.Of(text) + "\n");
}
