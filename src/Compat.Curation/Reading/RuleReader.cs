namespace Compat.Curation.Reading;

/// <summary>Reads rules.</summary>
internal sealed class RuleReader(BoxReader boxes)
{
    public static readonly CalendarDate NoDate = new(1, 1, 1);

    /// <summary>Reads a rule; null where its id, its target or its agent cannot be read.</summary>
    /// <param name="fields">The record.</param>
    /// <param name="ofSite">Whether it may stand on a device or speak of a product.</param>
    public Rule? Read(RecordFields fields, bool ofSite)
    {
        var id = fields.Id("id", text => new RuleId(text));
        var target = Target(fields, ofSite);
        var agentKey = ofSite ? fields.ExactlyOne("a rule", "agent", "product") : "agent";
        var agent = agentKey == "agent" ? fields.Id("agent", text => new AgentId(text)) : null;
        var product = agentKey == "product" ? fields.Id("product", text => new ProductId(text)) : null;
        var verdict = fields.Text("verdict");
        var allows = verdict == "allowed";
        if (allows) CheckAllowed(fields);
        else if (verdict == "not-allowed" && !fields.Has("damage"))
            fields.ReportKey("verdict", "rule", "`damage` is missing: a rule that does not allow says what it prevents");
        if (ofSite) CheckSiteKeys(fields);
        var when = boxes.Read(fields, "when", agent?.Value);
        var duties = DutyReader.Read(fields);
        var tested = Tested(fields, agent?.Value);
        var reviewed = fields.Date("reviewed");
        if (id is null || target is null || (agent is null && product is null)) return null;
        return new()
        {
            Id = id,
            Target = target,
            Agent = agent,
            Product = product,
            CompositionDated = fields.Date("composition-dated"),
            When = when,
            Allows = allows,
            SeenWith = fields.Ids("seen-with", text => new AgentId(text)),
            WholeClass = fields.Yes("whole-class"),
            Overrides = fields.Ids("overrides", text => new RuleId(text)),
            Damage = DamageOf(fields),
            CountsTowards = fields.Word<Mechanism>("counts-towards"),
            Duties = duties,
            Why = fields.NeededText("why"),
            KnownBy = fields.Word<KnownBy>("known-by"),
            Tested = tested,
            RestsOn = fields.WordList<ThinGround>("rests-on") ?? [],
            IsSecondSource = fields.Text("keep") == "second-source",
            Edition = fields.Id("edition", text => new EditionId(text)),
            Sources = fields.Sources(),
            Reviewed = reviewed ?? NoDate,
        };
    }

    private static RuleTarget? Target(RecordFields fields, bool ofSite)
    {
        var key = ofSite ? fields.ExactlyOne("a rule", "part", "material", "device") : fields.ExactlyOne("a rule", "part", "material");
        switch (key)
        {
            case "part":
                return fields.Id("part", text => new PartId(text)) is { } part ? RuleTarget.On(part) : null;
            case "material":
                return fields.Id("material", text => new MaterialId(text)) is { } material ? RuleTarget.On(material) : null;
            case "device":
                if (fields.Id("device", text => new DeviceId(text)) is not { } device) return null;
                return fields.Id("device-part", text => new DevicePartId(text)) is { } devicePart ? RuleTarget.On(device, devicePart) : RuleTarget.On(device);
            default:
                return null;
        }
    }

    private static void CheckAllowed(RecordFields fields)
    {
        if (!fields.Has("when"))
            fields.ReportKey("verdict", "rule", "`when` is missing: a rule that allows names every axis", "write `any` or `unstated` where that is what the source says");
        else if (!fields.Has("known-by"))
            fields.ReportKey("verdict", "rule", "`known-by` is missing: a rule that allows says how it is known", "write `test`, `instructions`, `published` or `practice`");
        if (fields.Has("seen-with") && fields.Has("whole-class"))
            fields.ReportKey("whole-class", "rule", "`seen-with` and `whole-class` exclude each other", "write one of the two");
    }

    private static void CheckSiteKeys(RecordFields fields)
    {
        foreach (var (key, with) in new[] { ("device-part", "device"), ("edition", "device"), ("composition-dated", "product") })
            if (fields.Has(key) && !fields.Has(with)) fields.ReportKey(key, "rule", $"`{key}` needs `{with}` beside it");
    }

    private TestEvidence? Tested(RecordFields record, string? agent) => record.Record("tested") is not { } fields ? null : new()
    {
        On = fields.Word<TestPiece>("on") ?? TestPiece.Coupon,
        Strained = fields.Yes("strained"),
        Exposure = boxes.Read(fields, "exposure", agent),
    };

    private static Damage? DamageOf(RecordFields record) => record.Record("damage") is not { } fields ? null : new()
    {
        Mechanism = fields.Word<Mechanism>("mechanism") ?? default,
        Onset = fields.Word<Onset>("onset") ?? default,
        Lasting = fields.Yes("lasting"),
        Consequence = fields.Word<Consequence>("consequence") ?? default,
        LookFor = fields.Text("look-for"),
        WithdrawIf = fields.Text("withdraw-if"),
    };
}
