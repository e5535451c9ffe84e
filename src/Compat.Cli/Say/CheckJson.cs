using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;

namespace Compat.Cli.Say;

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

/// <summary>Writes what a check found as SARIF 2.1.0: a region for every record involved, rule help, and fingerprints that survive moved lines.</summary>
internal sealed class CheckSarif(Utf8JsonWriter json, CheckCall call)
{
    private const int MostResults = 25_000;
    private const string Root = "ROOT";
    private const string Unreadable = "unreadable";

    public void Write(CheckReport report)
    {
        json.WriteStartObject();
        json.WriteString("$schema", "https://json.schemastore.org/sarif-2.1.0.json");
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        WriteTool();
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartObject("originalUriBaseIds");
        json.WriteStartObject(Root);
        json.WriteStartObject("description");
        json.WriteString("text", "The folder in which the check ran.");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteStartArray("results");
        foreach (var fault in call.Unreadable.Take(MostResults)) Write(fault);
        foreach (var finding in report.Findings.Take(MostResults)) Write(finding);
        json.WriteEndArray();
        json.WriteStartArray("invocations");
        json.WriteStartObject();
        json.WriteBoolean("executionSuccessful", call.Unreadable.Count == 0);
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private void WriteTool()
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "compat check");
        json.WriteString("semanticVersion", typeof(CheckSarif).Assembly.GetName().Version!.ToString(3));
        json.WriteStartArray("rules");
        foreach (var kind in Enum.GetValues<FindingKind>()) WriteRule(Words.Of(kind), KindText.What(kind), KindText.Why(kind), KindText.Instead(kind),
            KindText.IsFault(kind));
        WriteRule(Unreadable, "A file that cannot be read.", "As long as one cannot be read, nothing is checked.", "Put right what stands at the line.",
            isFault: true);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void WriteRule(string id, string what, string why, string instead, bool isFault)
    {
        json.WriteStartObject();
        json.WriteString("id", id);
        WriteMessage("shortDescription", what);
        WriteMessage("fullDescription", why);
        WriteMessage("help", instead);
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", isFault ? "error" : "note");
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void Write(Diagnostic fault)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", $"{Unreadable}/{fault.Code}");
        json.WriteNumber("ruleIndex", Enum.GetValues<FindingKind>().Length);
        json.WriteString("level", "error");
        WriteMessage("message", Braced($"{fault.Message}.{(fault.Help is { } help ? $"\nHelp: {help}." : "")}"));
        json.WriteStartArray("locations");
        if (fault.Place is { } place) WriteLocation(place, null, null);
        else WriteLocation(fault.File);
        json.WriteEndArray();
        json.WriteStartArray("relatedLocations");
        if (fault.Related is { } related) WriteLocation(related.Place, 1, related.Label);
        json.WriteEndArray();
        WriteFingerprint([Unreadable, fault.Code, fault.File, fault.Message]);
        json.WriteEndObject();
    }

    private void Write(Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", Words.Of(finding.Kind));
        json.WriteNumber("ruleIndex", (int)finding.Kind);
        json.WriteString("level", finding.IsFault ? "error" : "note");
        WriteMessage("message", Braced(Text(finding)));
        json.WriteStartArray("locations");
        if (call.Find(finding.Involved[0]) is { } first) WriteLocation(first, null, null);
        json.WriteEndArray();
        json.WriteStartArray("relatedLocations");
        for (var i = 1; i < finding.Involved.Count; i++)
            if (call.Find(finding.Involved[i]) is { } place) WriteLocation(place, i, finding.Involved[i].Label);
        json.WriteEndArray();
        WriteFingerprint([Words.Of(finding.Kind), .. finding.Involved.Select(one => $"{one.Place.Kind} {one.Place.Id} {one.Place.Field}"), finding.Message]);
        json.WriteEndObject();
    }

    private string Text(Finding finding)
    {
        var text = new StringBuilder(finding.Message).Append('.');
        if (finding.Box is { } box) text.Append($"\nAt {BoxLine.Of(box, call.BasisOf(finding.Agent))}.");
        if (finding.Witness is { } witness) text.Append($"\nAsk: {WitnessLine.Of(witness, call.Directory, call.Sites)}");
        foreach (var mend in finding.Mends) text.Append($"\nMend: {mend.Text}.");
        if (finding.Help is { } help) text.Append($"\nHelp: {help}.");
        return text.ToString();
    }

    private void WriteLocation(SourcePlace place, int? id, string? label)
    {
        var end = place.Source.Lines.At(place.Span.End);
        json.WriteStartObject();
        if (id is { } number) json.WriteNumber("id", number);
        json.WriteStartObject("physicalLocation");
        WriteArtifact(place.Source.Path);
        json.WriteStartObject("region");
        json.WriteNumber("startLine", place.Position.Line);
        json.WriteNumber("startColumn", place.Position.Column);
        json.WriteNumber("endLine", end.Line);
        json.WriteNumber("endColumn", end.Column);
        json.WriteEndObject();
        json.WriteEndObject();
        if (label is not null) WriteMessage("message", Braced(label));
        json.WriteEndObject();
    }

    private void WriteMessage(string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", text);
        json.WriteEndObject();
    }

    /// <summary>Braces stand for placeholders in a message, so those of a text are doubled.</summary>
    private static string Braced(string text) => text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);

    private static string Uri(string path)
    {
        var parts = path.Replace('\\', '/').Split('/').Select(System.Uri.EscapeDataString);
        return (Path.IsPathRooted(path) ? "file://" : "") + string.Join("/", parts);
    }

    private void WriteLocation(string file)
    {
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        WriteArtifact(file);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void WriteArtifact(string file)
    {
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", Uri(file));
        if (!Path.IsPathRooted(file)) json.WriteString("uriBaseId", Root);
        json.WriteEndObject();
    }

    /// <summary>Of the kind, the records and what is said; not of lines, which move.</summary>
    private void WriteFingerprint(IEnumerable<string> key)
    {
        json.WriteStartObject("partialFingerprints");
        json.WriteString("finding/v1", Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join("\n", key)))));
        json.WriteEndObject();
    }
}
