using Compat.Curation.Diagnostics;
using Compat.Curation.Text;
using Compat.Curation.Yaml;
using Compat.Exposures;
using Compat.Knowledge;
using Compat.Sites;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Reads a site: its products, devices and rules.</summary>
internal sealed class SiteReader(RuleReader rules, PlaceBuilder places)
{
    /// <summary>Reads a site file; null where it has no id.</summary>
    public Site? Read(YamlMapping root, DiagnosticList faults)
    {
        var fields = new RecordFields(root, faults);
        var sources = places.Read(RecordKind.Source, fields.Records("sources"), BasicReaders.ReadSource, source => source.Id.Value);
        var products = places.Read(RecordKind.Product, fields.Records("products"), ReadProduct, product => product.Id.Value);
        var devices = places.Read(RecordKind.Device, fields.Records("devices"), ReadDevice, device => device.Id.Value);
        var siteRules = places.Read(RecordKind.Rule, fields.Records("rules"), one => rules.Read(one, ofSite: true), rule => rule.Id.Value);
        if (fields.Record("site") is not { } head || head.Id("id", text => new SiteId(text)) is not { } id) return null;
        places.Add(RecordKind.Site, id.Value, root, faults.Source);
        return new()
        {
            Id = id,
            Name = head.NeededText("name"),
            Sources = sources,
            Products = products,
            Devices = devices,
            Rules = siteRules,
        };
    }

    private static Product? ReadProduct(RecordFields fields)
    {
        if (fields.Id("id", text => new ProductId(text)) is not { } id) return null;
        return new()
        {
            Id = id,
            Name = fields.NeededText("name"),
            Composition = fields.Word<Composition>("composition") ?? Composition.Partial,
            CompositionDated = fields.Date("composition-dated"),
            StrengthOf = fields.Word<StrengthOf>("strength-of") ?? StrengthOf.Liquid,
            LiquidShare = fields.MeasuredFigure("liquid-share", Measure.Share),
            Ingredients = fields.Records("ingredients").Select(ReadIngredient).OfType<Ingredient>().ToArray(),
            Density = fields.MeasuredFigure("density", Measure.Density),
            Ph = fields.Records("ph").Select(ReadPh).OfType<MeasuredPh>().ToArray(),
            Dilution = fields.Dilution("dilution"),
            Temperature = fields.Range("temperature", Measure.Temperature),
            NeedsActivation = fields.Yes("needs-activation"),
            Note = fields.Text("note"),
        };
    }

    private static Ingredient? ReadIngredient(RecordFields fields)
    {
        var key = fields.ExactlyOne("an ingredient", "agent", "unknown");
        Strength? strength = null;
        if (fields.Scalar("strength") is { } scalar)
        {
            if (StrengthText.TryRead(scalar.Text, true, out var read) is { } fault) fields.Report(scalar, fault);
            else strength = read;
        }

        if (key is null) return null;
        var agent = key == "agent" ? fields.Id("agent", text => new AgentId(text)) : null;
        return new() { Agent = agent, Unknown = agent is null ? fields.Text("unknown") ?? "?" : null, Strength = strength };
    }

    private static MeasuredPh? ReadPh(RecordFields fields) =>
        fields.Range("value", Measure.Ph) is { } value && fields.Word<PhState>("of") is { } state ? new(value, state) : null;

    private static Device? ReadDevice(RecordFields fields)
    {
        if (fields.Id("id", text => new DeviceId(text)) is not { } id) return null;
        return new()
        {
            Id = id,
            Name = fields.NeededText("name"),
            Parts = fields.Records("parts").Select(ReadDevicePart).OfType<DevicePart>().ToArray(),
            Instructions = fields.Records("instructions").Select(ReadEdition).OfType<InstructionsEdition>().ToArray(),
            Note = fields.Text("note"),
        };
    }

    private static DevicePart? ReadDevicePart(RecordFields fields)
    {
        if (fields.Has("wettest-from") && !fields.Has("wettest"))
            fields.ReportKey("wettest-from", "device-part", "`wettest-from` needs `wettest` beside it");
        var types = fields.Record("type") is { } oneOf
            ? oneOf.Ids("one-of", text => new PartId(text))
            : fields.Id("type", text => new PartId(text)) is { } one ? [one] : [];
        if (fields.Id("id", text => new DevicePartId(text)) is not { } id || types.Count == 0) return null;
        return new()
        {
            Id = id,
            Name = fields.Text("name"),
            OneOfTypes = types,
            Materials = BasicReaders.Materials(fields),
            MaterialsKnown = BasicReaders.MaterialsKnown(fields),
            Wettest = fields.Word<ApplicationMethod>("wettest"),
            WettestFrom = fields.Id("wettest-from", text => new EditionId(text)),
            Geometry = fields.Word<Geometry>("geometry"),
            TouchedBy = fields.Word<TouchedBy>("touched-by"),
        };
    }

    private static InstructionsEdition? ReadEdition(RecordFields fields)
    {
        if (fields.Id("id", text => new EditionId(text)) is not { } id) return null;
        return new()
        {
            Id = id,
            Dated = fields.Date("dated"),
            Serials = Serials(fields),
            Replaces = fields.Ids("replaces", text => new EditionId(text)),
            OnlyListed = fields.Text("agents") == "only-listed",
            Source = fields.Id("source", text => new SourceId(text)),
        };
    }

    private static SerialRange[] Serials(RecordFields fields)
    {
        var ranges = new List<SerialRange>();
        foreach (var item in fields.Items("serials"))
        {
            if (SerialRange.TryParse(item.Text, out var range)) ranges.Add(range);
            else fields.Report(item, "serials", $"`{item.Text}` holds no serial number", "write `AB100..AB199` with the lower number first and the same letters, `AB200..`, or one number");
        }

        return [.. ranges];
    }
}
