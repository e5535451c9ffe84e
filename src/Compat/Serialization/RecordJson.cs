using System.Text.Json;

namespace Compat.Serialization;

/// <summary>Writes questions and the records an answer cites.</summary>
internal sealed class RecordJson(Utf8JsonWriter json, AnswerTexts? texts)
{
    /// <summary>The question, as it was understood.</summary>
    public void Question(Question question)
    {
        json.WriteStartObject("question");
        if (question.Part is { } part) json.WriteString("part", part.Value);
        json.WriteList("materials", question.Materials, slot =>
        {
            json.WriteStartArray();
            foreach (var id in slot.OneOf) json.WriteStringValue(id.Value);
            json.WriteEndArray();
        });
        if (question.MaterialsKnown is { } known) json.WriteString("materialsKnown", known ? "fully" : "partly");
        if (question.Device is { } device) json.WriteString("device", device.Value);
        if (question.DevicePart is { } devicePart) json.WriteString("devicePart", devicePart.Value);
        if (question.Serial is { } serial) json.WriteString("serial", serial.ToString());
        if (question.Agent is { } agent) json.WriteString("agent", agent.Value);
        if (question.Product is { } product) json.WriteString("product", product.Value);
        if (question.Strength is { } strength) json.WriteInterval("strength", strength.Range, strength.Unit.Text);
        if (question.Dilution is { } dilution) json.WriteInterval("dilution", dilution, JsonWriting.UnitOf(Axis.Dilution));
        if (question.Method is { } method) json.WriteString("method", Words.Of(method));
        if (question.ExposureTime is { } exposureTime) json.WriteInterval("exposureTime", exposureTime, JsonWriting.UnitOf(Axis.ExposureTime));
        if (question.Temperature is { } temperature) json.WriteInterval("temperature", temperature, JsonWriting.UnitOf(Axis.Temperature));
        if (question.Ph is { } ph) json.WriteInterval("ph", ph, JsonWriting.UnitOf(Axis.Ph));
        if (question.Uses is { } uses) json.WriteNumber("uses", uses);
        json.WriteStringList("acts", question.Acts.Select(Words.Of));
        json.WriteBoolean("onlyPart", question.OnlyPart);
        if (question.TouchedBy is { } contact) json.WriteString("touchedBy", Words.Of(contact));
        json.WriteStringList("patients", question.Patients.Select(Words.Of));
        json.WriteBoolean("occupied", question.Occupied);
        if (question.Soil is { } soil) json.WriteStringList("soil", soil.Select(Words.Of));
        if (question.Level is { } level) json.WriteString("level", Words.Of(level));
        json.WriteStringList("against", question.Against.Select(target => target.ToString()));
        if (question.Cloth is { } cloth) json.WriteString("cloth", cloth);
        json.WriteEndObject();
    }

    /// <summary>A duty.</summary>
    public void Duty(Duty duty)
    {
        json.WriteStartObject();
        json.WriteString("kind", Words.Of(duty.Kind));
        json.WriteList("ways", duty.Ways, Way);
        if (duty.Within is { } within) json.WriteNumber("withinSeconds", within);
        json.WriteStringList("parts", duty.Parts.Select(id => id.Value));
        if (duty.AfterUses is { } uses) json.WriteNumber("afterUses", uses);
        if (duty.Note is { } note) json.WriteString("note", note);
        if (texts is not null) json.WriteString("text", texts.Of(duty));
        json.WriteEndObject();
    }

    /// <summary>The damage to expect.</summary>
    public void Damage(Damage damage)
    {
        json.WriteStartObject();
        json.WriteString("mechanism", Words.Of(damage.Mechanism));
        json.WriteString("onset", Words.Of(damage.Onset));
        json.WriteBoolean("lasting", damage.Lasting);
        json.WriteString("consequence", Words.Of(damage.Consequence));
        if (damage.LookFor is { } look) json.WriteString("lookFor", look);
        if (damage.WithdrawIf is { } withdraw) json.WriteString("withdrawIf", withdraw);
        json.WriteEndObject();
    }

