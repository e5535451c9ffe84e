using Compat.Cli.Text;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;

namespace Compat.Cli.Checks;

/// <summary>Writes what a check found for people: each rule involved with its line and a caret, the witness, the mends.</summary>
internal sealed class CheckText(TextWriter writer, CheckCall call)
{
    private const int GapsShown = 10;

    public void Write(CheckReport report)
    {
        foreach (var finding in report.Findings.Where(one => one.IsFault || call.IsVerbose)) Write(finding);
        if (!call.IsVerbose) WriteNotes(report.Findings.Where(one => !one.IsFault).ToArray());
        if (report.GapCount > 0) WriteGaps(report);
        writer.Write(Sum(report) + "\n");
    }

    private void Write(Finding finding)
    {
        var first = call.Find(finding.Involved[0]);
        var weight = finding.IsFault ? "error" : "note";
        Line($"{(first is null ? call.Directory : DiagnosticText.Where(first))}: {weight}: {Words.Of(finding.Kind)}: {finding.Message}");
        for (var i = 0; i < finding.Involved.Count; i++)
        {
            if (call.Find(finding.Involved[i]) is not { } place) continue;
            if (i > 0) Line($"  {finding.Involved[i].Label}: {DiagnosticText.Where(place)}");
            writer.Write(DiagnosticText.Excerpt(place));
        }

        if (finding.Box is { } box) Line($"  at: {Where(finding)}{BoxLine.Of(box, call.BasisOf(finding.Agent))}");
        if (finding.Witness is { } witness) Line($"  ask: {WitnessLine.Of(witness, call.Directory, call.Sites)}");
        foreach (var mend in finding.Mends) Line($"  mend: {mend.Text}");
        if (finding.Help is { } help) Line($"  help: {help}");
        Line("");
    }

    /// <summary>Notes in one line each, so that the faults stay in sight; those that say the same of other records are folded into one.</summary>
    private void WriteNotes(Finding[] notes)
    {
        foreach (var alike in notes.GroupBy(Likeness))
        {
            var first = alike.First();
            Line($"{(call.Find(first.Involved[0]) is { } place ? DiagnosticText.Where(place) : call.Directory)}: note: {Words.Of(first.Kind)}: {first.Message}");
            var others = alike.Skip(1).Select(NameOf).ToArray();
            if (others.Length > 0) Line($"  likewise {string.Join(", ", others)}");
        }

        if (notes.Length > 0) Line("");
    }

    /// <summary>What notes share that are folded: the agent whose window is closed, the rule that is known better, or what is thin about the evidence.</summary>
    private static (FindingKind Kind, object What) Likeness(Finding note) => note.Kind switch
    {
        FindingKind.ClosedWindow => (note.Kind, note.Agent!),
        FindingKind.Stale when note.Involved.Count > 1 => (note.Kind, note.Involved[1].Place),
        FindingKind.ThinEvidence => (note.Kind, note.Message.Replace(NameOf(note), "")),
        _ => (note.Kind, note),
    };

    private static string NameOf(Finding note) => $"`{(note.Kind == FindingKind.ClosedWindow ? note.Subject : note.Involved[0].Place.Id)}`";

    private static string Where(Finding finding) =>
        finding.Subject is null ? "" : $"`{finding.Subject}` with `{finding.Agent}`: ";

    private void WriteGaps(CheckReport report)
    {
        var shown = call.IsVerbose ? report.Gaps : report.Gaps.Take(GapsShown).ToArray();
        Line($"gaps: {report.GapCount} pairs of part and agent without evidence, worst parts first");
        foreach (var part in shown)
            Line($"  {part.Part}: {part.Agents.Count} of {part.OutOf} agents{(call.IsVerbose ? ": " + string.Join(", ", part.Agents) : "")}");
        if (shown.Count < report.Gaps.Count) Line($"  and {report.Gaps.Count - shown.Count} parts more: see --verbose");
        Line("");
    }

    private static string Sum(CheckReport report)
    {
        var faults = report.Faults.Count();
        var notes = report.Findings.Count - faults;
        return $"{Count(report.Rules, "rule")} on {Count(report.Subjects, "subject")} with {Count(report.Agents, "agent")}: {Count(faults, "fault")}{(notes > 0 ? ", " + Count(notes, "note") : "")}";
    }

    private static string Count(int count, string what) => count == 0 ? $"no {what}s" : count == 1 ? $"1 {what}" : $"{count} {what}s";

    private void Line(string text) => writer.Write(text.Length == 0 ? "\n" : Printable.Of(text) + "\n");
}
