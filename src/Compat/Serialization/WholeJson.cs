using System.Text.Json;

namespace Compat.Serialization;

/// <summary>Writes what kill and people add to an answer.</summary>
internal sealed class WholeJson(Utf8JsonWriter json, AnswerTexts? texts, RecordJson records)
{
    /// <summary>Kill, people, need and window, as far as they were judged.</summary>
    public void Write(Answer answer, StrengthUnit? unit)
    {
        if (answer.Kill is not { } kill) return;
        json.WriteStringList("decides", Deciders.Of(answer));
        json.WriteStartObject("kill");
        json.WriteString("verdict", Words.Of(kill.Verdict));
        json.WriteBoolean("wellFounded", kill.WellFounded);
        json.WriteList("reasons", kill.Reasons, reason => Reason(reason, answer));
        json.WriteList("claims", kill.Claims, Claim);
        json.WriteEndObject();
        if (answer.People is { } people) People(people);
        Need(kill.Need);
        if (answer.Window is { } window) Window(window, answer, unit);
    }

    private void Reason(KillReason reason, Answer answer)
    {
        json.WriteStartObject();
        json.WriteString("code", Words.Of(reason.Code));
        json.WriteStringList("arguments", reason.Arguments);
        if (texts is not null) json.WriteString("text", texts.Of(reason, answer));
        json.WriteEndObject();
    }

    /// <summary>A claim as it was used.</summary>
    public void Claim(KillClaim claim)
    {
        json.WriteStartObject();
        json.WriteString("origin", Words.Of(claim.Origin));
        json.WriteString("id", claim.Id);
        if (claim.Reaches is { } level) json.WriteString("reaches", Words.Of(level));
        json.WriteStringList("kills", claim.Kills.Select(target => target.ToString()));
        json.WriteStringList("doesNotKill", claim.DoesNotKill.Select(target => target.ToString()));
        json.WriteBoolean("namesThePart", claim.NamesThePart);
        json.WriteStringList("needs", claim.Needs.Select(Words.Of));
        if (claim.ShownBy.Count > 0) json.WriteList("shownBy", claim.ShownBy, Test);
        if (claim.Registration is { } registration)
        {
            json.WriteStartObject("registration");
            json.WriteString("authority", registration.Authority);
            json.WriteString("number", registration.Number);
            json.WriteEndObject();
        }

        json.WriteStringList("sources", claim.Sources.Select(id => id.Value));
        json.WriteBoolean("wellFounded", claim.WellFounded);
        json.WriteEndObject();
    }

    private void Test(Model.TestStandard test)
    {
        json.WriteStartObject();
        json.WriteString("code", test.Code.Value);
        json.WriteString("field", Words.Of(test.Field));
        json.WriteString("step", Words.Of(test.Step));
        json.WriteStringList("on", test.On.Select(Words.Of));
        json.WriteBoolean("wiping", test.Wiping);
        json.WriteStringList("shows", test.Shows.Select(target => target.ToString()));
        json.WriteEndObject();
    }

    private void People(PeopleJudgement people)
    {
        json.WriteStartObject("people");
        json.WriteString("verdict", Words.Of(people.Verdict));
        json.WriteStringList("patients", people.Patients.Select(Words.Of));
        json.WriteList("rules", people.Rules, rule => records.PersonRule(rule, people.Forbidding.Contains(rule.Id)));
        json.WriteList("silent", people.Silent, pair =>
        {
            json.WriteStartObject();
            json.WriteString("ingredient", pair.Ingredient);
            json.WriteString("patient", Words.Of(pair.Patient));
            json.WriteEndObject();
        });
        if (texts is not null) json.WriteString("text", texts.Of(people));
        json.WriteEndObject();
    }

