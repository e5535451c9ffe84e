using System.Globalization;
using Compat.Cli.Text;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Validation;

namespace Compat.Cli.Checks;

/// <summary>Writes what a check found as annotations of a workflow run: one at each record involved.</summary>
internal sealed class CheckGithub(TextWriter writer, CheckCall call)
{
    private readonly TextWriter _writer = GuardedWriter.Behind(writer);

    public void Write(CheckReport report)
    {
        foreach (var fault in call.Unreadable.Take(DiagnosticText.MostShown))
            Annotation("error", fault.Place, fault.File, $"unreadable: {fault.Code}", fault.Help is null ? fault.Message : $"{fault.Message}\nhelp: {fault.Help}");
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

    private void Annotation(string weight, Finding finding, Involved involved, string text) => Annotation(weight, call.Find(involved), null, Words.Of(finding.Kind), text);

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
