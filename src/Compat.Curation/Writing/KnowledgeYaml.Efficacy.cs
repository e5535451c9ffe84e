namespace Compat.Curation.Writing;

/// <content>Organisms, levels, tests, needs, claims and hazards of mixing.</content>
internal sealed partial class KnowledgeYaml
{
    public static void Organism(RecordText to, Organism one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).List("also-called", one.AlsoCalled).Field("group", Words.Of(one.Group))
        .Flag("own-claim", one.OwnClaim).List("sources", Ids(one.Sources)).Field("note", one.Note);

    public static void Level(RecordText to, LevelMeaning one) => to
        .Field("id", Words.Of(one.Level)).Raw("includes", RecordText.Words(one.Includes.Select(Words.Of)))
        .List("sources", Ids(one.Sources)).Field("note", one.Note);

    public static void TestStandard(RecordText to, TestStandard one) => to
        .Field("code", one.Code.Value).Field("name", one.Name).Field("field", Words.Of(one.Field)).Field("step", Words.Of(one.Step))
        .List("on", one.On.Select(Words.Of)).Flag("wiping", one.Wiping).Raw("shows", RecordText.Words(one.Shows.Select(target => target.ToString())))
        .List("sources", Ids(one.Sources)).Field("note", one.Note);

    public static void Need(RecordText to, NeedRule one) => to
        .Field("id", one.Id.Value).List("touched-by", one.TouchedBy.Select(Words.Of)).List("soil", one.Soil.Select(Words.Of))
        .Field("level", Word(one.Level)).Flag("dry", one.Level is null).Flag("clean-first", one.CleanFirst)
        .List("sources", Ids(one.Sources)).Field("note", one.Note);

    public static void Occasion(RecordText to, Occasion one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).List("parts", one.Parts.Select(Words.Of)).Field("at-least", Word(one.AtLeast))
        .Flag("needs-against", one.NeedsAgainst).Flag("hold", one.Hold).List("adds", one.Adds)
        .List("papers", one.Papers.Select(Words.Of)).List("sources", Ids(one.Sources)).Field("note", one.Note);

    public void Claim(RecordText to, Claim one) => to
        .Field("id", one.Id.Value).Field("agent", one.Agent.Value).Raw("with", Partners(one))
        .Braces("when", ExposureYaml.Box(one.When, BasisOf(one.Agent))).Field("reaches", Word(one.Reaches)).List("kills", one.Kills.Select(target => target.ToString()))
        .List("for", Ids(one.For)).Field("where", Word(one.Where)).List("does-not-kill", one.DoesNotKill.Select(target => target.ToString()))
        .List("needs", one.Needs.Select(Words.Of)).List("stands-soil", one.StandsSoil.Select(Words.Of))
        .Braces("bath", Bath(one)).Field("refuted", one.Refuted).Field("kind", Words.Of(one.Kind))
        .Field("why", one.Why).List("sources", Ids(one.Sources)).Field("reviewed", one.Reviewed.ToString());

    public void Mixing(RecordText to, MixingHazard one) => to
        .Field("id", one.Id.Value).Field("agent", one.Agent.Value).Field("with-agent", one.WithAgent?.Value)
        .Field("with-soil", Word(one.WithSoil)).Field("with-material", one.WithMaterial?.Value).Field("only-where", one.OnlyWhere)
        .Braces("when", [("strength", ExposureYaml.Range(one.Strength, ExposureYaml.PercentOf(BasisOf(one.Agent)))), ("with-strength", ExposureYaml.Range(one.WithStrength, ExposureYaml.PercentOf(BasisOf(one.WithAgent))))])
        .Braces("rests-on", [("agent", Word(one.AgentRestsOn)), ("with-agent", Word(one.WithAgentRestsOn))])
        .List("effects", one.Effects.Select(Words.Of)).List("forms", one.Forms).Field("severity", Words.Of(one.Severity))
        .List("separated-by", one.SeparatedBy.Select(Words.Of)).Field("how", one.How)
        .Field("why", one.Why).List("sources", Ids(one.Sources)).Field("reviewed", one.Reviewed.ToString());

    public static void Harmless(RecordText to, HarmlessMeeting one) => to
        .Field("id", one.Id.Value).Field("agent", one.Agent.Value).Field("with-agent", one.WithAgent?.Value)
        .Field("with-soil", Word(one.WithSoil)).Field("with-material", one.WithMaterial?.Value).Field("harmless", one.Why)
        .List("sources", Ids(one.Sources)).Field("reviewed", one.Reviewed.ToString());

    private string? Partners(Claim one) => one.With.Count == 0 ? null : "[" + string.Join(", ", one.With.Select(partner => RecordText.Inline(
    [
        ("agent", partner.Agent.Value), ("strength", ExposureYaml.Limit(partner.Strength, ExposureYaml.PercentOf(BasisOf(partner.Agent)))),
    ]))) + "]";

    private (string, string?)[] Bath(Claim one) => one.Bath is not { } bath ? [] :
    [
        ("minimum", ExposureYaml.Range(bath.Minimum, ExposureYaml.PercentOf(BasisOf(one.Agent)))),
        ("reuse", ExposureYaml.Figure(bath.Reuse, "s")),
        ("test", bath.Test is null ? null : RecordText.Quoted(bath.Test)),
    ];
}
