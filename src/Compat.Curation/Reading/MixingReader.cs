using Compat.Knowledge;
using Compat.Mixing;

namespace Compat.Curation.Reading;

/// <summary>Reads hazards of mixing.</summary>
internal static class MixingReader
{
    /// <summary>Reads a hazard; null where its id, its agent or what it meets cannot be read.</summary>
    public static MixingHazard? Read(RecordFields fields)
    {
        var id = fields.Id("id", text => new MixingHazardId(text));
        var agent = fields.Id("agent", text => new AgentId(text));
        var with = fields.ExactlyOne("a hazard of mixing", "with-agent", "with-soil", "with-material");
        var withAgent = with == "with-agent" ? fields.Id("with-agent", text => new AgentId(text)) : null;
        var withSoil = with == "with-soil" ? fields.Word<SoilKind>("with-soil") : null;
        var withMaterial = with == "with-material" ? fields.Id("with-material", text => new MaterialId(text)) : null;
        if (id is null || agent is null || (withAgent is null && withSoil is null && withMaterial is null)) return null;
        return new()
        {
            Id = id,
            Agent = agent,
            WithAgent = withAgent,
            WithSoil = withSoil,
            WithMaterial = withMaterial,
            OnlyWhere = fields.Text("only-where"),
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
}
