namespace Compat.Curation.Reading;

/// <summary>Reads hazards of mixing, and what is on record as harmless.</summary>
internal sealed class MixingReader(BoxReader boxes)
{
    /// <summary>Whether a record says that nothing harmful happens.</summary>
    public static bool IsHarmless(RecordFields fields) => fields.Has("harmless");

    /// <summary>Reads a hazard; null where its id, its agent or what it meets cannot be read.</summary>
    public MixingHazard? Read(RecordFields fields)
    {
        if (Two(fields) is not { } two) return null;
        if (NeededKeys.Any(key => !fields.Has(key)))
            fields.ReportRecord("mixing", "a hazard of mixing names its `effects`, its `severity` and `why`; what is harmless says so", "write all three, or `harmless:` with the reason");
        var (when, restsOn) = (fields.Record("when"), fields.Record("rests-on"));
        return new()
        {
            Id = two.Id,
            Agent = two.Agent,
            WithAgent = two.WithAgent,
            WithSoil = two.WithSoil,
            WithMaterial = two.WithMaterial,
            OnlyWhere = fields.Text("only-where"),
            Strength = when is null ? null : boxes.StrengthOf(when, two.Agent.Value, takesBare: false),
            WithStrength = when is null || two.WithAgent is not { } other ? null : boxes.StrengthOf(when, other.Value, takesBare: false, "with-strength"),
            AgentRestsOn = restsOn?.Word<MemberGround>("agent"),
            WithAgentRestsOn = restsOn?.Word<MemberGround>("with-agent"),
            Effects = fields.WordList<MixingEffect>("effects") ?? [],
            Forms = fields.Texts("forms"),
            Severity = fields.Word<MixingSeverity>("severity") ?? MixingSeverity.Never,
            SeparatedBy = fields.WordList<Separation>("separated-by") ?? [],
            How = fields.Text("how"),
            Why = fields.NeededText("why"),
            Sources = fields.Sources(),
            Reviewed = fields.Date("reviewed") ?? RuleReader.NoDate,
        };
    }

    /// <summary>Reads what is on record as harmless; null where its id, its agent or what it meets cannot be read.</summary>
    public static HarmlessMeeting? ReadHarmless(RecordFields fields)
    {
        foreach (var key in HazardKeys.Where(fields.Has))
            fields.ReportKey(key, "harmless", $"a record that is `harmless` has no `{key}`", "leave one of the two out");
        return Two(fields) is not { } two ? null : new()
        {
            Id = two.Id,
            Agent = two.Agent,
            WithAgent = two.WithAgent,
            WithSoil = two.WithSoil,
            WithMaterial = two.WithMaterial,
            Why = fields.NeededText("harmless"),
            Sources = fields.Sources(),
            Reviewed = fields.Date("reviewed") ?? RuleReader.NoDate,
        };
    }

    private static readonly string[] NeededKeys = ["effects", "severity", "why"];

    private static readonly string[] HazardKeys = ["only-where", "when", "rests-on", "effects", "forms", "severity", "separated-by", "how", "why"];

    private static Meeting? Two(RecordFields fields)
    {
        var id = fields.Id("id", text => new MixingHazardId(text));
        var agent = fields.Id("agent", text => new AgentId(text));
        var with = fields.ExactlyOne("a record of mixing", "with-agent", "with-soil", "with-material");
        var withAgent = with == "with-agent" ? fields.Id("with-agent", text => new AgentId(text)) : null;
        var withSoil = with == "with-soil" ? fields.Word<SoilKind>("with-soil") : null;
        var withMaterial = with == "with-material" ? fields.Id("with-material", text => new MaterialId(text)) : null;
        return id is null || agent is null || (withAgent is null && withSoil is null && withMaterial is null) ? null : new(id, agent, withAgent, withSoil, withMaterial);
    }

    private sealed record Meeting(MixingHazardId Id, AgentId Agent, AgentId? WithAgent, SoilKind? WithSoil, MaterialId? WithMaterial);
}
