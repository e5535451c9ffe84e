using Compat.Curation.Reading;

namespace Compat.Curation.Recorded;

/// <summary>Reads a duty as the outputs of the command write it; its sentence is not looked at.</summary>
internal static class RecordedDuty
{
    /// <summary>The duty; null where its kind is not known, which the schema has said.</summary>
    public static Duty? Read(RecordFields fields) => fields.Word<DutyKind>("kind") is not { } kind ? null : new()
    {
        Kind = kind,
        Ways = fields.Records("ways").Select(Way).ToArray(),
        Within = fields.PlainNumber("withinSeconds"),
        Parts = fields.Ids("parts", text => new PartId(text)),
        AfterUses = fields.Number("afterUses"),
        Note = fields.Text("note"),
    };

    private static DutyWay Way(RecordFields fields)
    {
        var by = fields.Text("by");
        var isAct = Words.TryParse<Act>(by, out var act);
        var isMethod = Words.TryParse<ApplicationMethod>(by, out var method);
        if (!isAct && !isMethod && by is not (null or "air")) fields.Report(fields.Scalar("by")!, "way", $"`{by}` is no act, no method and not air");
        return new()
        {
            Act = isAct ? act : null,
            Method = isMethod && !isAct ? method : null,
            Water = fields.Word<WaterGrade>("water"),
            Times = fields.Number("times"),
            Seconds = fields.PlainNumber("seconds"),
            Litres = fields.PlainNumber("litres"),
        };
    }
}
