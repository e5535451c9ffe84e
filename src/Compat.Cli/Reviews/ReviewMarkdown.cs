using System.Text;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Reviews;

/// <summary>Writes what a review found as a comment on a pull request. It fits what a forge takes; what was left out is counted.</summary>
internal sealed class ReviewMarkdown(ReviewCall call, Names names)
{
    /// <summary>The longest comment, in UTF-16 units.</summary>
    public const int Longest = 65_536;

    private const int MostNames = 12;

    /// <summary>How many rows of each folded table are tried, one after the other, until the comment fits.</summary>
    private static readonly int[] Rows = [100, 30, 10, 3, 0];

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
        if (report.IsWithoutChange) return text.Append("No answer changes.\n\n").ToString();
        text.Append("| what | edits | boxes | statements |\n| --- | ---: | ---: | ---: |\n");
        foreach (var kind in report.Groups.GroupBy(group => group.Kind))
            text.Append($"| {ReviewWords.Of(kind.Key)} | {kind.Count()} | {kind.Sum(group => group.Answers.Count)} | {kind.Sum(group => group.Facts.Count)} |\n");
        return text.Append('\n').ToString();
    }

    private string Block(ReviewGroup group, int rows)
    {
        var text = new StringBuilder($"### {Capital(ReviewWords.Of(group.Kind))}: {Markdown.Text(ReviewWords.Cause(group))}\n\n");
        if (group.Cause is { } cause)
        {
            text.Append(Markdown.Code(call.Where(cause))).Append("\n\n");
            foreach (var field in call.Places.FieldsOf(cause)) text.Append("- ").Append(Markdown.Text(ReviewWords.Of(field).Replace("->", "→", StringComparison.Ordinal))).Append('\n');
            if (cause.Fields.Count > 0) text.Append('\n');
        }

        foreach (var fact in group.Facts) text.Append("- ").Append(Markdown.Text(fact.Text)).Append(fact.Evidence is { } weight ? $" (evidence: {ReviewWords.Of(weight)})" : "").Append('\n');
        if (group.Facts.Count > 0) text.Append('\n');
        if (group.Answers.Count == 0) return text.ToString();
        Widest(text, group);
        Folded(text, group.Answers.Skip(1).ToArray(), rows);
        return text.ToString();
    }

    private void Widest(StringBuilder text, ReviewGroup group)
    {
        var widest = group.Answers[0];
        text.Append($"{ReviewWords.Counts(group)}. {(group.Answers.Count == 1 ? "The box" : "The widest box")}: {Markdown.Code(ReviewWords.Subject(widest))} with {Markdown.Code(widest.Agent.Value)}, **{ReviewWords.FromTo(widest).Replace("->", "→", StringComparison.Ordinal)}**\n");
        text.Append($"at {Markdown.Code(ReviewCall.At(widest))};\ndecided by {Markdown.Text(ReviewWords.Decided(widest))}; evidence: {ReviewWords.Evidence(widest)}.\n\n");
        foreach (var duty in widest.DutiesDropped) text.Append($"- no longer: {Markdown.Text(DutyWording.Of(duty, names).Replace('\u00a0', ' '))}\n");
        foreach (var duty in widest.DutiesAdded) text.Append($"- now also: {Markdown.Text(DutyWording.Of(duty, names).Replace('\u00a0', ' '))}\n");
        if (widest.DutiesDropped.Count + widest.DutiesAdded.Count > 0) text.Append('\n');
        text.Append(Markdown.Block(call.Ask(widest))).Append('\n');
    }

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

    private static string Rest(ReviewReport report, bool full)
    {
        var text = new StringBuilder();
        foreach (var finding in report.Contradictions.Take(full ? int.MaxValue : 20)) text.Append("- **contradiction**: ").Append(Markdown.Text(finding.Message)).Append('\n');
        if (report.Contradictions.Count > 0) text.Append('\n');
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
            foreach (var edit in all.Take(shown)) text.Append($"- {Markdown.Text(ReviewWords.Of(edit))}{(edit.Fields.Count > 0 ? ": " + Markdown.Text(string.Join(", ", edit.Fields)) : "")}\n");
            if (shown < all.Length) text.Append($"\n{ReviewWords.Count(all.Length - shown, "record")} more, not shown here.\n");
            text.Append("\n</details>\n\n");
        }
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
