using System.Text.Json;

namespace Compat.Cli.Json;

/// <summary>Writes what is on record where two meet as <c>schemas/mixing-answer.schema.json</c> describes.</summary>
internal sealed class MixingJson(Utf8JsonWriter json, Names names)
{
    /// <summary>The answer, worst hazard first.</summary>
    public void Write(MixingAnswer answer)
    {
        json.WriteStartObject();
        json.WriteString("first", answer.First.ToString());
        json.WriteString("other", answer.Other.ToString());
        json.WriteBoolean("hazardOnRecord", answer.Hazards.Count > 0);
        json.WriteString("outcome", Words.Of(answer.Outcome));
        json.WriteList("hazards", answer.Hazards, Hazard);
        json.WriteList("atOtherStrengths", answer.AtOtherStrengths, Hazard);
        json.WriteList("harmless", answer.Harmless, meeting =>
        {
            json.WriteStartObject();
            json.WriteString("id", meeting.Id.Value);
            json.WriteString("why", meeting.Why);
            json.WriteStringList("sources", meeting.Sources.Select(source => source.Value));
            json.WriteEndObject();
        });
        json.WriteStringList("notFullyKnown", answer.NotFullyKnown.Select(product => product.Value));
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(answer.Identity);
        json.WriteEndObject();

        void Hazard(FoundHazard found)
        {
            var hazard = found.Hazard;
            json.WriteStartObject();
            json.WriteString("id", hazard.Id.Value);
            json.WriteString("first", found.First);
            json.WriteString("other", found.Other);
            json.WriteBoolean("onlySome", found.OnlySome);
            json.WriteString("severity", Words.Of(hazard.Severity));
            json.WriteStringList("effects", hazard.Effects.Select(effect => Words.Of(effect)));
            json.WriteStringList("forms", hazard.Forms);
            if (hazard.OnlyWhere is { } condition) json.WriteString("onlyWhere", condition);
            if (hazard.Strength is { } strength) json.WriteStrength("strength", strength, names.Unit(hazard.Agent));
            if (hazard.WithStrength is { } withStrength) json.WriteStrength("withStrength", withStrength, names.Unit(hazard.WithAgent));
            json.WriteStringList("separatedBy", hazard.SeparatedBy.Select(separation => Words.Of(separation)));
            if (hazard.How is { } how) json.WriteString("how", how);
            json.WriteString("why", hazard.Why);
            json.WriteStringList("sources", hazard.Sources.Select(source => source.Value));
            json.WriteEndObject();
        }
    }
}
