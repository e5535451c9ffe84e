using System.Text;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Curation.Recorded;
using Compat.Curation.Reviewing;
using Ground = Compat.Curation.Recorded.Ground;

namespace Compat.Cli.Say;

/// <summary>What was reviewed and where its records stand, for writing what differs.</summary>
internal sealed record ReviewCall(string Directory, IReadOnlyList<string> Sites, string Title, bool IsVerbose, EditPlaces Places)
{
    /// <summary>The revision in a checkout of which questions are asked; null where they are asked as things stand.</summary>
    public string? Checkout { get; init; }

    /// <summary>What stands before a question: where it is to be asked.</summary>
    public string AskWhere => Checkout is null ? "ask" : $"ask in a checkout of `{Checkout}`";

    /// <summary>The plans of which answers no longer hold; null where none were looked at.</summary>
    public IReadOnlyList<StalePlan>? Stale { get; init; }
    public int Plans { get; init; }

    public string Ask(AnswerChange change) => WitnessLine.Of(change.Question, Directory, Sites);

    public static string At(AnswerChange change) => BoxLine.Of(change.Box, change.Basis);

    /// <summary>File, line and column of what decided an answer, in HEAD or in BASE; null where it stands in no file.</summary>
    public string? Where(Ground ground) => StaleWords.PlaceOf(ground) is var record && (Places.Head.Find(record) ?? Places.Base.Find(record)) is { } place
        ? DiagnosticText.Where(place) : null;

    /// <summary>File, line and column of what a check found; the data folder where it stands in no file.</summary>
    public string Where(Finding finding) => Places.Head.Find(finding.Involved[0].Place) is { } place ? DiagnosticText.Where(place) : Directory;

    /// <summary>File, line and column of an edit; the data folder where it stands in no file.</summary>
    public string Where(RecordEdit edit) => Places.Of(edit) is { } place ? DiagnosticText.Where(place) : Directory;
}

/// <summary>Boxes that say the same of several parts and agents, in one row.</summary>
/// <param name="Agents">The agents, each on each of these.</param>
internal sealed record FoldedRow(IReadOnlyList<string> Subjects, IReadOnlyList<string> Agents, string FromTo, string At)
{
    /// <summary>The rows of some changes, in the order of the first change of each.</summary>
    public static IReadOnlyList<FoldedRow> Of(IEnumerable<AnswerChange> changes) => changes
        .GroupBy(change => (Subject: ReviewWords.Subject(change), FromTo: ReviewWords.FromTo(change), At: ReviewCall.At(change)))
        .Select(group => (group.Key, Agents: group.Select(change => change.Agent.Value).Distinct().ToArray()))
        .GroupBy(row => (Agents: string.Join(" ", row.Agents), row.Key.FromTo, row.Key.At))
        .Select(group => new FoldedRow(group.Select(row => row.Key.Subject).ToArray(), group.First().Agents, group.Key.FromTo, group.Key.At)).ToArray();
}

/// <summary>Says what a review found in words that every format shares. Text of the data stands in backticks.</summary>
internal static class ReviewWords
{
    private const int LongestField = 160;

    public static string Of(ChangeKind kind) => Words.Of(kind).Spaced();

    public static string Of(Verdict verdict) => Words.Of(verdict).Spaced();

    public static string FromTo(AnswerChange change) =>
        change.IsNewSubject ? $"{(change.SubjectKind == SubjectKind.Material ? "material" : "part")} not on record -> {Of(change.To)}"
        : change.IsNewAgent ? $"agent not on record -> {Of(change.To)}"
        : change.IsInAnotherUnit ? $"strength in another unit -> {Of(change.To)}"
        : change.From == change.To ? $"{Of(change.To)}, as before" : $"{Of(change.From)} -> {Of(change.To)}";

    public static string Of(RecordEdit edit) => edit.Action == EditAction.Renamed
        ? $"{Kind(edit)} `{edit.FormerId}` renamed to `{edit.Id}`"
        : $"{Kind(edit)} `{edit.Id}` {Words.Of(edit.Action)}";

    public static string Cause(ReviewGroup group) => group.Cause is { } edit ? Of(edit) : "several edits together, none of them alone";

