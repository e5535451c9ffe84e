using System.Text.Json;
using Compat.Answers;
using Compat.Cli.Input;
using Compat.Cli.Wording;
using Compat.Exposures;

namespace Compat.Cli.Json;

/// <summary>Writes answers as <c>schemas/answer.schema.json</c> describes.</summary>
public sealed class AnswerJson(Utf8JsonWriter json, Names names)
{
    private readonly RecordJson _records = new(json, names);

    /// <summary>One answer, with what an embedding tool logs.</summary>
    public void Write(Answer answer, Serving serving)
    {
        json.WriteStartObject();
        Content(answer);
        json.WriteStringList("alternatives", serving.Agents.Select(id => id.Value));
        json.WriteStringList("servingProducts", serving.Products.Select(id => id.Value));
        End(answer.Identity);
        json.WriteEndObject();
    }

    /// <summary>A device with all its parts.</summary>
    public void WriteDevice(Question question, IReadOnlyList<DevicePartAnswer> parts, IReadOnlyDictionary<DevicePartId, Serving> serving, IReadOnlyList<DataIdentity> identity)
    {
        json.WriteStartObject();
        json.WriteString("device", question.Device!.Value);
        json.WriteList("parts", parts, part =>
        {
            json.WriteStartObject();
            json.WriteString("part", part.Part.Id.Value);
            json.WriteString("type", part.Type.Id.Value);
            json.WriteBoolean("needsNothing", part.NeedsNothing);
            if (part is { NeedsNothing: false, Answer: { } answer })
            {
                json.WriteStartObject("answer");
                Content(answer);
                json.WriteStringList("servingProducts", serving[part.Part.Id].Products.Select(id => id.Value));
                json.WriteEndObject();
            }

            json.WriteEndObject();
        });
        End(identity);
        json.WriteEndObject();
    }

    private void Content(Answer answer)
    {
        var unit = ExposureWording.Unit(answer.Question, names);
        _records.Question(answer.Question);
        json.WriteString("verdict", Words.Of(answer.Verdict));
        json.WriteString("partVerdict", Words.Of(answer.PartVerdict));
        json.WriteBoolean("mayUse", answer.MayUse);
        json.WriteBoolean("partStandsIt", answer.PartStandsIt);
        json.WriteStartObject("judged");
        json.WriteBoolean("part", true);
        json.WriteBoolean("kill", answer.Kill is not null);
        json.WriteBoolean("people", answer.People is not null);
        json.WriteEndObject();
        if (answer.PartVerdict >= Verdict.AllowedWithinLimits) json.WriteString("judgedBy", answer.JudgedByPart ? "part" : "materials");
        json.WriteBoolean("wellFounded", answer.WellFounded);
        new WholeJson(json, names, _records).Write(answer, unit);
        json.WritePropertyName("decisive");
        Reason(answer.Decisive, answer.Question);
        json.WriteList("reasons", answer.Reasons, reason => Reason(reason, answer.Question));
        json.WriteList("limits", answer.Limits, limit =>
        {
            json.WriteStartObject();
            json.WriteString("code", Words.Of(limit.Code));
            json.WriteStringList("arguments", limit.Arguments);
            json.WriteString("text", Plain(LimitWording.Of(limit, answer, names)));
            json.WriteEndObject();
        });
        json.WriteList("assumptions", answer.Assumptions, taken => Assumption(taken, unit));
        json.WriteList("wouldBeAllowed", answer.WouldBeAllowed, taken => Assumption(taken, unit));
        json.WriteList("boxes", answer.Boxes, box => Box(box, unit));
        json.WriteNumber("boxCount", answer.BoxCount);
        json.WriteList("forbiddenBoxes", answer.ForbiddenBoxes, box => Box(box, unit));
        json.WriteList("duties", answer.Duties, _records.Duty);
        json.WriteList("damage", answer.Damage, _records.Damage);
        json.WriteList("rules", answer.DecidedBy, _records.Rule);
        json.WriteList("setAside", answer.SetAside, _records.Rule);
        json.WriteList("sources", answer.Sources, _records.Source);
        json.WriteStringList("wouldEstablish", EstablishWording.Of(answer, names).Select(Plain));
    }

    private void End(IReadOnlyList<DataIdentity> identity)
    {
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(identity);
    }

    private void Reason(Reason reason, Question question)
    {
        json.WriteStartObject();
        json.WriteString("code", Words.Of(reason.Code));
        json.WriteStringList("arguments", reason.Arguments);
        if (reason.Component is { } component) json.WriteString("component", component);
        if (reason.Member is { } member) json.WriteString("member", member);
        json.WriteString("text", Plain(ReasonWording.Of(reason, question, names)));
        json.WriteEndObject();
    }

    private void Assumption(Assumption taken, StrengthUnit? unit)
    {
        json.WriteStartObject();
        json.WriteString("axis", taken.Axis is { } axis ? Words.Of(axis) : "method");
        json.WriteString("treatment", Words.Of(taken.Treatment));
        json.WriteBoolean("stated", taken.Stated);
        if (taken.Axis is null) json.WriteStringList("methods", taken.Methods.Methods.Select(Words.Of));
        else if (taken.Axis == Axis.Strength) json.WriteStrength("range", taken.Range, unit);
        else json.WriteInterval("range", taken.Range, RecordJson.Unit(taken.Axis.Value));
        json.WriteEndObject();
    }

    private void Box(AllowedBox box, StrengthUnit? unit)
    {
        json.WriteStartObject();
        _records.Exposure(box, unit);
        json.WriteList("duties", box.Duties, _records.Duty);
        json.WriteStringList("rules", box.DecidedBy.Select(id => id.Value));
        json.WriteEndObject();
    }

    private static string Plain(string text) => text.Replace('\u00a0', ' ');
}
