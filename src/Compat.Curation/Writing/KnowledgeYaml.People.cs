namespace Compat.Curation.Writing;

/// <content>Person rules, protection and words of instructions.</content>
internal sealed partial class KnowledgeYaml
{
    public void PersonRule(RecordText to, PersonRule one) => to
        .Field("id", one.Id.Value).Field("agent", one.Agent.Value).List("patients", one.Patients.Select(Words.Of)).Flag("occupied", one.Occupied)
        .Braces("when", ExposureYaml.Box(one.When, BasisOf(one.Agent))).Field("verdict", Words.Of(one.Verdict))
        .Lines("duties", one.Duties.Select(ExposureYaml.DutyText)).List("for", Ids(one.For)).Field("harm", one.Harm)
        .Field("why", one.Why).List("sources", Ids(one.Sources)).Field("reviewed", one.Reviewed.ToString());

    public void Protection(RecordText to, Protection one) => to
        .Field("id", one.Id.Value).Field("agent", one.Agent.Value).Braces("when", ExposureYaml.Box(one.When, BasisOf(one.Agent)))
        .Lines("gloves", one.Gloves.Select(glove => RecordText.Inline([("material", RecordText.Quoted(glove.Material)), ("holds", ExposureYaml.Figure(glove.Holds, "s"))])))
        .List("gloves-fail", one.GlovesFail).Field("not-for", one.NotFor).Field("eyes", one.Eyes).Field("breathing", one.Breathing).Field("ventilation", one.Ventilation)
        .Lines("limits", one.Limits.Select(Limit)).Field("fire", one.Fire).Raw("flash-point", ExposureYaml.Figure(one.FlashPoint, "°C"))
        .Field("oxygen", one.Oxygen).Field("energised", one.Energised).Field("disposal", one.Disposal).Field("first-aid", one.FirstAid)
        .List("sources", Ids(one.Sources)).Field("reviewed", one.Reviewed.ToString());

    public void InstructionWord(RecordText to, InstructionWord one) => to
        .Field("id", one.Id.Value).List("phrases", one.Phrases).Braces("permits", Reading(one.Permits)).Braces("forbids", Reading(one.Forbids))
        .Braces("act", Act(one.Act)).Flag("lists-nothing", one.ListsNothing).Field("reason", one.Reason).List("sources", Ids(one.Sources));

    private static string Limit(ExposureLimit one) => RecordText.Inline(
    [
        ("kind", Words.Of(one.Kind)), ("value", RecordText.Quoted(one.Value.ToString())), ("by", RecordText.Quoted(one.By)), ("source", one.Source.Value),
    ]);

    private (string, string?)[] Reading(WordReading? one)
    {
        if (one is null) return [];
        var box = RecordText.Inline(ExposureYaml.Box(one.When, BasisOf(one.Agents.Count == 0 ? null : one.Agents[0])));
        return [("agents", RecordText.Words(Ids(one.Agents))), ("when", box == "{}" ? null : box)];
    }

    private static (string, string?)[] Act(WordAct? one) => one is null ? [] :
    [
        ("methods", one.Methods.IsEmpty ? null : ExposureYaml.Methods(one.Methods)),
        ("exposure-time", ExposureYaml.Limit(one.ExposureTime, "s")),
        ("duties", one.Duties.Count == 0 ? null : "[" + string.Join(", ", one.Duties.Select(ExposureYaml.DutyText)) + "]"),
    ];
}