    /// <summary>A field on both sides; of a record that is new or gone what it says or said.</summary>
    public static string Of(FieldChange field, RecordEdit edit)
    {
        var shown = field.Around(LongestField);
        return edit.Action is EditAction.Added or EditAction.Removed ? $"{shown.Field}: {Said(shown.After ?? shown.Before)}"
            : $"{shown.Field}: {Said(shown.Before)} -> {Said(shown.After)}";
    }

    /// <summary>The boxes of a group that are shown: of what is dangerous the worst of each kind of step, of what is not the first alone.</summary>
    public static IReadOnlyList<AnswerChange> Shown(ReviewGroup group, Names names) => group.Kind > ChangeKind.PreventsLess ? group.Answers.Take(1).ToArray()
        : group.Answers.GroupBy(change => $"{FromTo(change)} {change.Prevented} {change.Prevents} {string.Join(" ", change.SetAside)} "
            + $"{string.Join(" ", change.DutiesDropped.Select(duty => DutyWording.Of(duty, names)))}").Select(step => step.First()).ToArray();

    /// <summary>What else is to be said of a box: what was set aside, what was prevented.</summary>
    public static IEnumerable<string> Beside(AnswerChange change)
    {
        foreach (var one in change.SetAside.GroupBy(one => one.Rule)) yield return $"set aside: `{one.Key}`, by {Ids(one.Select(by => by.By).ToArray())}";
        if (change.Prevented is { } was && change.To > Verdict.NotAllowed) yield return $"prevented before: {Words.Of(was).Spaced()}";
        if (change.Prevented is { } before && change.Prevents is { } now && before != now
            && change.To == Verdict.NotAllowed) yield return $"prevents now: {Words.Of(now).Spaced()}, before: {Words.Of(before).Spaced()}";
    }

    /// <summary>What becomes permitted that was forbidden, with the worst of it; null where nothing does.</summary>
    public static string? Worst(ReviewReport report)
    {
        var all = report.Groups.SelectMany(group => group.Answers).Where(change => change.Step == AnswerStep.ForbiddenToPermitted).Distinct().ToArray();
        if (all.Length == 0) return null;
        var worst = report.Groups.First(group => group.Answers.Any(change => change.Step == AnswerStep.ForbiddenToPermitted)).Answers[0];
        return $"{English.Count(all.Length, "box")} permitted that {(all.Length == 1 ? "was" : "were")} forbidden; the worst: `{Subject(worst)}` with "
            + $"`{worst.Agent}`{(worst.Prevented is { } was ? $", prevented before: {Words.Of(was).Spaced()}" : "")}, on {Of(worst.EvidenceAfter)}";
    }

    /// <summary>What a rename or removal does to those who ask by the id; null where nobody can.</summary>
    public static string? IdGone(RecordEdit edit)
    {
        if (edit.Action is not (EditAction.Renamed or EditAction.Removed) || edit.Kind is not (
            Validation.RecordKind.Part or Validation.RecordKind.Agent or Validation.RecordKind.Material or Validation.RecordKind.Organism)) return null;
        return $"the id `{edit.FormerId ?? edit.Id}` is gone: a question or a site that names it is "
            + $"refused{(edit.KeepsFormerId ? ", `find` still finds it" : "")}";
    }

    /// <summary>How many part types, parts of devices, materials and agents the changes of a group touch; null where it holds none.</summary>
    public static string? Counts(ReviewGroup group)
    {
        if (group.Answers.Count == 0) return null;
        var counts = new[] { (SubjectKind.PartType, "part type"), (SubjectKind.DevicePart, "part of a device"), (SubjectKind.Material, "material alone") }
            .Select(one => (Count: group.Answers.Where(change => change.SubjectKind == one.Item1).Select(change => change.Subject).Distinct().Count(),
                Name: one.Item2))
            .Where(one => one.Count > 0).Select(one => English.Count(one.Count, one.Name));
        return string.Join(", ", counts.Append(English.Count(group.Answers.Select(change => change.Agent).Distinct().Count(), "agent")));
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
        if (change.IsNewSubject || change.IsNewAgent || change.IsInAnotherUnit
            || change.From == Verdict.NotEstablished) return $"{now}; nothing was on record before";
        var compared = change.EvidenceAfter.CompareTo(change.EvidenceBefore);
        return compared == 0 ? $"{now}, as before" : $"{now}, {(compared > 0 ? "stronger" : "weaker")} than before ({Of(change.EvidenceBefore)})";
    }

