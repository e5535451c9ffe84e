using Compat.Curation.Text;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Reads sources, materials, part types and conventions.</summary>
internal static class BasicReaders
{
    /// <summary>Reads a source; null where its id cannot be read.</summary>
    public static Source? ReadSource(RecordFields fields) => fields.Id("id", text => new SourceId(text)) is not { } id ? null : new()
    {
        Id = id,
        Kind = fields.Word<SourceKind>("kind") ?? SourceKind.CommonPractice,
        Title = fields.NeededText("title"),
        Publisher = fields.Text("publisher"),
        Edition = fields.Text("edition"),
        Section = fields.Text("section"),
        Address = fields.Text("address"),
        Recalled = fields.Text("basis") != "read",
        Trust = fields.Word<Trust>("trust") ?? Trust.Weak,
        Note = fields.Text("note"),
    };

    /// <summary>Reads a material; null where its id cannot be read.</summary>
    public static Material? ReadMaterial(RecordFields fields) => fields.Id("id", text => new MaterialId(text)) is not { } id ? null : new()
    {
        Id = id,
        Name = fields.NeededText("name"),
        Under = fields.Id("under", text => new MaterialId(text)),
        Delicate = fields.Word<Delicacy>("delicate"),
        DeclaredOnlySuffices = fields.Yes("declared-only-suffices"),
        AlsoCalled = fields.Texts("also-called"),
        Sources = fields.Sources(),
        Note = fields.Text("note"),
    };

    /// <summary>Reads a part type; null where its id cannot be read.</summary>
    public static PartType? ReadPart(RecordFields fields) => fields.Id("id", text => new PartId(text)) is not { } id ? null : new()
    {
        Id = id,
        Name = fields.NeededText("name"),
        Under = fields.Id("under", text => new PartId(text)),
        AlsoCalled = fields.Texts("also-called"),
        Materials = Materials(fields),
        MaterialsKnown = MaterialsKnown(fields),
        Wettest = fields.Word<ApplicationMethod>("wettest"),
        Never = fields.WordList<Act>("never"),
        Geometry = fields.Word<Geometry>("geometry"),
        TouchedBy = fields.Word<TouchedBy>("touched-by"),
        Patients = fields.WordList<PatientGroup>("patients") ?? [],
        Soil = fields.WordList<SoilKind>("soil"),
        WayOut = fields.WordList<WayOut>("way-out"),
        FunctionCheck = fields.Text("function-check"),
        DryBeforePower = fields.MeasuredFigure("dry-before-power", Measure.Duration),
        WaterIngress = Ingress(fields),
        Duties = DutyReader.Read(fields),
        Sources = fields.Sources(),
        Note = fields.Text("note"),
    };

    /// <summary>Reads a convention; null where it is none of the known ones.</summary>
    public static Convention? ReadConvention(RecordFields fields)
    {
        if (fields.Word<ConventionKey>("id") is not { } key) return null;
        var (methods, order) = (Convention.NamesMethods(key), Convention.NamesOrder(key));
        var value = fields.Node("value");
        if (methods && value is YamlScalar) fields.Report(value, "convention", "a list of methods is expected", "write `[damp-wipe]`");
        if (order && value is YamlScalar) fields.Report(value, "convention", "a list is expected, the mildest first", "write `[looks, wear]`");
        if (!methods && !order && value is YamlSequence) fields.ReportKey("value", "convention", "a range is expected, read a list");
        return new()
        {
            Key = key,
            Range = methods || order ? Interval.Whole : RangeOf(fields, key) ?? Interval.Whole,
            Methods = methods ? MethodSet.Of([.. Listed<ApplicationMethod>(fields)]) : MethodSet.None,
            Consequences = key == ConventionKey.DamageOrder ? Listed<Consequence>(fields) : [],
            Hazards = key == ConventionKey.HazardOrder ? Listed<Hazard>(fields) : [],
            Reason = fields.NeededText("reason"),
        };
    }

    /// <summary>The words of a convention: the schema takes those of every kind of list, each convention its own.</summary>
    private static IReadOnlyList<TWord> Listed<TWord>(RecordFields fields) where TWord : struct, Enum
    {
        foreach (var item in fields.Items("value").Where(item => !Words.TryParse<TWord>(item.Text, out _)))
            fields.Report(item, "convention", $"`{item.Text}` is not one of the words for this convention", NearestNames.Help(item.Text, Words.All<TWord>()) ?? "known here: " + string.Join(", ", Words.All<TWord>().Select(word => $"`{word}`")));
        return fields.WordList<TWord>("value") ?? [];
    }

    /// <summary>The materials of a part; null where none are written.</summary>
    public static IReadOnlyList<MaterialSlot>? Materials(RecordFields fields)
    {
        if (fields.Node("materials") is not YamlSequence list) return null;
        var slots = new List<MaterialSlot>();
        foreach (var item in list.Items)
        {
            if (item is YamlMapping mapping)
                slots.Add(new([.. new RecordFields(mapping, fields.Faults).Ids("one-of", text => new MaterialId(text))]));
            else if (item is YamlScalar scalar && Compat.Id.IsWellFormed(scalar.Text))
                slots.Add(new(new MaterialId(scalar.Text)));
        }

        return slots;
    }

    /// <summary>Whether the materials are all; null where it is not written.</summary>
    public static bool? MaterialsKnown(RecordFields fields, string key = "materials-known") => fields.Text(key) switch
    {
        "fully" => true,
        "partly" => false,
        _ => null,
    };

    private static WaterIngress? Ingress(RecordFields record) =>
        record.Record("water-ingress") is { } fields && WaterIngress.TryParse(fields.Text("code"), out var numeral)
            ? new() { Numeral = numeral, Means = fields.NeededText("means") }
            : null;

    private static Interval? RangeOf(RecordFields fields, ConventionKey key) =>
        key == ConventionKey.UnstatedDilution ? fields.Dilution("value") : fields.Range("value", MeasureOf(key));

    /// <summary>What a convention measures.</summary>
    private static Measure MeasureOf(ConventionKey key) => key switch
    {
        ConventionKey.UnstatedExposureTime or ConventionKey.DryingTime => Measure.ExposureTime,
        ConventionKey.WindowLeast => Measure.Duration,
        ConventionKey.WindowShare => Measure.Share,
        ConventionKey.MostProducts => Measure.Products,
        ConventionKey.IngressWetWipe or ConventionKey.IngressSpray or ConventionKey.IngressRinse or ConventionKey.IngressImmerse => Measure.Numeral,
        ConventionKey.UsesShare => Measure.Part,
        ConventionKey.UnstatedTemperature or ConventionKey.AssumedTemperature or ConventionKey.ClaimTemperature => Measure.Temperature,
        ConventionKey.UnstatedPh or ConventionKey.WaterPh or ConventionKey.PurifiedWaterPh => Measure.Ph,
        ConventionKey.UnstatedUses => Measure.Uses,
        _ => Measure.Density,
    };
}
