using System.Globalization;
using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Curation.Text;
using Compat.Curation.Yaml;

namespace Compat.Curation.Reading;

/// <summary>Gives the fields of one record their types. What the schema refuses is reported already and read as absent.</summary>
internal sealed class RecordFields(YamlMapping mapping, DiagnosticList faults)
{
    /// <summary>What stands in for a date that is missing, which is reported.</summary>
    public static readonly CalendarDate NoDate = new(1, 1, 1);

    /// <summary>The record.</summary>
    public YamlMapping Mapping { get; } = mapping;

    /// <summary>Where faults go.</summary>
    public DiagnosticList Faults { get; } = faults;

    /// <summary>Whether a key is written.</summary>
    public bool Has(string key) => Mapping.Find(key) is not null;

    /// <summary>The value of a key, or null.</summary>
    public YamlNode? Node(string key) => Mapping.Find(key)?.Value;

    /// <summary>The single value of a key, or null.</summary>
    public YamlScalar? Scalar(string key) => Node(key) as YamlScalar is { IsNothing: false } scalar ? scalar : null;

    /// <summary>A text, or null.</summary>
    public string? Text(string key) => Scalar(key)?.Text;

    /// <summary>A text that the record cannot do without; a stand-in where it is missing, which is reported.</summary>
    public string NeededText(string key) => Text(key) ?? "?";

    /// <summary>Whether <c>true</c> is written.</summary>
    public bool Yes(string key) => Scalar(key) is { IsPlain: true, Text: "true" };

    /// <summary>Whether <c>true</c> or <c>false</c> is written; null where neither is.</summary>
    public bool? Flag(string key) => Scalar(key) is { IsPlain: true, Text: "true" or "false" } scalar ? scalar.Text == "true" : null;

    /// <summary>A word of a closed list, or null.</summary>
    public TWord? Word<TWord>(string key) where TWord : struct, Enum =>
        Words.TryParse<TWord>(Text(key), out var word) ? word : null;

    /// <summary>The words of a list; null where the key is not written.</summary>
    public IReadOnlyList<TWord>? WordList<TWord>(string key) where TWord : struct, Enum =>
        Has(key) ? Items(key).Select(item => Words.TryParse<TWord>(item.Text, out var word) ? word : (TWord?)null).OfType<TWord>().ToArray() : null;

    /// <summary>The single values of a list.</summary>
    public IEnumerable<YamlScalar> Items(string key) => (Node(key) as YamlSequence)?.Items.OfType<YamlScalar>() ?? [];

    /// <summary>The mappings of a list.</summary>
    public IEnumerable<RecordFields> Records(string key) =>
        (Node(key) as YamlSequence)?.Items.OfType<YamlMapping>().Select(item => new RecordFields(item, Faults)) ?? [];

    /// <summary>The mapping of a key, or null.</summary>
    public RecordFields? Record(string key) => Node(key) is YamlMapping inner ? new(inner, Faults) : null;

    /// <summary>The mapping of a key; one without keys where there is none.</summary>
    public RecordFields Within(string key) => Record(key) ?? new(new YamlMapping([], Mapping.Span), Faults);

    /// <summary>Texts of a list.</summary>
    public IReadOnlyList<string> Texts(string key) => Items(key).Select(item => item.Text).ToArray();

    /// <summary>An id, or null.</summary>
    public TId? Id<TId>(string key, Func<string, TId> make) where TId : class => Scalar(key) is { } scalar ? MakeId(scalar, make) : null;

    /// <summary>Ids of a list.</summary>
    public IReadOnlyList<TId> Ids<TId>(string key, Func<string, TId> make) where TId : class =>
        Items(key).Select(item => MakeId(item, make)).OfType<TId>().ToArray();

    /// <summary>A date, or null; a day that is none is reported.</summary>
    public CalendarDate? Date(string key)
    {
        if (Scalar(key) is not { } scalar) return null;
        if (CalendarDate.TryParse(scalar.Text, out var date)) return date;
        Report(scalar, "date", $"there is no day `{scalar.Text}`", "write year-month-day: `2026-11-25`");
        return null;
    }

    /// <summary>A single figure with its unit, or null.</summary>
    public decimal? MeasuredFigure(string key, Measure measure)
    {
        if (Scalar(key) is not { } scalar) return null;
        if (measure.TryReadFigure(scalar.Text, out var value) is not { } fault) return value;
        Report(scalar, fault);
        return null;
    }