    public static string Of(EvidenceWeight weight) => weight switch
    {
        EvidenceWeight.Practice => "common practice or nothing",
        EvidenceWeight.Recalled => "a recalled source",
        EvidenceWeight.Copy => "a publication, read as a copy",
        _ => "a source read at its publisher",
    };

    public static string Decided(AnswerChange change) =>
        $"{Decided(change.DecidedBefore, change.BarrierBefore)} before, {Decided(change.DecidedAfter, change.BarrierAfter)} now";

    private static string Decided(IReadOnlyList<RuleId> ids, Reason? barrier) => barrier?.Code switch
    {
        ReasonCode.TooWet => $"no rule (the part does not stand `{barrier.Arguments[0]}`)",
        ReasonCode.NotListed => "no rule (the instructions list other things only)",
        ReasonCode.ResidueStays => "no rule (the part stands no way to take the residue off)",
        _ => Ids(ids),
    };

    private static string Ids(IReadOnlyList<RuleId> ids) => ids.Count == 0 ? "no rule"
        : string.Join(", ", ids.Take(3).Select(id => $"`{id}`")) + (ids.Count > 3 ? $" and {ids.Count - 3} more" : "");

    private static string Kind(RecordEdit edit) => edit.CalledAs ?? Words.Of(edit.Kind).Spaced();

