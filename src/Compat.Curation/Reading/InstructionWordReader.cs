namespace Compat.Curation.Reading;

/// <summary>Reads how words of instructions are read.</summary>
internal sealed class InstructionWordReader(BoxReader boxes)
{
    /// <summary>Reads a word; null where its id cannot be read.</summary>
    public InstructionWord? Read(RecordFields fields)
    {
        if (fields.Has("permits") && fields.Has("lists-nothing"))
            fields.ReportKey("lists-nothing", "instruction-word", "`lists-nothing` and `permits` exclude each other", "write one of the two");
        if (!fields.Has("permits") && !fields.Has("forbids") && !fields.Has("act") && !fields.Has("lists-nothing"))
            fields.ReportRecord("instruction-word", "the word has no reading", "write `permits`, `forbids`, `act` or `lists-nothing: true`");
        return fields.Id("id", text => new InstructionWordId(text)) is not { } id ? null : new()
        {
            Id = id,
            Phrases = fields.Texts("phrases"),
            Permits = Reading(fields, "permits"),
            Forbids = Reading(fields, "forbids"),
            Act = Act(fields),
            ListsNothing = fields.Yes("lists-nothing"),
            Reason = fields.NeededText("reason"),
            Sources = fields.Sources(),
        };
    }

    /// <summary>A strength is read in the basis of the first agent; that the others have the same is checked with the records.</summary>
    private WordReading? Reading(RecordFields record, string key)
    {
        if (record.Record(key) is not { } fields) return null;
        var agents = fields.Ids("agents", text => new AgentId(text));
        return new() { Agents = agents, When = boxes.Read(fields, "when", agents.FirstOrDefault()?.Value ?? AgentRoot) };
    }

    private static string AgentRoot => Model.AgentClass.Root.Value;

    private static WordAct? Act(RecordFields record) => record.Record("act") is not { } fields ? null : new()
    {
        Methods = MethodSet.Of([.. fields.WordList<ApplicationMethod>("methods") ?? []]),
        ExposureTime = BoxReader.ExposureTime(fields),
        Duties = DutyReader.Read(fields),
    };
}
