using System.Globalization;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Cli.Say;

/// <summary>What was checked and where its records stand, for writing what was found.</summary>
/// <param name="Places">Where each record stands.</param>
/// <param name="BasisOf">The unit of an agent's strength, by the agent's id; null where there is none.</param>
internal sealed record CheckCall(string Directory, IReadOnlyList<string> Sites, bool IsVerbose, SourceMap Places, Func<string?, StrengthUnit?> BasisOf)
{
    /// <summary>What kept the files from being read; empty where nothing did.</summary>
    public IReadOnlyList<Diagnostic> Unreadable { get; init; } = [];

    /// <summary>The place of a record; null where it stands in no file.</summary>
    public SourcePlace? Find(Involved involved) => Places.Find(involved.Place);
}

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
        var weight = finding.IsFault ? "error" : "note";
        Line($"{PlaceOf(finding)}: {weight}: {Words.Of(finding.Kind)}: {finding.Message}");
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
            Line($"{PlaceOf(first)}: note: {Words.Of(first.Kind)}: {first.Message}");
            var others = alike.Skip(1).Select(NameOf).ToArray();
            if (others.Length > 0) Line($"  likewise {string.Join(", ", others)}");
        }

        if (notes.Length > 0) Line("");
    }

    private string PlaceOf(Finding finding) => call.Find(finding.Involved[0]) is { } place ? DiagnosticText.Where(place) : call.Directory;

    /// <summary>What notes share that are folded: the agent whose window is closed, the rule that is known better, or what is thin about the
    /// evidence.</summary>
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
        return $"{Count(report.Rules, "rule")} on {Count(report.Subjects, "subject")} with {Count(report.Agents, "agent")}: "
            + $"{Count(faults, "fault")}{(notes > 0 ? ", " + Count(notes, "note") : "")}";
    }

    private static string Count(int count, string what) => count == 0 ? $"no {what}s" : English.Count(count, what);

    private void Line(string text) => writer.Write(text.Length == 0 ? "\n" : Printable.Of(text) + "\n");
}

/// <summary>Writes what a check found as annotations of a workflow run: one at each record involved.</summary>
internal sealed class CheckGithub(TextWriter writer, CheckCall call)
{
    private readonly TextWriter _writer = GuardedWriter.Behind(writer);

    public void Write(CheckReport report)
    {
        foreach (var fault in call.Unreadable.Take(DiagnosticText.MostShown))
            Annotation("error", fault.Place, fault.File, $"unreadable: {fault.Code}", fault.Help is null ? fault.Message
                : $"{fault.Message}\nhelp: {fault.Help}");
        foreach (var finding in report.Findings)
        {
            var weight = finding.IsFault ? "error" : "notice";
            Annotation(weight, finding, finding.Involved[0], Text(finding));
            foreach (var other in finding.Involved.Skip(1)) Annotation("notice", finding, other, $"{other.Label}: {finding.Message}");
        }
    }

    private string Text(Finding finding)
    {
        var lines = new List<string> { finding.Message };
        if (finding.Box is { } box) lines.Add($"at: {BoxLine.Of(box, call.BasisOf(finding.Agent))}");
        if (finding.Witness is { } witness) lines.Add($"ask: {WitnessLine.Of(witness, call.Directory, call.Sites)}");
        lines.AddRange(finding.Mends.Select(mend => $"mend: {mend.Text}"));
        if (finding.Help is { } help) lines.Add($"help: {help}");
        return string.Join("\n", lines);
    }

    private void Annotation(string weight, Finding finding, Involved involved, string text) =>
        Annotation(weight, call.Find(involved), null, Words.Of(finding.Kind), text);

    private void Annotation(string weight, SourcePlace? at, string? file, string title, string text)
    {
        var properties = new List<string>();
        if (at is { } place)
        {
            var (start, end) = (place.Position, place.Source.Lines.At(place.Span.End));
            properties.Add("file=" + Property(place.Source.Path));
            properties.Add(string.Create(CultureInfo.InvariantCulture, $"line={start.Line},endLine={end.Line}"));
            // A column counts only where both lie on one line.
            if (start.Line == end.Line) properties.Add(string.Create(CultureInfo.InvariantCulture, $"col={start.Column},endColumn={end.Column}"));
        }
        else if (file is not null)
        {
            properties.Add("file=" + Property(file));
        }

        properties.Add("title=" + Property(title));
        _writer.Write($"::{weight} {string.Join(",", properties)}::{Data(text)}\n");
    }

    private static string Data(string text) => string.Join("%0A", text.Replace("%", "%25", StringComparison.Ordinal).Split('\n').Select(HiddenText.Shown));

    private static string Property(string text) => Data(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}

/// <summary>What each kind of finding is, why it matters, and what to do instead.</summary>
internal static class KindText
{
    public static bool IsFault(FindingKind kind) =>
        kind is not (
            FindingKind.Refinement or FindingKind.RedundantRule or FindingKind.InstructionsDepart or FindingKind.ThinEvidence
            or FindingKind.ClosedWindow or FindingKind.Stale);

    public static string What(FindingKind kind) => Of(kind).What;

    public static string Why(FindingKind kind) => Of(kind).Why;

