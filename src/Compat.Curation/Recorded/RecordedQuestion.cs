using Compat.Curation.Reading;
using Compat.Curation.Yaml;

namespace Compat.Curation.Recorded;

/// <summary>Reads a question as the outputs of the command write it.</summary>
internal static class RecordedQuestion
{
    /// <summary>The question; what is wrong with it is reported.</summary>
    public static Question Read(RecordFields fields) => new()
    {
        Part = fields.Id("part", text => new PartId(text)),
        Materials = Materials(fields),
        MaterialsKnown = fields.Text("materialsKnown") switch { "fully" => true, "partly" => false, _ => null },
        Device = fields.Id("device", text => new DeviceId(text)),
        DevicePart = fields.Id("devicePart", text => new DevicePartId(text)),
        Serial = Serial(fields),
        Agent = fields.Id("agent", text => new AgentId(text)),
        Product = fields.Id("product", text => new ProductId(text)),
        Strength = RecordedRange.ReadStrength(fields, "strength"),
        Dilution = RecordedRange.Read(fields, "dilution", Axis.Dilution),
        Method = fields.Word<ApplicationMethod>("method"),
        ExposureTime = RecordedRange.Read(fields, "exposureTime", Axis.ExposureTime),
        Temperature = RecordedRange.Read(fields, "temperature", Axis.Temperature),
        Ph = RecordedRange.Read(fields, "ph", Axis.Ph),
        Uses = fields.Number("uses"),
        Acts = fields.WordList<Act>("acts") ?? [],
        OnlyPart = fields.Yes("onlyPart"),
        TouchedBy = fields.Word<TouchedBy>("touchedBy"),
        Patients = fields.WordList<PatientGroup>("patients") ?? [],
        Occupied = fields.Yes("occupied"),
        Soil = fields.WordList<SoilKind>("soil"),
        Level = fields.Word<Level>("level"),
        Against = Against(fields),
        Cloth = fields.Text("cloth"),
    };

    /// <summary>A serial number, or null; a text that is none is reported.</summary>
    public static SerialNumber? Serial(RecordFields fields)
    {
        if (fields.Scalar("serial") is not { } scalar) return null;
        if (SerialNumber.TryParse(scalar.Text, out var serial)) return serial;
        fields.Report(scalar, "serial", $"`{scalar.Text}` is no serial number", "letters, then a whole number: `AB1200`");
        return null;
    }

    private static MaterialSlot[] Materials(RecordFields fields) => ((fields.Node("materials") as YamlSequence)?.Items ?? [])
        .OfType<YamlSequence>()
            .Select(slot =>
                new MaterialSlot(
                    slot.Items.OfType<YamlScalar>().Where(item => Compat.Id.IsWellFormed(item.Text)).Select(item => new MaterialId(item.Text)).ToArray()))
                    .ToArray();

    private static OrganismTarget[] Against(RecordFields fields)
    {
        var targets = new List<OrganismTarget>();
        foreach (var item in fields.Items("against"))
        {
            if (Words.TryParse<OrganismGroup>(item.Text, out var group)) targets.Add(OrganismTarget.Of(group));
            else if (Compat.Id.IsWellFormed(item.Text)) targets.Add(OrganismTarget.Of(new OrganismId(item.Text)));
            else fields.Report(item, "organism", $"`{item.Text}` is no organism and no group");
        }

        return targets.ToArray();
    }
}
