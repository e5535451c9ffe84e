using System.Globalization;
using Compat.Curation.Text;

namespace Compat.Curation.Writing;

/// <summary>Writes exposures and duties as files spell them.</summary>
internal static class ExposureYaml
{
    /// <summary>A box in braces.</summary>
    /// <param name="box">The box.</param>
    /// <param name="strength">The unit of strengths.</param>
    public static IEnumerable<(string Key, string? Value)> Box(ExposureBox box, string strength)
    {
        yield return ("strength", Limit(box.Strength, strength));
        yield return ("dilution", Limit(box.Dilution with { Range = box.Dilution.Range.Scale(100) }, "% v/v"));
        yield return ("exposure-time", Limit(box.ExposureTime, "s"));
        yield return ("temperature", Limit(box.Temperature, "°C"));
        yield return ("ph", Limit(box.Ph, ""));
        yield return ("uses", Limit(box.Uses, ""));
        yield return ("methods", Limit(box.Methods));
    }

    /// <summary>The box of a claim in braces.</summary>
    public static IEnumerable<(string Key, string? Value)> Box(ClaimBox box, string strength) =>
    [
        ("strength", Limit(box.Strength, strength)),
        ("dilution", Limit(box.Dilution with { Range = box.Dilution.Range.Scale(100) }, "% v/v")),
        ("contact-time", Limit(box.ContactTime, "s")),
        ("temperature", Limit(box.Temperature, "°C")),
        ("ph", Limit(box.Ph, "")),
        ("methods", Limit(box.Methods)),
    ];

    /// <summary>A range with its unit; null for null.</summary>
    public static string? Range(Interval? range, string unit) => range is { } some ? RecordText.Quoted(some.ToString(unit)) : null;

    /// <summary>A range in the unit in which it is measured; null for null.</summary>
    public static string? Range(Interval? range, Measure measure) => Range(range?.Scale(1 / measure.Units[0].Factor), measure.Units[0].Unit);

    /// <summary>A figure in the unit in which it is measured; null for null.</summary>
    public static string? Figure(decimal? value, Measure? measure) =>
        value is not { } some ? null : measure is null ? Plain(some) : RecordText.Quoted(Plain(some / measure.Units[0].Factor) + " " + measure.Units[0].Unit);

    /// <summary>A number; null for null.</summary>
    public static string? Number(decimal? value) => value is { } some ? Plain(some) : null;

    /// <summary>A duty in braces.</summary>
    public static string DutyText(Duty duty)
    {
        var kind = Words.Of(duty.Kind);
        var note = duty.Note is null ? null : RecordText.Quoted(duty.Note);
        (string, string?)[] entries = duty.Kind switch
        {
            DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry =>
                [(kind, "[" + string.Join(", ", duty.Ways.Select(Way)) + "]"), ("within", Figure(duty.Within, Measure.Duration)), ("note", note)],
            DutyKind.KeepOff => [(kind, RecordText.Words(duty.Parts.Select(part => part.Value))), ("note", note)],
            DutyKind.Protect or DutyKind.Ventilate => [(kind, note ?? "\"?\"")],
            DutyKind.Inspect => [(kind, After(duty)), ("look-for", note ?? "\"?\"")],
            DutyKind.Discard => [(kind, After(duty)), ("note", note)],
            _ => [(kind, "true"), ("note", note)],
        };
        return RecordText.Inline(entries);
    }

    private static string After(Duty duty) => string.Create(CultureInfo.InvariantCulture, $"after {duty.AfterUses ?? 1} uses");

    private static string Way(DutyWay way)
    {
        var word = way.Act is { } act ? Words.Of(act) : way.Method is { } method ? Words.Of(method) : "air";
        if (way.Water is null && way.Times is null && way.Seconds is null && way.Litres is null) return word;
        return RecordText.Inline(
        [
            ("by", word),
            ("water", way.Water is { } water ? Words.Of(water) : null),
            ("times", Number(way.Times)),
            ("each", Figure(way.Seconds, Measure.Duration)),
            ("volume", Figure(way.Litres, Measure.Volume)),
        ]);
    }

    private static string? Limit(MethodLimit limit) => limit.Statement switch
    {
        AxisStatement.Any => "any",
        AxisStatement.Unstated => "unstated",
        AxisStatement.Within => RecordText.Words(limit.Methods.Methods.Select(Words.Of)),
        _ => null,
    };

    /// <summary>What is said of an axis; null where it is not named.</summary>
    public static string? Limit(AxisLimit limit, string unit) => limit.Statement switch
    {
        AxisStatement.Any => "any",
        AxisStatement.Unstated => "unstated",
        AxisStatement.Within => RecordText.Quoted(limit.Range.ToString(unit)),
        _ => null,
    };

    private static string Plain(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);
}