    public static string Instead(FindingKind kind) => Of(kind).Instead;

    private static (string What, string Why, string Instead) Of(FindingKind kind) => kind switch
    {
        FindingKind.Contradiction => ("One rule allows what another does not allow.",
            "In one voice, or between a part and what it is made of, an 'allowed' and a 'not allowed' are live at one exposure. The answer is 'not allowed', "
                + "and whoever wrote the 'allowed' does not know it.",
            "Narrow one of the two, or write the exception with 'overrides'."),
        FindingKind.Refinement => ("A narrower 'not allowed' takes a piece out of an 'allowed'.",
            "It is written strictly below: for a narrower part, material, agent or product. That is how exceptions to a permission are meant to be written.",
            "Nothing: it is listed so that a reviewer sees it."),
        FindingKind.OverrideMisses => ("An override that no use meets.",
            "The two rules never apply to one use, so the exception does nothing.",
            "Remove it, or correct what either rule speaks of."),
        FindingKind.OverrideCycle => ("Rules override each other.", "Neither is the exception.", "Keep the override of the one that is the exception."),
        FindingKind.OverrideReach => ("A rule overrides one that it does not lie below.",
            "An exception speaks at or below what it is an exception to.",
            "Write it on the narrower part, material, agent or product."),
        FindingKind.OverrideIdle => ("An override that changes nothing.", "Both rules have the same verdict and the same duties.", "Remove the override."),
        FindingKind.OverridesInstructions => ("A rule set against a device's instructions.",
            "Nothing overrides the instructions; only a newer edition replaces them.",
            "Remove the override, or cite the newer edition."),
        FindingKind.SupersededEdition => ("A rule cites instructions that no longer speak.",
            "Another edition replaces the one cited for every serial number.",
            "Read the newer edition and cite it, or remove the rule."),
        FindingKind.DeadRule => ("A rule that decides no question.",
            "It is set aside everywhere, or lies outside what its part can take: it gives a false sense of cover.",
            "Remove it, or correct its target, methods or box."),
        FindingKind.RedundantRule => ("A rule without which every answer is the same.",
            "Other rules say as much, on sources as strong.",
            "Remove it, or write 'keep: second-source'."),
        FindingKind.BrokenStandingRule => ("An answer breaks a standing rule.",
            "Standing rules are what every state of the data must keep.",
            "Narrow or remove the rule that allows it."),
        FindingKind.LooserClaim => ("A claim of efficacy promises more than another one lets stand.",
            "What one source says is not killed, a level or a group of another must not silently include.",
            "Narrow either box, name the organism under 'does-not-kill', or refute the claim."),
        FindingKind.InstructionsDepart => ("A device's own instructions depart from a standing rule.",
            "They may; it is never passed over in silence.",
            "Check that the edition was read rightly."),
        FindingKind.ImpossibleAnswer => ("An 'allowed' that cannot be done.",
            "A part it covers has no way to meet its duties or to end its exposure time, two of its duties exclude each other, or what acts in a chamber is "
                + "brought on by a cloth.",
            "Narrow it to the parts that stand it, or name a way they stand."),
        FindingKind.ClaimBeyondTests => ("A label claim says more than its tests show.",
            "A level takes a test for each group it includes, and what is said to be killed takes a test of it; tests of another field of use show nothing "
                + "on a device.",
            "Name the tests that the label names for it, or write the claim no wider than they are."),
        FindingKind.TooManyGaps => ("More pairs of part and agent without evidence than agreed.",
            "Each is answered 'not established'.",
            "Find evidence for the worst parts first."),
        FindingKind.MissingMixing => ("An agent binds or destroys another, and nothing is on record where they meet.",
            "Who asks what happens where the two meet would be told that nothing is on record.",
            "Write the hazard, or a record that says why it is harmless."),
        FindingKind.HazardOfOneMember => ("A hazard of mixing stands on one member of a class.",
            "Members that share its chemistry would be passed over.",
            "Move it to the class, or say on what it rests."),
        FindingKind.HarmlessBesideHazard => ("A pair is on record as harmless and as a hazard.",
            "The hazard holds; the other statement is wrong for some pair.",
            "Narrow or remove one of the two."),
        FindingKind.ThinEvidence => ("An 'allowed' that rests on less than it says.",
            "It goes beyond what was tested or seen.",
            "Look for evidence on what it says, or narrow it."),
        FindingKind.ClosedWindow => ("An agent that cannot do on a part what the part usually needs.",
            "It kills only after longer, by a wetter method or at another strength than the part stands.",
            "Look for evidence of a longer exposure time, or for a claim of a shorter contact time."),
        FindingKind.LaterThanToday => ("A date that has not come.",
            "What lies behind the day of the check was mistyped, and a review dated so would never grow old.",
            "Write the day on which it was."),
        FindingKind.NumberTwice => ("A number of a register that two agents have.",
            "It names one substance: a product that states it would be taken for either.",
            "Leave it at the agent that it names."),
        FindingKind.NameTwice => ("A name that two records of one kind have.", "Nobody could tell which of them is meant.", "Give one of them another name."),
        _ => ("A rule that may be out of date.", "It was not looked at for long, or better evidence just beside it puts it in doubt.",
            "Look at its sources again."),
    };
}