    private static string Said(string? text) => text is null ? "not stated" : $"`{text.Replace('`', '\'')}`";
}

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

    public static string Sum(ReviewReport report)
    {
        var broken = new[] { Broken(report.Contradictions.Count, "contradiction"), Broken(report.BrokenStandingRules.Count, "broken standing rule") };
        if (report.IsWithoutChange && !report.IsBroken) return "no answer changes" + (
            report.Edits.Count == 0 ? "" : $" ({English.Count(report.Edits.Count, "record")} edited)");
        return string.Join(", ", broken.OfType<string>().Concat(report.Groups.GroupBy(group => group.Kind)
            .Select(kind => $"{ReviewWords.Of(kind.Key)}: {Size(kind)}")));
    }

    private static string? Broken(int count, string what) => count == 0 ? null : English.Count(count, what);

    private static string Size(IEnumerable<ReviewGroup> groups)
    {
        var boxes = groups.Sum(group => group.Answers.Count);
        var facts = groups.Sum(group => group.Facts.Count);
        return string.Join(" and ", new[] { boxes > 0 ? English.Count(boxes, "box") : null, facts > 0 ? English.Count(facts, "statement")
            : null }.OfType<string>());
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
        if (shown.Count < group.Answers.Count) Line($"  and {English.Count(group.Answers.Count - shown.Count, "box")} more of the same: see --verbose");
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

    private string Of(Duty duty) => DutyWording.Of(duty, names).Unjoined();

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
    public static string Unreadable(string title, Revision state, string text)
    {
        var shown = text.Length <= Longest / 2 ? text : text[..(Longest / 2)] + "\n…\n";
        return $"## Cannot be judged: {Markdown.Text(title)}\n\n{Markdown.Text(state.Heading)} cannot be read. What an earlier comment says does not hold "
            + $"for it.\n\n{Markdown.Lines(shown)}";
    }

    public string Of(ReviewReport report)
    {
        var most = call.IsVerbose ? Rows.Prepend(int.MaxValue) : Rows;
        foreach (var rows in most)
            if (Whole(report, rows) is { Length: <= Longest } whole) return whole;
        return Cut(report);
    }

    private string Whole(ReviewReport report, int rows) => Head(report) + StaleMarkdown.Of(call, names, rows)
        + string.Concat(report.Groups.Select(group => Block(group, rows))) + Rest(report, full: true);

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
            text.Append($"**Left out here: {English.Count(left.Length, "edit")} with {English.Count(left.Sum(group => group.Answers.Count), "box")} and "
                + $"{English.Count(left.Sum(group => group.Facts.Count), "statement")}.** `compat review` shows all of them.\n\n");
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
            text.Append(
                $"| {ReviewWords.Of(kind.Key)} | {kind.Count()} | {kind.Sum(group => group.Answers.Count)} | {kind.Sum(group => group.Facts.Count)} |\n");
        return text.Append('\n').ToString();
    }

    private void List(StringBuilder text, IReadOnlyList<Finding> findings, string what)
    {
        foreach (var finding in findings.Take(MostFindings)) text.Append(
            $"- **{what}**, {Markdown.Code(call.Where(finding))}: {Markdown.Text(finding.Message)}\n");
        if (findings.Count > MostFindings) text.Append($"- {English.Count(findings.Count - MostFindings, what)} more: see `compat check`\n");
        if (findings.Count > 0) text.Append('\n');
    }

    private string Block(ReviewGroup group, int rows)
    {
        var text = new StringBuilder($"### {ReviewWords.Of(group.Kind).Capital()}: {Markdown.Text(ReviewWords.Cause(group))}\n\n");
        if (group.Cause is { } cause)
        {
            text.Append(Markdown.Code(call.Where(cause))).Append("\n\n");
            foreach (var field in call.Places.FieldsOf(cause)) text.Append("- ").Append(
                Markdown.Text(ReviewWords.Of(field, cause).Replace("->", "→", StringComparison.Ordinal))).Append('\n');
            if (call.Places.FieldsOf(cause).Count > 0) text.Append('\n');
        }

        foreach (var fact in group.Facts) text.Append("- ").Append(Markdown.Text(fact.Text))
            .Append(fact.Evidence is { } weight ? $" (evidence: {ReviewWords.Of(weight)})" : "").Append('\n');
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
        text.Append($"{Markdown.Code(ReviewWords.Subject(change))} with {Markdown.Code(change.Agent.Value)}, "
            + $"**{ReviewWords.FromTo(change).Replace("->", "→", StringComparison.Ordinal)}**\n");
        text.Append($"at {Markdown.Code(ReviewCall.At(change))};\ndecided by {Markdown.Text(ReviewWords.Decided(change))}; evidence: "
            + $"{ReviewWords.Evidence(change)}.\n\n");
        var lines = ReviewWords.Beside(change).Concat(change.DutiesDropped.Select(duty => $"no longer: {Said(duty)}"))
            .Concat(change.DutiesAdded.Select(duty => $"now also: {Said(duty)}")).ToArray();
        foreach (var line in lines) text.Append($"- {Markdown.Text(line)}\n");
        if (lines.Length > 0) text.Append('\n');
        if (call.Checkout is not null) text.Append($"{Markdown.Text(call.AskWhere)}:\n\n");
        text.Append(Markdown.Block(call.Ask(change))).Append('\n');
    }

    private string Said(Duty duty) => DutyWording.Of(duty, names).Unjoined();

    private static void Folded(StringBuilder text, AnswerChange[] others, int rows)
    {
        if (others.Length == 0) return;
        if (rows == 0)
        {
            text.Append($"{English.Count(others.Length, "box")} more, not shown here.\n\n");
            return;
        }

        text.Append($"<details><summary>{English.Count(others.Length, "box")} more</summary>\n\n| parts or materials | agents | answer | at |\n| --- | --- | "
            + "--- | --- |\n");
        var table = FoldedRow.Of(others);
        foreach (var row in table.Take(rows))
            text.Append(
                $"| {Names(row.Subjects)} | {Names(row.Agents)} | {row.FromTo.Replace("->", "→", StringComparison.Ordinal)} | {Markdown.Code(row.At)} |\n");
        var left = table.Skip(rows).Sum(row => row.Subjects.Count * row.Agents.Count);
        if (left > 0) text.Append($"\n{English.Count(left, "box")} more, not shown here.\n");
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
            text.Append($"<details><summary>{heading}: {English.Count(all.Length, "record")}</summary>\n\n");
            foreach (var edit in all.Take(shown))
            {
                text.Append($"- {Markdown.Text(ReviewWords.Of(edit))}{(edit.Fields.Count > 0 ? ": " + Markdown.Text(string.Join(", ", edit.Fields)) : "")}\n");
                if (ReviewWords.IdGone(edit) is { } gone) text.Append($"  - {Markdown.Text(gone)}\n");
                if (full) foreach (var field in call.Places.FieldsOf(edit)) text.Append(
                    $"  - {Markdown.Text(ReviewWords.Of(field, edit).Replace("->", "→", StringComparison.Ordinal))}\n");
            }

            if (shown < all.Length) text.Append($"\n{English.Count(all.Length - shown, "record")} more, not shown here.\n");
            text.Append("\n</details>\n\n");
        }
    }
}

