using Compat.Curation.Schemas;
using Compat.Curation.Text;

namespace Compat.Curation.Reading;

/// <summary>Reads products, with what their labels claim.</summary>
internal sealed class ProductReader(BoxReader boxes)
{
    /// <summary>Reads a product; null where its id cannot be read.</summary>
    public Product? Read(RecordFields fields)
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
            Methods = MethodSet.Of([.. fields.WordList<ApplicationMethod>("methods") ?? []]),
            LabelClaims = fields.Records("label-claims").Select(ReadClaim).OfType<LabelClaim>().ToArray(),
            ContactTimes = fields.Records("contact-times").Select(ReadContactTime).OfType<AchievedContactTime>().ToArray(),
            Removes = fields.WordList<SoilKind>("removes") ?? [],
            OneStep = fields.Yes("one-step"),
            Life = Life(fields),
            Bath = Bath(fields),
            MostHardness = fields.MeasuredFigure("most-hardness", Measure.Hardness),
            BoundByCloths = fields.Texts("bound-by-cloths"),
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

    private LabelClaim? ReadClaim(RecordFields fields)
    {
        if (!fields.Has("reaches") && !fields.Has("kills"))
            fields.ReportRecord("claim", "a claim names the level it `reaches`, what it `kills`, or both");
        return fields.Id("id", text => new LabelClaimId(text)) is not { } id ? null : new()
        {
            Id = id,
            When = boxes.ReadSiteClaim(fields, agent: null),
            Reaches = fields.Word<Level>("reaches"),
            Kills = LevelReaders.Targets(fields, "kills"),
            DoesNotKill = LevelReaders.Targets(fields, "does-not-kill"),
            For = fields.Ids("for", text => new PartId(text)),
            Needs = fields.WordList<ClaimNeed>("needs") ?? [],
            StandsSoil = fields.WordList<SoilKind>("stands-soil") ?? [],
            ShownBy = Tests(fields),
            Registration = fields.Record("registration") is { } registration ? new(registration.NeededText("authority"), registration.NeededText("number")) : null,
        };
    }

    /// <summary>The tests named; also those of one text, which the schema refuses, so that it is said at once which of them are not known.</summary>
    private static TestCode[] Tests(RecordFields fields) =>
        [.. (fields.Scalar("shown-by") is { } text ? SchemaWalk.PiecesOf(text.Text) : fields.Items("shown-by").Select(item => item.Text)).Where(TestCode.IsWellFormed).Select(code => new TestCode(code))];

    private static AchievedContactTime? ReadContactTime(RecordFields fields) =>
        fields.Range("time", Measure.ContactTime) is { } time && fields.Word<ApplicationMethod>("method") is { } method ? new(method, time) : null;

    private static ProductLife Life(RecordFields record) => record.Record("life") is not { } fields ? new() : new()
    {
        Activated = fields.MeasuredFigure("activated", Measure.Life),
        Diluted = fields.MeasuredFigure("diluted", Measure.Life),
        Opened = fields.MeasuredFigure("opened", Measure.Life),
        MayBeRefilled = fields.Yes("may-be-refilled"),
    };

    private ProductBath? Bath(RecordFields record)
    {
        if (record.Record("bath") is not { } fields || fields.Id("agent", text => new AgentId(text)) is not { } agent) return null;
        return new() { Agent = agent, Use = ClaimReader.BathUse(boxes, fields, agent.Value) };
    }
}
