using Compat.Curation.Text;

namespace Compat.Curation.Reading;

/// <summary>Reads person rules and protection.</summary>
internal sealed class PeopleReader(BoxReader boxes)
{
    /// <summary>Reads a person rule; null where its id or its agent cannot be read.</summary>
    public PersonRule? ReadRule(RecordFields fields)
    {
        var id = fields.Id("id", text => new PersonRuleId(text));
        if (!fields.Has("patients") && !fields.Has("occupied"))
            fields.ReportRecord("person-rule", "a person rule names its `patients`; only one on an `occupied` device may leave them out");
        if (fields.Text("verdict") == "with-duties" && !fields.Has("duties"))
            fields.ReportKey("verdict", "person-rule", "`duties` is missing: a rule with duties says which");
        if (fields.Id("agent", text => new AgentId(text)) is not { } agent || id is null) return null;
        return new()
        {
            Id = id,
            Agent = agent,
            Patients = fields.WordList<PatientGroup>("patients") ?? [],
            Occupied = fields.Yes("occupied"),
            When = boxes.Read(fields, "when", agent.Value),
            Verdict = fields.Word<PersonVerdict>("verdict") ?? PersonVerdict.NotAllowed,
            Duties = DutyReader.Read(fields),
            For = fields.Ids("for", text => new PartId(text)),
            Harm = fields.NeededText("harm"),
            Why = fields.NeededText("why"),
            Sources = fields.Sources(),
            Reviewed = fields.Date("reviewed") ?? RuleReader.NoDate,
        };
    }

    /// <summary>Reads a record of protection; null where its id or its agent cannot be read.</summary>
    public Protection? ReadProtection(RecordFields fields)
    {
        var id = fields.Id("id", text => new ProtectionId(text));
        if (fields.Id("agent", text => new AgentId(text)) is not { } agent || id is null) return null;
        return new()
        {
            Id = id,
            Agent = agent,
            When = boxes.Read(fields, "when", agent.Value),
            Gloves = fields.Records("gloves").Select(ReadGlove).ToArray(),
            GlovesFail = fields.Texts("gloves-fail"),
            Eyes = fields.Text("eyes"),
            Breathing = fields.Text("breathing"),
            Ventilation = fields.Text("ventilation"),
            Limits = fields.Records("limits").Select(ReadLimit).OfType<ExposureLimit>().ToArray(),
            Fire = fields.Text("fire"),
            FlashPoint = fields.MeasuredFigure("flash-point", Measure.FlashPoint),
            Oxygen = fields.Text("oxygen"),
            Energised = fields.Text("energised"),
            Disposal = fields.Text("disposal"),
            FirstAid = fields.Text("first-aid"),
            NotFor = fields.Text("not-for"),
            Sources = fields.Sources(),
            Reviewed = fields.Date("reviewed") ?? RuleReader.NoDate,
        };
    }

    private static GloveMaterial ReadGlove(RecordFields fields) =>
        new() { Material = fields.NeededText("material"), Holds = fields.MeasuredFigure("holds", Measure.Duration) };

    private static ExposureLimit? ReadLimit(RecordFields fields)
    {
        var source = fields.Id("source", text => new SourceId(text));
        if (fields.Scalar("value") is not { } scalar || fields.Word<LimitKind>("kind") is not { } kind || source is null) return null;
        if (!AirConcentration.TryParse(scalar.Text, out var value))
        {
            fields.Report(scalar, "figure", $"`{scalar.Text}` is no concentration in air", "write a figure above 0 and `ppm`, `ppb` or `mg/m³`");
            return null;
        }

        return new() { Kind = kind, Value = value, By = fields.NeededText("by"), Source = source };
    }
}
