using Compat.Curation.Text;
using Compat.Curation.Yaml;

namespace Compat.Curation.Reading;

/// <summary>Reads boxes of exposures (<c>when</c>, <c>exposure</c>).</summary>
internal sealed class BoxReader(AgentBases bases)
{
    /// <summary>Reads a box; the unbounded one where the key is not written.</summary>
    /// <param name="record">The record it stands in.</param>
    /// <param name="key">Its key.</param>
    /// <param name="agent">The agent the record speaks of; null for a product.</param>
    public ExposureBox Read(RecordFields record, string key, string? agent)
    {
        if (record.Record(key) is not { } fields) return ExposureBox.Unbounded;
        if (agent is null && fields.Has("strength") && record.Has("product"))
            fields.ReportKey("strength", "axis", "a rule on a product names `dilution`, not `strength`");
        if (agent is not null && fields.Has("dilution"))
            fields.ReportKey("dilution", "axis", "only a rule on a product names `dilution`", "write `strength`");
        return new()
        {
            Strength = agent is null ? default : Strength(fields, agent),
            Dilution = agent is null ? Limit(fields, "dilution", DilutionOf) : default,
            ExposureTime = Limit(fields, "exposure-time", Of(Measure.ExposureTime)),
            Temperature = Limit(fields, "temperature", Of(Measure.Temperature)),
            Ph = Limit(fields, "ph", Of(Measure.Ph)),
            Uses = Limit(fields, "uses", Of(Measure.Uses)),
            Methods = Methods(fields),
        };
    }

    /// <summary>Reads a strength in percent of an agent's basis; null where it is not written, faulty, or of no agent.</summary>
    public Interval? StrengthOf(RecordFields fields, string? agent, string key, bool takesBare)
    {
        if (agent is null || fields.Scalar(key) is not { } scalar) return null;
        Interval percent;
        TextFault? fault;
        if (bases.Of(agent) is { } basis)
        {
            fault = StrengthText.TryReadIn(scalar.Text, takesBare, basis, agent, out percent);
        }
        else
        {
            fault = StrengthText.TryRead(scalar.Text, takesBare, out var strength);
            percent = fault is null ? strength.Percent : default;
        }

        if (fault is null) return percent;
        fields.Report(scalar, fault);
        return null;
    }

    private ClaimBox ReadClaimBox(RecordFields fields, string? agent) => new()
    {
        Strength = agent is null ? default : Strength(fields, agent),
        ContactTime = Limit(fields, "contact-time", Of(Measure.ContactTime)),
        Temperature = Limit(fields, "temperature", Of(Measure.Temperature)),
        Ph = Limit(fields, "ph", Of(Measure.Ph)),
        Methods = Methods(fields),
    };

    /// <summary>Reads the box of a claim: a strength with an agent, a dilution with a product.</summary>
    /// <param name="record">The record it stands in.</param>
    /// <param name="key">Its key.</param>
    /// <param name="agent">The agent the claim speaks of; null for a product.</param>
    public ClaimBox ReadClaim(RecordFields record, string key, string? agent)
    {
        if (record.Record(key) is not { } fields) return new();
        if (agent is null && fields.Has("strength"))
            fields.ReportKey("strength", "axis", "a claim of a product names `dilution`, not `strength`");
        if (agent is not null && fields.Has("dilution"))
            fields.ReportKey("dilution", "axis", "only a claim of a product names `dilution`", "write `strength`");
        return ReadClaimBox(fields, agent) with { Dilution = agent is null ? Limit(fields, "dilution", DilutionOf) : default };
    }

    /// <summary>Reads an exposure time; not named where it is not written.</summary>
    public static AxisLimit ExposureTime(RecordFields fields) => Limit(fields, "exposure-time", Of(Measure.ExposureTime));

    /// <summary>Reads what is said of a strength; not named where it is not written.</summary>
    public AxisLimit Strength(RecordFields fields, string agent) => fields.Text("strength") switch
    {
        "any" => AxisLimit.Any,
        "unstated" => AxisLimit.Unstated,
        _ => StrengthOf(fields, agent, "strength", takesBare: false) is { } range ? AxisLimit.Within(range) : default,
    };

    private static AxisLimit Limit(RecordFields fields, string key, ReadRange read)
    {
        if (fields.Scalar(key) is not { } scalar) return default;
        if (scalar.Text == "any") return AxisLimit.Any;
        if (scalar.Text == "unstated") return AxisLimit.Unstated;
        if (read(scalar.Text, out var range) is not { } fault) return AxisLimit.Within(range);
        fields.Report(scalar, fault);
        return default;
    }

    private static MethodLimit Methods(RecordFields fields) => fields.Node("methods") switch
    {
        YamlScalar { Text: "any" } => MethodLimit.Any,
        YamlScalar { Text: "unstated" } => MethodLimit.Unstated,
        YamlSequence => MethodLimit.Within([.. fields.WordList<ApplicationMethod>("methods")!]),
        _ => default,
    };

    private delegate TextFault? ReadRange(string text, out Interval range);

    private static ReadRange Of(Measure measure) => (string text, out Interval range) => measure.TryRead(text, false, out range);

    private static TextFault? DilutionOf(string text, out Interval range) => DilutionText.TryRead(text, false, out range);
}
