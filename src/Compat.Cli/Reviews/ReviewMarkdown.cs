using System.Text;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Curation.Checking;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Reviews;

/// <summary>Writes what a review found as a comment on a pull request. It fits what a forge takes; what was left out is counted.</summary>
internal sealed class ReviewMarkdown(ReviewCall call, Names names)
{
    /// <summary>The longest comment, in UTF-16 units.</summary>
    public const int Longest = 65_536;

    private const int MostNames = 12;
    private const int MostSteps = 12;
    private const int MostFindings = 20;

    /// <summary>How many rows of each folded table are tried, one after the other, until the comment fits.</summary>
    private static readonly int[] Rows = [100, 30, 10, 3, 0];

    /// <summary>The comment where files cannot be read, so that nothing can be judged.</summary>
    /// <param name="title">What was to be compared.</param>
    /// <param name="state">The state that cannot be read.</param>
    /// <param name="text">What is wrong, in lines.</param>
    public static string Unreadable(string title, Revision state, string text)
    {
        var shown = text.Length <= Longest / 2 ? text : text[..(Longest / 2)] + "\n…\n";
        return $"## Cannot be judged: {Markdown.Text(title)}\n\n{Markdown.Text(state.Heading)} cannot be read. What an earlier comment says does not hold for it.\n\n{Markdown.Lines(shown)}";
    }

    /// <summary>The comment.</summary>
    public string Of(ReviewReport report)
    {
        var most = call.IsVerbose ? Rows.Prepend(int.MaxValue) : Rows;
        foreach (var rows in most)
            if (Whole(report, rows) is { Length: <= Longest } whole) return whole;
        return Cut(report);
    }

    private string Whole(ReviewReport report, int rows) => Head(report) + StaleMarkdown.Of(call, names, rows) + string.Concat(report.Groups.Select(group => Block(group, rows))) + Rest(report, full: true);

    /// <summary>As many groups as fit, the most dangerous first, and how many were left out.</summary>
    private string Cut(ReviewReport report)
    {
        var text = new StringBuilder(Head(report) + StaleMarkdown.Of(call, names, 0));
        var rest = Rest(report, full: false);
        var kept = 0;
        foreach (var group in report.Groups)
        {
            var block = Block(group, 0);
            if (text.Length + block.Length + rest.Length + 200 > Longest) break;
            text.Append(block);
            kept++;
        }

        var left = report.Groups.Skip(kept).ToArray();
        if (left.Length > 0)
            text.Append($"**Left out here: {ReviewWords.Count(left.Length, "edit")} with {ReviewWords.Count(left.Sum(group => group.Answers.Count), "box")} and {ReviewWords.Count(left.Sum(group => group.Facts.Count), "statement")}.** `compat review` shows all of them.\n\n");
        return text.Append(rest).ToString();
    }

    private string Head(ReviewReport report)
    {
        var text = new StringBuilder($"## What changes in the answers: {Markdown.Text(call.Title)}\n\n");
        if (report.Contradictions.Count > 0) text.Append("**Rules contradict each other: the data cannot be used.**\n\n");
        List(text, report.Contradictions, "contradiction");
        if (report.BrokenStandingRules.Count > 0) text.Append("**Answers break what must stand for ever.**\n\n");
        List(text, report.BrokenStandingRules, "broken standing rule");
        if (report.IsWithoutChange) return text.Append(report.IsBroken ? "" : "No answer changes.\n\n").ToString();
        if (ReviewWords.Worst(report) is { } worst) text.Append($"**{Markdown.Text(worst)}.**\n\n");
        text.Append("| what | edits | boxes | statements |\n| --- | ---: | ---: | ---: |\n");
        foreach (var kind in report.Groups.GroupBy(group => group.Kind))
            text.Append($"| {ReviewWords.Of(kind.Key)} | {kind.Count()} | {kind.Sum(group => group.Answers.Count)} | {kind.Sum(group => group.Facts.Count)} |\n");
        return text.Append('\n').ToString();
    }

    private void List(StringBuilder text, IReadOnlyList<Finding> findings, string what)
    {
        foreach (var finding in findings.Take(MostFindings)) text.Append($"- **{what}**, {Markdown.Code(call.Where(finding))}: {Markdown.Text(finding.Message)}\n");
        if (findings.Count > MostFindings) text.Append($"- {ReviewWords.Count(findings.Count - MostFindings, what)} more: see `compat check`\n");
        if (findings.Count > 0) text.Append('\n');
    }