    /// <summary>A range with its unit, or null; a figure without a sign is the value itself.</summary>
    public Interval? Range(string key, Measure measure)
    {
        if (Scalar(key) is not { } scalar) return null;
        if (measure.TryRead(scalar.Text, true, out var range) is not { } fault) return range;
        Report(scalar, fault);
        return null;
    }

    /// <summary>A dilution as a share of volume, or null.</summary>
    public Interval? Dilution(string key)
    {
        if (Scalar(key) is not { } scalar) return null;
        if (DilutionText.TryRead(scalar.Text, true, out var share) is not { } fault) return share;
        Report(scalar, fault);
        return null;
    }

    /// <summary>A strength of any unit, or null.</summary>
    public Strength? Strength(string key)
    {
        if (Scalar(key) is not { } scalar) return null;
        if (StrengthText.TryRead(scalar.Text, true, out var strength) is not { } fault) return strength;
        Report(scalar, fault);
        return null;
    }

    /// <summary>The unit of a strength, or null.</summary>
    public StrengthUnit? StrengthUnit(string key) => Space.StrengthUnit.TryParse(Text(key), out var unit) ? unit : null;

    /// <summary>A concentration in air, or null.</summary>
    public AirConcentration? AirConcentration(string key)
    {
        if (Scalar(key) is not { } scalar) return null;
        if (Model.AirConcentration.TryParse(scalar.Text, out var value)) return value;
        Report(scalar, "figure", $"`{scalar.Text}` is no concentration in air", "write a figure above 0 and `ppm`, `ppb` or `mg/m³`");
        return null;
    }

    /// <summary>The code of a test, or null.</summary>
    public TestCode? TestCode(string key) => Model.TestCode.TryParse(Text(key), out var code) ? code : null;

    /// <summary>The methods of a list.</summary>
    public MethodSet MethodSet(string key) => Space.MethodSet.Of([.. WordList<ApplicationMethod>(key) ?? []]);

    /// <summary>A whole number, or null.</summary>
    public int? Number(string key) =>
        Scalar(key) is { IsPlain: true } scalar && int.TryParse(scalar.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    /// <summary>A plain number, or null.</summary>
    public decimal? PlainNumber(string key) =>
        Scalar(key) is { IsPlain: true } scalar && ScalarText.TryReadNumber(scalar.Text, out var number) ? number : null;

    /// <summary>Reports the fault of a value unless the schema said something of it.</summary>
    public void Report(YamlScalar scalar, TextFault fault) => Report(scalar, "figure", fault.Message, fault.Help);

    /// <summary>Reports a fault of a value unless something was said of it.</summary>
    public void Report(YamlNode node, string code, string message, string? help = null) => ReportAt(node.Span, code, message, help);

    /// <summary>Reports a fault of the record as a whole, at its first key.</summary>
    public void ReportRecord(string code, string message, string? help = null)
    {
        var at = NodePath.PointAt(Mapping);
        if (!Faults.AnyWithin(Mapping.Span)) ReportAt(at, code, message, help);
    }

    /// <summary>Reports a fault at a key.</summary>
    public void ReportKey(string key, string code, string message, string? help = null) =>
        ReportAt(Mapping.Find(key)!.Key.Span, code, message, help);

    /// <summary>Reports unless exactly one of the keys is written.</summary>
    /// <returns>The key, or null.</returns>
    public string? ExactlyOne(string what, params string[] keys)
    {
        var written = keys.Where(Has).ToArray();
        if (written.Length == 1) return written[0];
        var listed = string.Join(", ", keys.Select(key => $"`{key}`"));
        if (written.Length == 0) ReportRecord("one-of-keys", $"{what} needs one of {listed}");
        else ReportKey(written[1], "one-of-keys", $"{what} has `{written[0]}` and `{written[1]}`", $"write exactly one of {listed}");
        return null;
    }

    /// <summary>Reports a key that is written without another.</summary>
    public void OnlyBeside(string code, string key, string other)
    {
        if (Has(key) && !Has(other)) ReportKey(key, code, $"`{key}` needs `{other}` beside it");
    }

    private void ReportAt(TextSpan span, string code, string message, string? help)
    {
        if (!Faults.AnyWithin(span)) Faults.Add(span, code, message, help);
    }

    private TId? MakeId<TId>(YamlScalar scalar, Func<string, TId> make) where TId : class
    {
        var formed = typeof(DottedId).IsAssignableFrom(typeof(TId)) ? DottedId.IsWellFormed(scalar.Text) : Compat.Id.IsWellFormed(scalar.Text);
        if (formed) return make(scalar.Text);
        Report(scalar, "id", $"`{scalar.Text}` is no id", "write lower-case words joined by single hyphens");
        return null;
    }
}