    /// <summary>What a part needs.</summary>
    public void Need(Need need)
    {
        json.WriteStartObject("need");
        if (need.TouchedBy is { } contact) json.WriteString("touchedBy", Words.Of(contact));
        json.WriteBoolean("keptDry", need.KeptDry);
        if (need.Level is { } level) json.WriteString("level", Words.Of(level));
        json.WriteString("origin", Words.Of(need.Origin));
        if (need.DecidedBy is { } who) json.WriteString("decidedBy", who);
        json.WriteBoolean("cleanFirst", need.CleanFirst);
        json.WriteStringList("groups", need.Groups.Select(Words.Of));
        json.WriteStringList("against", need.Against.Select(target => target.ToString()));
        json.WriteStringList("soil", need.Soil.Select(Words.Of));
        json.WriteBoolean("soilAssumed", need.SoilIsUsual);
        json.WriteString("geometry", Words.Of(need.Geometry));
        json.WriteStringList("patients", need.Patients.Select(Words.Of));
        json.WriteBoolean("occupied", need.Occupied);
        json.WriteBoolean("prions", need.Prions);
        json.WriteStringList("rules", need.DecidedByRules.Select(id => id.Value));
        json.WriteEndObject();
    }

    private void Window(Window window, Answer answer, StrengthUnit? unit)
    {
        json.WriteStartObject("window");
        json.WriteBoolean("open", window.IsOpen);
        if (window.ShortestContactTime is { } shortest) json.WriteNumber("shortestContactTimeSeconds", JsonWriting.Short(shortest));
        if (window.LongestExposureTime is { } longest && longest != Interval.WithoutEnd)
            json.WriteNumber("longestExposureTimeSeconds", JsonWriting.Short(longest));
        json.WriteList("boxes", window.Boxes, box => Box(box, unit));
        json.WriteNumber("boxCount", window.BoxCount);
        if (window.Closure is { } closure)
        {
            json.WriteStartObject("closure");
            json.WriteString("code", Words.Of(closure.Code));
            json.WriteStringList("arguments", closure.Arguments);
            json.WriteList("kill", closure.Kill, reason => Reason(reason, answer));
            if (closure.ContactTime is { } wet) json.WriteNumber("contactTimeSeconds", JsonWriting.Short(wet));
            if (closure.ExposureTime is { } exposureTime && exposureTime != Interval.WithoutEnd)
                json.WriteNumber("exposureTimeSeconds", JsonWriting.Short(exposureTime));
            json.WriteStringList("ingredients", closure.Ingredients);
            json.WriteStringList("rules", closure.Rules.Select(id => id.Value));
            json.WriteStringList("claims", closure.Claims.Select(claim => claim.Id));
            if (texts is not null) json.WriteString("text", texts.Of(closure, answer));
            json.WriteEndObject();
        }

        json.WriteBoolean("gapNotShown", window.GapNotShown);
        json.WriteBoolean("workIntoGap", window.WorkIntoGap);
        json.WriteBoolean("noLabelClaim", window.NoLabelClaim);
        json.WriteEndObject();
    }

    private void Box(WindowBox box, StrengthUnit? unit)
    {
        json.WriteStartObject();
        json.WriteString("method", Words.Of(box.Method));
        if (box.Strength is { } strength) json.WriteStrength("strength", strength, unit);
        if (box.Dilution is { } dilution) json.WriteInterval("dilution", dilution, JsonWriting.UnitOf(Axis.Dilution));
        json.WriteInterval("contactTime", box.ContactTime, JsonWriting.UnitOf(Axis.ExposureTime));
        json.WriteString("contactTimeReached", Words.Of(box.Reached));
        json.WriteInterval("exposureTime", box.ExposureTime, JsonWriting.UnitOf(Axis.ExposureTime));
        json.WriteInterval("temperature", box.Temperature, JsonWriting.UnitOf(Axis.Temperature));
        json.WriteBoolean("measureTemperature", box.MeasureTemperature);
        json.WriteInterval("ph", box.Ph, JsonWriting.UnitOf(Axis.Ph));
        json.WriteBoolean("measurePh", box.MeasurePh);
        json.WriteInterval("uses", box.Uses, JsonWriting.UnitOf(Axis.Uses));
        json.WriteList("duties", box.Duties, records.Duty);
        json.WriteStringList("claims", box.Claims.Select(claim => claim.Id));
        json.WriteStringList("rules", box.DecidedBy.Select(id => id.Value));
        json.WriteStringList("personRules", box.PersonRules.Select(id => id.Value));
        json.WriteEndObject();
    }
}
