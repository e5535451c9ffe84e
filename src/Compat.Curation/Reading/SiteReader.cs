using Compat.Curation.Diagnostics;
using Compat.Curation.Text;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Reads a site: what is at hand there, the levels it decided, its products, devices and rules.</summary>
internal sealed class SiteReader(BoxReader boxes, PlaceBuilder places)
{
    /// <summary>Reads a site file; null where it has no id.</summary>
    public Site? Read(YamlMapping root, DiagnosticList faults)
    {
        var fields = new RecordFields(root, faults);
        var rules = new RuleReader(boxes);
        var sources = places.Read(RecordKind.Source, fields.Records("sources"), BasicReaders.ReadSource, source => source.Id.Value);
        var here = Here(fields);
        var levels = fields.Records("levels").Select(ReadLevel).OfType<LevelDecision>().ToArray();
        var products = places.Read(RecordKind.Product, fields.Records("products"), new ProductReader(boxes).Read, product => product.Id.Value);
        var devices = places.Read(RecordKind.Device, fields.Records("devices"), new DeviceReader(boxes).Read, device => device.Id.Value);
        var siteRules = places.Read(RecordKind.Rule, fields.Records("rules"), one => rules.Read(one, ofSite: true), rule => rule.Id.Value);
        if (fields.Record("site") is not { } head || head.Id("id", text => new SiteId(text)) is not { } id) return null;
        places.Add(RecordKind.Site, id.Value, root, faults.Source);
        return new()
        {
            Id = id,
            Name = head.NeededText("name"),
            Sources = sources,
            Here = here,
            Levels = levels,
            Products = products,
            Devices = devices,
            Rules = siteRules,
        };
    }

    private static SiteConditions Here(RecordFields record) => record.Record("here") is not { } fields ? new() : new()
    {
        Temperature = fields.Range("temperature", Measure.Temperature),
        Hardness = fields.Range("hardness", Measure.Hardness),
        Water = fields.WordList<WaterGrade>("water") ?? [],
        Cloths = fields.Texts("cloths"),
        Gloves = fields.Texts("gloves"),
        DryingAir = fields.Flag("drying-air"),
    };

    private static LevelDecision? ReadLevel(RecordFields fields) =>
        fields.Id("device", text => new DeviceId(text)) is not { } device || fields.Word<Level>("level") is not { } level ? null : new()
        {
            Device = device,
            Part = fields.Id("part", text => new DevicePartId(text)),
            Level = level,
            DecidedBy = fields.NeededText("decided-by"),
            Because = fields.NeededText("because"),
            Sources = fields.Sources(),
        };
}