/// <summary>Says which recorded answers no longer hold, in words that every output shares. Text of the data stands in backticks.</summary>
internal static class StaleWords
{
    /// <summary>The answer: its step, part and product, and from which verdict to which.</summary>
    public static string Of(AnswerDifference difference)
    {
        var question = difference.Recorded.Question;
        var step = difference.Recorded.Step is { } number ? $"step {number}, " : "";
        var product = question.Product is { } id ? $" with `{id}`" : question.Agent is { } agent ? $" with `{agent}`" : "";
        return $"{step}`{question.DevicePart}`{product}: {FromTo(difference)}";
    }

    /// <summary>What is another beside the verdict: the part's own verdict, duties, limits, boxes; or why it cannot be asked.</summary>
    public static IEnumerable<string> Changes(AnswerDifference difference, Names names)
    {
        foreach (var problem in difference.Problems) yield return problem.Message;
        if (difference.Present is { } now && now.Verdict == difference.Recorded.Verdict && now.PartVerdict != difference.Recorded.PartVerdict)
            yield return $"what the part stands: {ReviewWords.Of(difference.Recorded.PartVerdict)} -> {ReviewWords.Of(now.PartVerdict)}";
        foreach (var duty in difference.DutiesAdded) yield return $"now also: {Plain(DutyWording.Of(duty, names))}";
        foreach (var duty in difference.DutiesDropped) yield return $"no longer: {Plain(DutyWording.Of(duty, names))}";
        foreach (var limit in difference.LimitsAdded) yield return $"limited now: {Of(limit)}";
        foreach (var limit in difference.LimitsDropped) yield return $"limited no longer: {Of(limit)}";
        var unit = ExposureWording.Unit(difference.Recorded.Question, names);
        foreach (var box in Few(difference.BoxesLost)) yield return $"not allowed as a whole any more: {Plain(ExposureWording.Of(box, unit))}";
        foreach (var box in Few(difference.BoxesGained)) yield return $"allowed now: {Plain(ExposureWording.Of(box, unit))}";
    }

    public static string Of(Ground ground, string? where) =>
        $"{Plain(Words.Of(ground.Kind), '-')} `{ground.Id}` {(ground.IsNow ? "decides now" : "decided then, not now")}{(where is null ? "" : $": `{where}`")}";

    public static ProblemPlace PlaceOf(Ground ground) =>
        new(ground.Kind, ground.Kind is RecordKind.Product or RecordKind.Device ? ground.Id.Split(": ")[0] : ground.Id);

    public static IEnumerable<string> All(StaleAnswer stale, ReviewCall call, Names names)
    {
        yield return $"{Of(stale.Difference.Standing)}: {Of(stale.Difference)}{(stale.WasStale ? " (so in BASE already)" : "")}";
        foreach (var change in Changes(stale.Difference, names)) yield return change;
        foreach (var ground in stale.Difference.Grounds) yield return Of(ground, call.Where(ground));
        foreach (var edit in stale.Causes.Take(3)) yield return $"by the edit of {ReviewWords.Of(edit)}: `{call.Where(edit)}`";
        if (stale.Causes.Count > 3) yield return $"or by {English.Count(stale.Causes.Count - 3, "edit")} more";
    }

    public static string Of(Standing standing) => Plain(Words.Of(standing), '-');

    /// <summary>The lines of a review in text; none where no plan was looked at or all hold.</summary>
    public static IEnumerable<string> Report(ReviewCall call, Names names)
    {
        foreach (var plan in call.Stale ?? [])
        {
            yield return $"{plan.Plan.Path}: this plan of `{plan.Plan.Device}` {(plan.GoesStale ? "no longer holds" : "did not hold before either")}";
            foreach (var stale in plan.Answers)
            {
                var isFirst = true;
                foreach (var line in All(stale, call, names))
                {
                    yield return (isFirst ? "  " : "    ") + line;
                    isFirst = false;
                }
            }

            yield return "";
        }
    }

