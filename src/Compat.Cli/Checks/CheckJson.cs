using System.Text.Json;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Serialization;

namespace Compat.Cli.Checks;

/// <summary>Writes what a check found as <c>schemas/check.schema.json</c> describes.</summary>
internal sealed class CheckJson(Utf8JsonWriter json, CheckCall call)
{
    public void Write(CheckReport report)
    {
        json.WriteStartObject();
        json.WriteBoolean("clean", report.IsClean && call.Unreadable.Count == 0);
        json.WriteList("unreadable", call.Unreadable, Write);
        json.WriteNumber("rules", report.Rules);
        json.WriteNumber("subjects", report.Subjects);
        json.WriteNumber("agents", report.Agents);
        json.WriteList("findings", report.Findings, Write);
        json.WriteNumber("gapCount", report.GapCount);
        json.WriteList("gaps", report.Gaps, part =>
        {
            json.WriteStartObject();
            json.WriteString("part", part.Part.Value);
            json.WriteNumber("outOf", part.OutOf);
            json.WriteStringList("agents", part.Agents.Select(agent => agent.Value));
            json.WriteEndObject();
        });
        json.WriteEndObject();
    }

    private void Write(Diagnostic fault)
    {
        json.WriteStartObject();
        json.WriteString("code", fault.Code);
        json.WriteString("message", fault.Message);
        if (fault.Help is { } help) json.WriteString("help", help);
        if (fault.Place is { } place) WritePlace(place);
        else json.WriteString("file", fault.File);
        if (fault.Related is { } related)
        {
            json.WriteStartObject("other");
            json.WriteString("label", related.Label);
            WritePlace(related.Place);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    private void Write(Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("kind", Words.Of(finding.Kind));
        json.WriteBoolean("fault", finding.IsFault);
        json.WriteString("message", finding.Message);
        if (finding.Help is { } help) json.WriteString("help", help);
        if (finding.Subject is { } subject) json.WriteString("subject", subject);
        if (finding.Agent is { } agent) json.WriteString("agent", agent);
        if (finding.Box is { } box) json.WriteString("box", BoxLine.Of(box, call.BasisOf(finding.Agent)));
        if (finding.Witness is { } witness) json.WriteString("witness", WitnessLine.Of(witness, call.Directory, call.Sites));
        json.WriteList("mends", finding.Mends, mend =>
        {
            json.WriteStartObject();
            json.WriteString("rule", mend.Rule.Value);
            json.WriteString("text", mend.Text);
            json.WriteEndObject();
        });
        json.WriteList("involved", finding.Involved, Write);
        json.WriteEndObject();
    }

    private void Write(Involved involved)
    {
        json.WriteStartObject();
        json.WriteString("record", Words.Of(involved.Place.Kind));
        json.WriteString("id", involved.Place.Id);
        json.WriteString("label", involved.Label);
        if (call.Find(involved) is { } place) WritePlace(place);
        json.WriteEndObject();
    }

    private void WritePlace(SourcePlace place)
    {
        var end = place.Source.Lines.At(place.Span.End);
        json.WriteString("file", place.Source.Path);
        json.WriteNumber("line", place.Position.Line);
        json.WriteNumber("column", place.Position.Column);
        json.WriteNumber("endLine", end.Line);
        json.WriteNumber("endColumn", end.Column);
    }
}
