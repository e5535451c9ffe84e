using System.Globalization;
using Compat.Curation.Text;
using Compat.Curation.Yaml;

namespace Compat.Curation.Reading;

/// <summary>Reads duties.</summary>
internal static class DutyReader
{
    private static readonly string[] Kinds = [.. Words.All<DutyKind>()];

    /// <summary>Reads a duty; null where it has no kind.</summary>
    public static Duty? Read(RecordFields fields)
    {
        if (fields.ExactlyOne("a duty", Kinds) is not { } key || !Words.TryParse<DutyKind>(key, out var kind)) return null;
        var hasWays = kind is DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry;
        if (fields.Has("within") && !hasWays)
            fields.ReportKey("within", "duty", $"`within` does not go with `{key}`", "it goes with `take-off`, `wipe-dry` and `dry`");
        if (fields.Has("look-for") && kind != DutyKind.Inspect)
            fields.ReportKey("look-for", "duty", $"`look-for` does not go with `{key}`", "it goes with `inspect`");
        if (kind == DutyKind.Inspect && !fields.Has("look-for"))
            fields.ReportKey(key, "duty", "`look-for` is missing beside `inspect`", "say what to look for");
        var words = kind switch
        {
            DutyKind.Protect or DutyKind.Ventilate => fields.Text(key),
            DutyKind.Inspect => fields.Text("look-for"),
            _ => null,
        };
        if (words is not null && fields.Has("note"))
            fields.ReportKey("note", "duty", $"`note` does not go with `{key}`, which has its own words", "write one of the two");
        return new()
        {
            Kind = kind,
            Ways = hasWays ? Ways(fields, key) : [],
            Within = hasWays ? fields.MeasuredFigure("within", Measure.Duration) : null,
            Parts = kind == DutyKind.KeepOff ? fields.Ids(key, id => new PartId(id)) : [],
            AfterUses = kind is DutyKind.Inspect or DutyKind.Discard ? AfterUses(fields.Text(key)) : null,
            Note = words ?? fields.Text("note"),
        };
    }

    private static int? AfterUses(string? text)
    {
        var parts = text?.Split(' ') ?? [];
        return parts.Length == 3 && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out var uses) ? uses : null;
    }

    private static DutyWay[] Ways(RecordFields fields, string key)
    {
        var ways = new List<DutyWay>();
        foreach (var item in (fields.Node(key) as YamlSequence)?.Items ?? [])
        {
            if (item is YamlScalar word) ways.AddRange(Way(word.Text) is { } way ? [way] : []);
            else if (item is YamlMapping mapping && Detailed(new(mapping, fields.Faults)) is { } detailed) ways.Add(detailed);
        }

        return [.. ways];
    }

    private static DutyWay? Way(string? word)
    {
        if (word == "air") return DutyWay.Air;
        if (Words.TryParse<Act>(word, out var act)) return DutyWay.By(act);
        return Words.TryParse<ApplicationMethod>(word, out var method) ? DutyWay.By(method) : null;
    }

    private static DutyWay? Detailed(RecordFields fields) =>
        Way(fields.Text("by")) is not { } way ? null : way with
        {
            Water = fields.Word<WaterGrade>("water"),
            Times = fields.Number("times"),
            Seconds = fields.MeasuredFigure("each", Measure.Duration),
            Litres = fields.MeasuredFigure("volume", Measure.Volume),
        };
}
