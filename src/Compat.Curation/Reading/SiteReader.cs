using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Reads a site: what is at hand there, the levels it decided, its products, devices and rules.</summary>
internal sealed class SiteReader(RecordReader reader, PlaceBuilder places)
{
    /// <summary>Reads a site file; null where it has no id.</summary>
    public Site? Read(YamlMapping root, DiagnosticList faults)
    {
        var fields = new RecordFields(root, faults);
        var sources = places.Read(RecordKind.Source, fields.Records("sources"), one => reader.ReadSource(one), source => source.Id.Value);
        var here = fields.Record("here") is { } conditions ? reader.ReadSiteConditions(conditions) : null;
        var levels = fields.Records("levels").Select(one => reader.ReadLevelDecision(one)).OfType<LevelDecision>().ToArray();
        var products = places.Read(RecordKind.Product, fields.Records("products"), one => reader.ReadProduct(one), product => product.Id.Value);
        var devices = places.Read(RecordKind.Device, fields.Records("devices"), one => reader.ReadDevice(one), device => device.Id.Value);
        var siteRules = places.Read(RecordKind.Rule, fields.Records("rules"), one => reader.ReadRule(one), rule => rule.Id.Value);
        if (fields.Record("site") is not { } head || head.Id("id", text => new SiteId(text)) is not { } id) return null;
        places.Add(RecordKind.Site, id.Value, root, faults.Source);
        return new()
        {
            Id = id,
            Name = head.NeededText("name"),
            Sources = sources,
            Here = here ?? new(),
            Levels = levels,
            Products = products,
            Devices = devices,
            Rules = siteRules,
        };
    }
}