    public static string Sum(IReadOnlyList<StalePlan> stale, int plans)
    {
        var going = stale.Where(plan => plan.GoesStale).ToArray();
        var already = stale.Count - going.Length;
        if (stale.Count == 0) return $"plans: {English.Count(plans, "plan")} asked again, all hold";
        if (going.Length == 0) return $"plans: {English.Count(plans, "plan")} asked again, none goes stale; {already} did not hold before either";
        var counts = going.SelectMany(plan => plan.Answers).Where(one => !one.WasStale).GroupBy(one => one.Difference.Standing).OrderBy(one => one.Key)
            .Select(group => $"; {Of(group.Key)}: {English.Count(group.Count(), "answer")}");
        return $"plans: {going.Length} of {plans} no longer hold{string.Concat(counts)}{(already > 0 ? $"; {already} did not hold before either" : "")}";
    }

    private static string FromTo(AnswerDifference difference) => difference.Present is not { } now
        ? $"{ReviewWords.Of(difference.Recorded.Verdict)} -> cannot be asked any more"
        : now.Verdict == difference.Recorded.Verdict ? $"{ReviewWords.Of(now.Verdict)}, as before"
            : $"{ReviewWords.Of(difference.Recorded.Verdict)} -> {ReviewWords.Of(now.Verdict)}";

    private static string Of(Limit limit) => Plain(Words.Of(limit.Code), '-') + (limit.Arguments.Count == 0 ? "" : $": `{string.Join(", ", limit.Arguments)}`");

    private static IEnumerable<AllowedBox> Few(IReadOnlyList<AllowedBox> boxes) => boxes.Take(4);

    private static string Plain(string text, char hidden = '\u00a0') => text.Replace(hidden, ' ');
}

/// <summary>Writes which plans no longer hold into a comment on a pull request, above all else: people follow them.</summary>
internal static class StaleMarkdown
{
    private const int LongestPath = 120;

    private const int Least = 20;

    /// <summary>The section; empty where no plan was looked at.</summary>
    /// <param name="rows">How many plans and answers of each are shown; 0 for the names of a few plans alone.</param>
    public static string Of(ReviewCall call, Names names, int rows)
    {
        if (call.Stale is not { } stale) return "";
        var (going, already) = (stale.Where(plan => plan.GoesStale).ToArray(), stale.Where(plan => !plan.GoesStale).ToArray());
        var text = new StringBuilder($"{(going.Length == 0 ? "" : "### Plans that no longer hold\n\n")}{Sentence(StaleWords.Sum(stale, call.Plans))}\n\n");
        List(text, going, call, names, rows);
        if (already.Length > 0) text.Append("### Plans that did not hold before either\n\n");
        List(text, already, call, names, rows);
        return text.ToString();
    }

    private static void List(StringBuilder text, IReadOnlyList<StalePlan> plans, ReviewCall call, Names names, int rows)
    {
        foreach (var plan in plans.Take(rows == 0 ? Least : rows))
        {
            var shown = rows == 0 ? [] : plan.Answers.Take(rows).ToArray();
            text.Append($"- **{Markdown.Code(Short(plan.Plan.Path))}**, {Markdown.Code(plan.Plan.Device.Value)}: "
                + $"{English.Count(plan.Answers.Count, "answer")}, the worst {StaleWords.Of(plan.Worst)}\n");
            foreach (var answer in shown) Answer(text, answer, call, names);
            if (shown.Length < plan.Answers.Count && rows > 0) text.Append(
                $"  - {English.Count(plan.Answers.Count - shown.Length, "answer")} more, not shown here\n");
        }

        var left = plans.Count - (rows == 0 ? Least : rows);
        if (left > 0) text.Append($"- {English.Count(left, "plan")} more, not shown here\n");
        if (plans.Count > 0) text.Append('\n');
    }

    private static void Answer(StringBuilder text, StaleAnswer answer, ReviewCall call, Names names)
    {
        var lines = StaleWords.All(answer, call, names).Select(line => Markdown.Text(line.Replace("->", "→", StringComparison.Ordinal))).ToArray();
        text.Append($"  - {lines[0]}\n");
        foreach (var line in lines.Skip(1)) text.Append($"    - {line}\n");
    }

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";

    private static string Short(string path) => path.Length <= LongestPath ? path : "…" + path[^LongestPath..];
}
