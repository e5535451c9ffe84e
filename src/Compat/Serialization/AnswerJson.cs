using System.Text;
using System.Text.Json;

namespace Compat.Serialization;

/// <summary>Writes answers as JSON in the one shape that <c>schemas/answer.schema.json</c> describes, as the command's <c>--json</c> does.</summary>
/// <remarks>
/// Every reason, limit and duty is written as a code with its arguments. Texts in the reader's language are the caller's, by <see cref="AnswerTexts"/>; without
/// them
/// <c>text</c> and <c>wouldEstablish</c> are left out and a caution is its word. Safe to call from several threads; uses no reflection.
/// </remarks>
public sealed class AnswerJson
{
    private readonly Utf8JsonWriter _json;
    private readonly KnowledgeBase _kb;
    private readonly AnswerTexts? _texts;
    private readonly RecordJson _records;

    private AnswerJson(Utf8JsonWriter json, KnowledgeBase kb, AnswerTexts? texts)
    {
        (_json, _kb, _texts) = (json, kb, texts);
        _records = new RecordJson(json, texts);
    }

    /// <summary>One answer as one JSON text, without line breaks.</summary>
    /// <param name="kb">The knowledge base that gave the answer.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="texts">Texts for people; null for codes alone.</param>
    public static string Of(KnowledgeBase kb, Answer answer, AnswerTexts? texts = null)
    {
        ArgumentNullException.ThrowIfNull(kb);
        ArgumentNullException.ThrowIfNull(answer);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream)) Write(json, kb, answer, [], [], texts);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    /// <summary>Writes one answer, with what an embedding tool logs.</summary>
    /// <param name="json">Where to write; it is not flushed.</param>
    /// <param name="kb">The knowledge base that gave the answer.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="agents">Agents that serve in its place, as <see cref="KnowledgeBase.Serving"/> finds them; empty where none were looked for.</param>
    /// <param name="products">Products that serve in its place; empty where none were looked for.</param>
    /// <param name="texts">Texts for people; null for codes alone.</param>
    public static void Write(
        Utf8JsonWriter json, KnowledgeBase kb, Answer answer, IReadOnlyList<AgentId> agents, IReadOnlyList<ProductId> products, AnswerTexts? texts = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(kb);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(agents);
        ArgumentNullException.ThrowIfNull(products);
        var one = new AnswerJson(json, kb, texts);
        json.WriteStartObject();
        one.Content(answer);
        json.WriteStringList("alternatives", agents.Select(id => id.Value));
        json.WriteStringList("servingProducts", products.Select(id => id.Value));
        one.End();
        json.WriteEndObject();
    }

    /// <summary>Writes the answers of a device with all its parts.</summary>
    /// <param name="json">Where to write; it is not flushed.</param>
    /// <param name="kb">The knowledge base that gave the answers.</param>
    /// <param name="device">The device.</param>
    /// <param name="parts">The answers by part.</param>
    /// <param name="products">The products that serve each part in place of what was asked; a part that is not a key has none.</param>
    /// <param name="texts">Texts for people; null for codes alone.</param>
    public static void WriteDevice(
        Utf8JsonWriter json, KnowledgeBase kb, DeviceId device, IReadOnlyList<DevicePartAnswer> parts, IReadOnlyDictionary<DevicePartId,
            IReadOnlyList<ProductId>> products, AnswerTexts? texts = null)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(kb);
        ArgumentNullException.ThrowIfNull(device);
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(products);
        var one = new AnswerJson(json, kb, texts);
        json.WriteStartObject();
        json.WriteString("device", device.Value);
        json.WriteList("parts", parts, part =>
        {
            json.WriteStartObject();
            json.WriteString("part", part.Part.Id.Value);
            json.WriteString("type", part.Type.Id.Value);
            json.WriteBoolean("needsNothing", part.NeedsNothing);
            if (part is { NeedsNothing: false, Answer: { } answer })
            {
                json.WriteStartObject("answer");
                one.Content(answer);
                json.WriteStringList("servingProducts", products.TryGetValue(part.Part.Id, out var some) ? some.Select(id => id.Value) : []);
                json.WriteEndObject();
            }

            json.WriteEndObject();
        });
        one.End();
        json.WriteEndObject();
    }

    private void Content(Answer answer)
    {
        var unit = UnitOf(answer.Question.Agent);
        _records.Question(answer.Question);
        _json.WriteString("verdict", Words.Of(answer.Verdict));
        _json.WriteString("partVerdict", Words.Of(answer.PartVerdict));
        _json.WriteBoolean("mayUse", answer.MayUse);
        _json.WriteBoolean("partStandsIt", answer.PartStandsIt);
        _json.WriteStartObject("judged");
        _json.WriteBoolean("part", true);
        _json.WriteBoolean("kill", answer.Kill is not null);
        _json.WriteBoolean("people", answer.People is not null);
        _json.WriteEndObject();
        if (answer.PartVerdict >= Verdict.AllowedWithinLimits) _json.WriteString("judgedBy", answer.JudgedByPart ? "part" : "materials");
        _json.WriteBoolean("wellFounded", answer.WellFounded);
        new WholeJson(_json, _texts, _records).Write(answer, unit);
        _json.WritePropertyName("decisive");
        Reason(answer.Decisive, answer.Question);
        _json.WriteList("reasons", answer.Reasons, reason => Reason(reason, answer.Question));
        _json.WriteList("limits", answer.Limits, limit =>
        {
            _json.WriteStartObject();
            _json.WriteString("code", Words.Of(limit.Code));
            _json.WriteStringList("arguments", limit.Arguments);
            if (_texts is not null) _json.WriteString("text", _texts.Of(limit, answer));
            _json.WriteEndObject();
        });
        _json.WriteList("assumptions", answer.Assumptions, taken => Assumption(taken, unit));
        _json.WriteList("wouldBeAllowed", answer.WouldBeAllowed, taken => Assumption(taken, unit));
        _json.WriteList("boxes", answer.Boxes, box => Box(box, unit));
        _json.WriteNumber("boxCount", answer.BoxCount);
        _json.WriteList("forbiddenBoxes", answer.ForbiddenBoxes, box => Box(box, unit));
        _json.WriteList("duties", answer.Duties, _records.Duty);
        _json.WriteList("damage", answer.Damage, _records.Damage);
        _json.WriteList("rules", answer.DecidedBy, _records.Rule);
        _json.WriteList("setAside", answer.SetAside, _records.Rule);
        _json.WriteList("sources", answer.Sources, _records.Source);
        if (_texts is not null) _json.WriteStringList("wouldEstablish", _texts.WouldEstablish(answer));
    }

    private void End()
    {
        _json.WriteStringList("cautions", Enum.GetValues<Caution>().Select(caution => _texts?.Of(caution) ?? Words.Of(caution)));
        _json.WriteIdentity(_kb.Identity);
    }

    private void Reason(Reason reason, Question question)
    {
        _json.WriteStartObject();
        _json.WriteString("code", Words.Of(reason.Code));
        _json.WriteStringList("arguments", reason.Arguments);
        if (reason.Component is { } component) _json.WriteString("component", component);
        if (reason.Member is { } member) _json.WriteString("member", member);
        if (_texts is not null) _json.WriteString("text", _texts.Of(reason, question));
        _json.WriteEndObject();
    }

    private void Assumption(Assumption taken, StrengthUnit? unit)
    {
        _json.WriteStartObject();
        _json.WriteString("axis", taken.Axis is { } axis ? Words.Of(axis) : "method");
        _json.WriteString("treatment", Words.Of(taken.Treatment));
        _json.WriteBoolean("stated", taken.Stated);
        if (taken.Axis is null) _json.WriteStringList("methods", taken.Methods.Methods.Select(Words.Of));
        else if (taken.Axis == Axis.Strength) _json.WriteStrength("range", taken.Range, unit);
        else _json.WriteInterval("range", taken.Range, JsonWriting.UnitOf(taken.Axis.Value));
        _json.WriteEndObject();
    }

    private void Box(AllowedBox box, StrengthUnit? unit)
    {
        _json.WriteStartObject();
        _records.Exposure(box, unit);
        _json.WriteList("duties", box.Duties, _records.Duty);
        _json.WriteStringList("rules", box.DecidedBy.Select(id => id.Value));
        _json.WriteEndObject();
    }

    /// <summary>The unit that strengths of an agent are written in: its own, else that of the nearest class above it.</summary>
    private StrengthUnit? UnitOf(AgentId? agent) =>
        agent is not null && _kb.Compiled.Agents.TryFind(agent.Value, out var node) ? _kb.Compiled.Agent(node).Basis : null;
}
