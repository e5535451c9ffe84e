using System.Text.Json;
using Compat.Curation.Recorded;

namespace Compat.Cli.Json;

/// <summary>Writes answers as plans and dossiers carry them.</summary>
internal static class RecordedJson
{
    /// <summary>An answer so that it can be asked again, without the braces around it.</summary>
    public static void WriteRecorded(this Utf8JsonWriter json, RecordJson records, RecordedAnswer answer)
    {
        json.WriteString("verdict", Words.Of(answer.Verdict));
        json.WriteString("partVerdict", Words.Of(answer.PartVerdict));
        records.Question(answer.Question);
        json.WriteStringList("rules", answer.Rules.Select(id => id.Value));
        json.WriteStringList("personRules", answer.PersonRules.Select(id => id.Value));
        json.WriteStringList("claims", answer.Claims);
        json.WriteStringList("editions", answer.Editions.Select(id => id.Value));
        json.WriteList("limits", answer.Limits, limit =>
        {
            json.WriteStartObject();
            json.WriteString("code", Words.Of(limit.Code));
            json.WriteStringList("arguments", limit.Arguments);
            json.WriteEndObject();
        });
        json.WriteList("duties", answer.Duties, records.Duty);
        json.WriteList("boxes", answer.Boxes, box =>
        {
            json.WriteStartObject();
            records.Exposure(box, null);
            json.WriteEndObject();
        });
        json.WriteNumber("boxCount", answer.BoxCount);
    }
}
