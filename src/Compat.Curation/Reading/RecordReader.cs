using Compat.Curation.Schemas;
using Compat.Curation.Text;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Reads the records of a file. How each is read follows from its declaration (Compat.Generators); here stand the few forms of their own.</summary>
/// <param name="boxes">Reads exposures, strengths in the unit of their agent.</param>
/// <param name="ofSite">Whether a rule may stand on a device or speak of a product.</param>
/// <remarks>What the schema refuses is reported already and read as absent.</remarks>
internal sealed partial class RecordReader(BoxReader boxes, bool ofSite)
{
    /// <summary>The materials of a part; null where none are written.</summary>
    private static MaterialSlot[]? ReadMaterialSlots(RecordFields fields, string key, string? _)
    {
        return (fields.Node(key) as YamlSequence)?.Items.Select(Slot).OfType<MaterialSlot>().ToArray();

        MaterialSlot? Slot(YamlNode item) => item switch
        {
            YamlMapping mapping => new MaterialSlot([.. new RecordFields(mapping, fields.Faults).Ids("one-of", text => new MaterialId(text))]),
            YamlScalar scalar when Compat.Id.IsWellFormed(scalar.Text) => new MaterialSlot(new MaterialId(scalar.Text)),
            _ => null,
        };
    }

    private static IReadOnlyList<OrganismTarget> ReadOrganismTargets(RecordFields fields, string key, string? _) => fields.Ids(
        key,
        text => Words.TryParse<OrganismGroup>(text, out var group) ? OrganismTarget.Of(group) : OrganismTarget.Of(new OrganismId(text)));

    private static Duty[] ReadDutys(RecordFields fields, string key, string? _) => fields.Records(key).Select(DutyReader.Read).OfType<Duty>().ToArray();

    private static SerialRange[] ReadSerialRanges(RecordFields fields, string key, string? _)
    {
        var ranges = new List<SerialRange>();
        foreach (var item in fields.Items(key))
        {
            if (SerialRange.TryParse(item.Text, out var range)) ranges.Add(range);
            else
            {
                fields.Report(item, "serials", $"`{item.Text}` holds no serial number",
                    "write `AB100..AB199` with the lower number first and the same letters, `AB200..`, or one number");
            }
        }

        return [.. ranges];
    }

    private ExposureBox ReadExposureBox(RecordFields fields, string key, string? agent) => boxes.Read(fields, key, agent);

    private ClaimBox ReadClaimBox(RecordFields fields, string key, string? agent) => boxes.ReadClaim(fields, key, agent);

    private AxisLimit ReadClaimPartnerStrength(RecordFields fields, string? agent) => boxes.Strength(fields, agent!);

    private static AxisLimit ReadWordActExposureTime(RecordFields fields, string? _) => BoxReader.ExposureTime(fields);

    /// <summary>A strength is read in the basis of the first agent; that the others have the same is checked with the records.</summary>
    private ExposureBox ReadWordReadingWhen(RecordFields fields, string? _) =>
        boxes.Read(fields, "when", fields.Ids("agents", text => new AgentId(text)).FirstOrDefault()?.Value ?? AgentClass.Root.Value);

    private static int ReadWaterIngressNumeral(RecordFields fields, string? _) => WaterIngress.TryParse(fields.Text("code"), out var numeral) ? numeral : 0;

    private BathUse? ReadProductBathUse(RecordFields fields, string? agent) => ReadBathUse(fields, agent);

    private static IReadOnlyList<PartId> ReadDevicePartOneOfTypes(RecordFields fields, string? _) => fields.Record("type") is { } oneOf
        ? oneOf.Ids("one-of", text => new PartId(text))
        : fields.Id("type", text => new PartId(text)) is { } one ? [one] : [];

    /// <summary>The tests named; also those of one text, which the schema refuses, so that it is said at once which of them are not known.</summary>
    private static TestCode[] ReadLabelClaimShownBy(RecordFields fields, string? _)
    {
        var names = fields.Scalar("shown-by") is { } text ? SchemaWalk.PiecesOf(text.Text) : fields.Items("shown-by").Select(item => item.Text);
        return [.. names.Where(TestCode.IsWellFormed).Select(code => new TestCode(code))];
    }

    private static RuleTarget? ReadRuleTarget(RecordFields fields, string? _)
    {
        if (fields.Id("part", text => new PartId(text)) is { } part) return RuleTarget.On(part);
        if (fields.Id("material", text => new MaterialId(text)) is { } material) return RuleTarget.On(material);
        if (fields.Id("device", text => new DeviceId(text)) is not { } device) return null;
        return fields.Id("device-part", text => new DevicePartId(text)) is { } devicePart ? RuleTarget.On(device, devicePart) : RuleTarget.On(device);
    }

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
            Range = methods || order ? Interval.Whole : Range() ?? Interval.Whole,
            Methods = methods ? MethodSet.Of([.. Listed<ApplicationMethod>()]) : MethodSet.None,
            Consequences = key == ConventionKey.DamageOrder ? Listed<Consequence>() : [],
            Hazards = key == ConventionKey.HazardOrder ? Listed<Hazard>() : [],
            Reason = fields.NeededText("reason"),
        };

        Interval? Range() => key == ConventionKey.UnstatedDilution ? fields.Dilution("value") : fields.Range("value", Measure.Of(key));

        // The schema takes the words of every kind of list, each convention its own.
        IReadOnlyList<TWord> Listed<TWord>() where TWord : struct, Enum
        {
            foreach (var item in fields.Items("value").Where(item => !Words.TryParse<TWord>(item.Text, out _)))
            {
                fields.Report(item, "convention", $"`{item.Text}` is not one of the words for this convention", NearestNames.Help(item.Text, Words.All<TWord>())
                    ?? "known here: " + string.Join(", ", Words.All<TWord>().Select(word => $"`{word}`")));
            }

            return fields.WordList<TWord>("value") ?? [];
        }
    }
}
