namespace Compat.Curation.Reading;

/// <summary>Reads standing rules.</summary>
internal sealed class StandingReader(BoxReader boxes)
{
    private static readonly string[] Demands = ["never-allowed", "always-with", "never-above", "bound-by", "mixing-with", "mixing-with-soil"];

    /// <summary>Reads a standing rule; null where its id, its agent or what it stands on cannot be read.</summary>
    public StandingRule? Read(RecordFields fields)
    {
        var id = fields.Id("id", text => new StandingRuleId(text));
        var demand = fields.ExactlyOne("a standing rule", Demands);
        var agent = fields.Id("agent", text => new AgentId(text));
        var when = boxes.Read(fields, "when", agent?.Value);
        if (!Subject(fields, demand, out var part, out var material)) return null;
        if (id is null || agent is null) return null;
        return new()
        {
            Id = id,
            Part = part,
            Material = material,
            Agent = agent,
            When = when,
            AlwaysWith = fields.Word<DutyKind>("always-with"),
            NeverAbove = fields.Word<Level>("never-above"),
            Patient = fields.Word<PatientGroup>("patient"),
            BoundBy = fields.Text("bound-by"),
            MixingWith = fields.Id("mixing-with", text => new AgentId(text)),
            MixingWithSoil = fields.Word<SoilKind>("mixing-with-soil"),
            Reason = fields.NeededText("reason"),
            Sources = fields.Sources(),
        };
    }

    /// <summary>Reads what it stands on: a part or a material for what it demands of rules, a patient and perhaps a part for a person rule, nothing else.</summary>
    private static bool Subject(RecordFields fields, string? demand, out PartId? part, out MaterialId? material)
    {
        part = null;
        material = null;
        var ofRules = demand is null or "never-allowed" or "always-with";
        var ofPatient = demand == "never-allowed" && fields.Has("patient");
        foreach (var key in new[] { "part", "material", "patient" })
        {
            var fits = key switch { "patient" => demand == "never-allowed" || demand is null, "part" => ofRules, _ => ofRules && !ofPatient };
            if (!fits && fields.Has(key)) fields.ReportKey(key, "one-of-keys", $"`{key}` does not go with `{(ofPatient ? "patient" : demand)}`");
        }

        var target = ofPatient ? fields.Has("part") ? "part" : null : ofRules ? fields.ExactlyOne("a standing rule", "part", "material") : null;
        if (target == "part") part = fields.Id("part", text => new PartId(text));
        if (target == "material") material = fields.Id("material", text => new MaterialId(text));
        return !ofRules || ofPatient || part is not null || material is not null;
    }
}
