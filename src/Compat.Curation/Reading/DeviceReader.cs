namespace Compat.Curation.Reading;

/// <summary>Reads devices, with their instructions.</summary>
internal sealed class DeviceReader(BoxReader boxes)
{
    /// <summary>Reads a device; null where its id cannot be read.</summary>
    public Device? Read(RecordFields fields)
    {
        if (fields.Id("id", text => new DeviceId(text)) is not { } id) return null;
        return new()
        {
            Id = id,
            Name = fields.NeededText("name"),
            Parts = fields.Records("parts").Select(ReadPart).OfType<DevicePart>().ToArray(),
            Patients = fields.WordList<PatientGroup>("patients"),
            Instructions = fields.Records("instructions").Select(ReadEdition).OfType<InstructionsEdition>().ToArray(),
            Note = fields.Text("note"),
        };
    }

    private static DevicePart? ReadPart(RecordFields fields)
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
            Because = fields.Text("because"),
            Soil = fields.WordList<SoilKind>("soil"),
            WhenDismantled = Dismantled(fields),
        };
    }

    private static DismantledPart? Dismantled(RecordFields record) =>
        record.Record("when-dismantled") is not { } fields || fields.Word<Geometry>("geometry") is not { } geometry ? null : new()
        {
            Geometry = geometry,
            Wettest = fields.Word<ApplicationMethod>("wettest"),
            From = fields.Id("from", text => new EditionId(text)),
            How = fields.NeededText("how"),
        };

    private InstructionsEdition? ReadEdition(RecordFields fields)
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
            Says = fields.Records("says").Select(ReadPhrase).ToArray(),
            Reaches = fields.Records("reaches").Select(ReadReached).OfType<InstructedLevel>().ToArray(),
        };
    }

    private static InstructionPhrase ReadPhrase(RecordFields fields) => new()
    {
        Words = fields.NeededText("words"),
        Forbids = fields.Yes("forbids"),
        How = fields.Texts("how"),
        Parts = fields.Ids("parts", text => new DevicePartId(text)),
    };

    private InstructedLevel? ReadReached(RecordFields fields)
    {
        var key = fields.ExactlyOne("a level that is reached", "agent", "product");
        if (!fields.Has("level") && !fields.Has("kills"))
            fields.ReportRecord("claim", "what is reached names its `level`, what it `kills`, or both");
        var agent = key == "agent" ? fields.Id("agent", text => new AgentId(text)) : null;
        var product = key == "product" ? fields.Id("product", text => new ProductId(text)) : null;
        if (agent is null && product is null) return null;
        return new()
        {
            Parts = fields.Ids("parts", text => new DevicePartId(text)),
            Agent = agent,
            Product = product,
            When = boxes.ReadSiteClaim(fields, agent?.Value),
            Reaches = fields.Word<Level>("level"),
            Kills = LevelReaders.Targets(fields, "kills"),
            Needs = fields.WordList<ClaimNeed>("needs") ?? [],
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
