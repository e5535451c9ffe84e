using System.Globalization;

namespace Compat.Curation.Writing;

/// <summary>Writes exposures and duties as files spell them.</summary>
internal static class ExposureYaml
{
    /// <summary>A box in braces.</summary>
    /// <param name="box">The box.</param>
    /// <param name="basis">The unit of the agent's strength; null where it is not known.</param>
    public static IEnumerable<(string Key, string? Value)> Box(ExposureBox box, StrengthUnit? basis)
    {
        yield return ("strength", Limit(box.Strength, PercentOf(basis)));
        yield return ("dilution", Limit(box.Dilution with { Range = box.Dilution.Range.Scale(100) }, "% v/v"));
        yield return ("exposure-time", Limit(box.ExposureTime, "s"));
        yield return ("temperature", Limit(box.Temperature, "°C"));
        yield return ("ph", Limit(box.Ph, ""));
        yield return ("uses", Limit(box.Uses, ""));
        yield return ("methods", Limit(box.Methods));
    }

    /// <summary>The box of a claim in braces.</summary>
    public static IEnumerable<(string Key, string? Value)> Box(ClaimBox box, StrengthUnit? basis) =>
    [
        ("strength", Limit(box.Strength, PercentOf(basis))),
        ("dilution", Limit(box.Dilution with { Range = box.Dilution.Range.Scale(100) }, "% v/v")),
        ("contact-time", Limit(box.ContactTime, "s")),
        ("temperature", Limit(box.Temperature, "°C")),
        ("ph", Limit(box.Ph, "")),
        ("methods", Limit(box.Methods)),
    ];

    /// <summary>The percent of a basis, as it is written.</summary>
    public static string PercentOf(StrengthUnit? basis) => StrengthUnit.PercentOf(basis?.Basis ?? StrengthBasis.VolumePerVolume).Text;

    /// <summary>Methods in brackets.</summary>
    public static string Methods(MethodSet methods) => RecordText.Words(methods.Methods.Select(Words.Of));

    /// <summary>A range with its unit; null for null.</summary>
    public static string? Range(Interval? range, string unit, decimal factor = 1) =>
        range is { } some ? RecordText.Quoted(some.Scale(factor).ToString(unit)) : null;

    /// <summary>A figure with its unit; null for null.</summary>
    public static string? Figure(decimal? value, string unit) =>
        value is { } some ? RecordText.Quoted(Plain(some) + " " + unit) : null;

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
                [(kind, "[" + string.Join(", ", duty.Ways.Select(Way)) + "]"), ("within", Figure(duty.Within, "s")), ("note", note)],
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
            ("each", Figure(way.Seconds, "s")),
            ("volume", Figure(way.Litres, "L")),
        ]);
    }

    private static string? Limit(MethodLimit limit) => limit.Statement switch
    {
        AxisStatement.Any => "any",
        AxisStatement.Unstated => "unstated",
        AxisStatement.Within => Methods(limit.Methods),
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
