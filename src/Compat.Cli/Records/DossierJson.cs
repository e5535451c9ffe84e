using System.Text.Json;
using Compat.Cli.Json;
using Compat.Cli.Wording;
using Compat.Curation.Recorded;
using Compat.Serialization;

namespace Compat.Cli.Records;

/// <summary>Writes a dossier as <c>schemas/dossier.schema.json</c> describes: the same data give the same bytes.</summary>
internal sealed class DossierJson(Utf8JsonWriter json, Names names)
{
    private readonly RecordJson _records = new(json, new EnglishTexts(names));

    /// <summary>The whole file.</summary>
    /// <param name="dossier">What is in it.</param>
    /// <param name="tool">The version of the program.</param>
    /// <param name="today">The day it was asked for; null where none was said.</param>
    public void Write(Dossier dossier, string tool, CalendarDate? today)
    {
        var whole = new WholeJson(json, new EnglishTexts(names), _records);
        json.WriteStartObject();
        json.WriteString("format", RecordedFile.DossierFormat);
        json.WriteString("tool", tool);
        if (today is { } day) json.WriteString("today", day.ToString());
        Device(dossier);
        json.WriteList("parts", dossier.Parts, part =>
        {
            json.WriteStartObject();
            json.WriteString("part", part.Part.Id.Value);
            if (part.Part.Name is { } name) json.WriteString("name", name);
            json.WriteStringList("types", part.Part.OneOfTypes.Select(id => id.Value));
            json.WriteBoolean("needsNothing", part.NeedsNothing);
            whole.Need(part.Need);
            json.WriteEndObject();
        });
        json.WriteList("answers", dossier.Answers, answer =>
        {
            json.WriteStartObject();
            json.WriteString("part", answer.Question.DevicePart!.Value);
            json.WriteRecorded(_records, RecordedAnswer.Of(answer, dossier.KnowledgeBase));
            json.WriteEndObject();
        });
        json.WriteList("rules", dossier.Rules, _records.Rule);
        json.WriteList("personRules", dossier.PersonRules, rule => _records.PersonRule(rule, null));
        json.WriteList("claims", dossier.Claims, whole.Claim);
        json.WriteList("sources", dossier.Sources, _records.Source);
        json.WriteList("plans", dossier.Plans, Plan);
        json.WriteList("records", dossier.Done, Done);
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(dossier.KnowledgeBase.Identity);
        json.WriteEndObject();
    }

    private void Device(Dossier dossier)
    {
        json.WriteStartObject("device");
        json.WriteString("id", dossier.Device.Id.Value);
        json.WriteString("name", dossier.Device.Name);
        if (dossier.Serial is { } serial) json.WriteString("serial", serial.ToString());
        if (dossier.Device.Note is { } note) json.WriteString("note", note);
        json.WriteList("instructions", dossier.Device.Instructions, edition => Edition(edition, dossier.Speaking.Contains(edition.Id)));
        json.WriteEndObject();
    }

    private void Edition(InstructionsEdition edition, bool speaks)
    {
        json.WriteStartObject();
        json.WriteString("edition", edition.Id.Value);
        if (edition.Dated is { } dated) json.WriteString("dated", dated.ToString());
        json.WriteStringList("serials", edition.Serials.Select(range => range.ToString()));
        json.WriteStringList("replaces", edition.Replaces.Select(id => id.Value));
        json.WriteBoolean("onlyListed", edition.OnlyListed);
        if (edition.Source is { } source) json.WriteString("source", source.Value);
        json.WriteBoolean("speaks", speaks);
        json.WriteEndObject();
    }

    /// <summary>A plan as it was written: its own words, not read anew.</summary>
    private void Plan(DossierPlan plan)
    {
        json.WriteStartObject();
        json.WriteString("file", plan.File);
        json.WritePropertyName("plan");
        using (var document = JsonDocument.Parse(plan.Json)) document.RootElement.WriteTo(json);
        json.WriteEndObject();
    }

    private void Done(DossierDone done)
    {
        json.WriteStartObject();
        json.WriteString("file", done.File);
        json.WriteString("device", done.Record.Device.Value);
        if (done.Record.Serial is { } serial) json.WriteString("serial", serial.ToString());
        json.WriteString("date", done.Record.Date.ToString());
        json.WriteList("steps", done.Record.Steps, step =>
        {
            json.WriteStartObject();
            json.WriteNumber("step", step.Number);
            json.WriteBoolean("done", step.Done);
            json.WriteString("initials", step.Initials);
            if (step.Product is { } product) json.WriteString("product", product.Value);
            json.WriteEndObject();
        });
        json.WriteEndObject();
    }
}
