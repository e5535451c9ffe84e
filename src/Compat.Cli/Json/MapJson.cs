using System.Text.Json;

namespace Compat.Cli.Json;

/// <summary>Writes a decision map as <c>schemas/map.schema.json</c> describes.</summary>
internal sealed class MapJson(Utf8JsonWriter json, Names names)
{
    /// <summary>The map, whole.</summary>
    public void Write(DecisionMap map, Question question)
    {
        var unit = names.Unit(map.Agent);
        json.WriteStartObject();
        if (map.Part is { } part) json.WriteString("part", part.Value);
        json.WriteStringList("materials", question.Materials.SelectMany(slot => slot.OneOf).Select(id => id.Value));
        if (question.MaterialsKnown is { } known) json.WriteString("materialsKnown", known ? "fully" : "partly");
        json.WriteString("agent", map.Agent.Value);
        json.WriteList("cells", map.Cells, cell =>
        {
            json.WriteStartObject();
            json.WriteString("verdict", Words.Of(cell.Verdict));
            json.WriteString("method", Words.Of(cell.Method));
            json.WriteStrength("strength", cell.Strength, unit);
            json.WriteInterval("exposureTime", cell.ExposureTime, JsonWriting.UnitOf(Axis.ExposureTime));
            json.WriteInterval("temperature", cell.Temperature, JsonWriting.UnitOf(Axis.Temperature));
            json.WriteInterval("ph", cell.Ph, JsonWriting.UnitOf(Axis.Ph));
            json.WriteInterval("uses", cell.Uses, JsonWriting.UnitOf(Axis.Uses));
            json.WriteStringList("rules", cell.DecidedBy.Select(id => id.Value));
            json.WriteString("reason", Words.Of(cell.Reason.Code));
            json.WriteString("text", ReasonWording.Of(cell.Reason, question, names).Replace('\u00a0', ' '));
            json.WriteEndObject();
        });
        json.WriteIdentity(map.Identity);
        json.WriteEndObject();
    }
}
