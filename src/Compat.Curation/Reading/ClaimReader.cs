using Compat.Curation.Text;

namespace Compat.Curation.Reading;

/// <summary>Reads claims of efficacy.</summary>
internal sealed class ClaimReader(BoxReader boxes)
{
    /// <summary>Reads a claim; null where its id or its agent cannot be read.</summary>
    public Claim? Read(RecordFields fields)
    {
        var id = fields.Id("id", text => new ClaimId(text));
        if (!fields.Has("reaches") && !fields.Has("kills"))
            fields.ReportRecord("claim", "a claim names the level it `reaches`, what it `kills`, or both");
        if (fields.Id("agent", text => new AgentId(text)) is not { } agent || id is null) return null;
        return new()
        {
            Id = id,
            Agent = agent,
            With = fields.Records("with").Select(Partner).OfType<ClaimPartner>().ToArray(),
            When = boxes.ReadClaim(fields, agent.Value),
            Reaches = fields.Word<Level>("reaches"),
            Kills = LevelReaders.Targets(fields, "kills"),
            For = fields.Ids("for", text => new PartId(text)),
            Where = fields.Word<ClaimWhere>("where"),
            DoesNotKill = LevelReaders.Targets(fields, "does-not-kill"),
            Needs = fields.WordList<ClaimNeed>("needs") ?? [],
            StandsSoil = fields.WordList<SoilKind>("stands-soil") ?? [],
            Bath = fields.Record("bath") is { } bath ? BathUse(boxes, bath, agent.Value) : null,
            Refuted = fields.Text("refuted"),
            Kind = fields.Word<ClaimKind>("kind") ?? ClaimKind.Label,
            Why = fields.NeededText("why"),
            Sources = fields.Sources(),
            Reviewed = fields.Date("reviewed") ?? RuleReader.NoDate,
        };
    }

    private ClaimPartner? Partner(RecordFields fields) =>
        fields.Id("agent", text => new AgentId(text)) is { } agent ? new(agent, boxes.Strength(fields, agent.Value)) : null;

    /// <summary>Reads how a bath is kept.</summary>
    public static BathUse BathUse(BoxReader boxes, RecordFields fields, string agent) => new()
    {
        Minimum = boxes.StrengthOf(fields, agent, takesBare: false, "minimum"),
        Reuse = fields.MeasuredFigure("reuse", Measure.Duration),
        Test = fields.Text("test"),
    };
}