    /// <summary>A rule, as far as a reader of an answer needs it.</summary>
    public void Rule(Rule rule)
    {
        json.WriteStartObject();
        json.WriteString("id", rule.Id.Value);
        json.WriteString("verdict", rule.Allows ? "allowed" : "not-allowed");
        json.WriteString("target", rule.Target.ToString());
        json.WriteString("substance", rule.Agent?.Value ?? rule.Product!.Value);
        if (rule.KnownBy is { } known) json.WriteString("knownBy", Words.Of(known));
        json.WriteString("why", rule.Why);
        json.WriteStringList("sources", rule.Sources.Select(id => id.Value));
        json.WriteString("reviewed", rule.Reviewed.ToString());
        json.WriteEndObject();
    }

    /// <summary>A source.</summary>
    public void Source(Source source)
    {
        json.WriteStartObject();
        json.WriteString("id", source.Id.Value);
        json.WriteString("kind", Words.Of(source.Kind));
        json.WriteString("title", source.Title);
        if (source.Publisher is { } publisher) json.WriteString("publisher", publisher);
        if (source.Edition is { } edition) json.WriteString("edition", edition);
        if (source.Section is { } section) json.WriteString("section", section);
        if (source.Address is { } address) json.WriteString("address", address);
        json.WriteString("basis", source.Recalled ? "recalled" : "read");
        json.WriteString("trust", Words.Of(source.Trust));
        json.WriteEndObject();
    }

    /// <summary>A person rule.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="forbids">Whether it forbids where it was asked; null where nothing was asked.</param>
    public void PersonRule(PersonRule rule, bool? forbids)
    {
        json.WriteStartObject();
        json.WriteString("id", rule.Id.Value);
        json.WriteString("verdict", Words.Of(rule.Verdict));
        json.WriteString("agent", rule.Agent.Value);
        json.WriteStringList("patients", rule.Patients.Select(Words.Of));
        json.WriteBoolean("occupied", rule.Occupied);
        if (forbids is { } here) json.WriteBoolean("forbids", here);
        json.WriteList("duties", rule.Duties, Duty);
        json.WriteString("harm", rule.Harm);
        json.WriteString("why", rule.Why);
        json.WriteStringList("sources", rule.Sources.Select(id => id.Value));
        json.WriteString("reviewed", rule.Reviewed.ToString());
        json.WriteEndObject();
    }

    /// <summary>The axes of a box.</summary>
    /// <param name="box">The box.</param>
    /// <param name="unit">The unit of its strength; null for the percent of the agent's basis.</param>
    public void Exposure(AllowedBox box, StrengthUnit? unit)
    {
        json.WriteString("method", Words.Of(box.Method));
        if (box.Strength is { } strength) json.WriteStrength("strength", strength, unit);
        if (box.Dilution is { } dilution) json.WriteInterval("dilution", dilution, JsonWriting.UnitOf(Axis.Dilution));
        json.WriteInterval("exposureTime", box.ExposureTime, JsonWriting.UnitOf(Axis.ExposureTime));
        json.WriteInterval("temperature", box.Temperature, JsonWriting.UnitOf(Axis.Temperature));
        json.WriteInterval("ph", box.Ph, JsonWriting.UnitOf(Axis.Ph));
        json.WriteInterval("uses", box.Uses, JsonWriting.UnitOf(Axis.Uses));
    }

    private void Way(DutyWay way)
    {
        json.WriteStartObject();
        json.WriteString("by", way.Act is { } act ? Words.Of(act) : way.Method is { } method ? Words.Of(method) : "air");
        if (way.Water is { } water) json.WriteString("water", Words.Of(water));
        if (way.Times is { } times) json.WriteNumber("times", times);
        if (way.Seconds is { } seconds) json.WriteNumber("seconds", seconds);
        if (way.Litres is { } litres) json.WriteNumber("litres", litres);
        json.WriteEndObject();
    }
}