    private string Block(ReviewGroup group, int rows)
    {
        var text = new StringBuilder($"### {Capital(ReviewWords.Of(group.Kind))}: {Markdown.Text(ReviewWords.Cause(group))}\n\n");
        if (group.Cause is { } cause)
        {
            text.Append(Markdown.Code(call.Where(cause))).Append("\n\n");
            foreach (var field in call.Places.FieldsOf(cause)) text.Append("- ").Append(Markdown.Text(ReviewWords.Of(field, cause).Replace("->", "→", StringComparison.Ordinal))).Append('\n');
            if (call.Places.FieldsOf(cause).Count > 0) text.Append('\n');
        }

        foreach (var fact in group.Facts) text.Append("- ").Append(Markdown.Text(fact.Text)).Append(fact.Evidence is { } weight ? $" (evidence: {ReviewWords.Of(weight)})" : "").Append('\n');
        if (group.Facts.Count > 0) text.Append('\n');
        if (group.Answers.Count == 0) return text.ToString();
        var shown = ReviewWords.Shown(group, names);
        text.Append($"{ReviewWords.Counts(group)}.\n\n");
        foreach (var change in shown.Take(MostSteps)) Box(text, change);
        Folded(text, group.Answers.Except(shown.Take(MostSteps)).ToArray(), rows);
        return text.ToString();
    }

    private void Box(StringBuilder text, AnswerChange change)
    {
        text.Append($"{Markdown.Code(ReviewWords.Subject(change))} with {Markdown.Code(change.Agent.Value)}, **{ReviewWords.FromTo(change).Replace("->", "→", StringComparison.Ordinal)}**\n");
        text.Append($"at {Markdown.Code(ReviewCall.At(change))};\ndecided by {Markdown.Text(ReviewWords.Decided(change))}; evidence: {ReviewWords.Evidence(change)}.\n\n");
        var lines = ReviewWords.Beside(change).Concat(change.DutiesDropped.Select(duty => $"no longer: {Said(duty)}")).Concat(change.DutiesAdded.Select(duty => $"now also: {Said(duty)}")).ToArray();
        foreach (var line in lines) text.Append($"- {Markdown.Text(line)}\n");
        if (lines.Length > 0) text.Append('\n');
        if (call.Checkout is not null) text.Append($"{Markdown.Text(call.AskWhere)}:\n\n");
        text.Append(Markdown.Block(call.Ask(change))).Append('\n');
    }

    private string Said(Duty duty) => DutyWording.Of(duty, names).Replace('\u00a0', ' ');

    private static void Folded(StringBuilder text, AnswerChange[] others, int rows)
    {
        if (others.Length == 0) return;
        if (rows == 0)
        {
            text.Append($"{ReviewWords.Count(others.Length, "box")} more, not shown here.\n\n");
            return;
        }

        text.Append($"<details><summary>{ReviewWords.Count(others.Length, "box")} more</summary>\n\n| parts or materials | agents | answer | at |\n| --- | --- | --- | --- |\n");
        var table = FoldedRow.Of(others);
        foreach (var row in table.Take(rows))
            text.Append($"| {Names(row.Subjects)} | {Names(row.Agents)} | {row.FromTo.Replace("->", "→", StringComparison.Ordinal)} | {Markdown.Code(row.At)} |\n");
        var left = table.Skip(rows).Sum(row => row.Subjects.Count * row.Agents.Count);
        if (left > 0) text.Append($"\n{ReviewWords.Count(left, "box")} more, not shown here.\n");
        text.Append("\n</details>\n\n");
    }

    private static string Names(IReadOnlyList<string> names) =>
        string.Join(", ", names.Take(MostNames).Select(Markdown.Code)) + (names.Count > MostNames ? $" and {names.Count - MostNames} more" : "");

    private string Rest(ReviewReport report, bool full)
    {
        var text = new StringBuilder();
        Section("New", report.WithoutEffect(EditAction.Added).Where(edit => !edit.IsWording));
        Section("Gone", report.WithoutEffect(EditAction.Removed));
        Section("Changes no answer", report.WithoutEffect(EditAction.Changed).Where(edit => !edit.IsWording));
        Section("Renamed", report.Edits.Where(edit => edit.Action == EditAction.Renamed));
        Section("Wording only", report.WithoutEffect(EditAction.Changed).Where(edit => edit.IsWording));
        return text.ToString();

        void Section(string heading, IEnumerable<RecordEdit> edits)
        {
            var all = edits.ToArray();
            if (all.Length == 0) return;
            var shown = full ? all.Length : Math.Min(all.Length, 5);
            text.Append($"<details><summary>{heading}: {ReviewWords.Count(all.Length, "record")}</summary>\n\n");
            foreach (var edit in all.Take(shown))
            {
                text.Append($"- {Markdown.Text(ReviewWords.Of(edit))}{(edit.Fields.Count > 0 ? ": " + Markdown.Text(string.Join(", ", edit.Fields)) : "")}\n");
                if (ReviewWords.IdGone(edit) is { } gone) text.Append($"  - {Markdown.Text(gone)}\n");
                if (full) foreach (var field in call.Places.FieldsOf(edit)) text.Append($"  - {Markdown.Text(ReviewWords.Of(field, edit).Replace("->", "→", StringComparison.Ordinal))}\n");
            }

            if (shown < all.Length) text.Append($"\n{ReviewWords.Count(all.Length - shown, "record")} more, not shown here.\n");
            text.Append("\n</details>\n\n");
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
