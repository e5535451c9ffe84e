namespace Compat.Curation.Reading;

/// <summary>Reads organisms, what levels include, tests, what contacts ask and occasions.</summary>
internal static class LevelReaders
{
    /// <summary>Reads an organism; null where its id cannot be read.</summary>
    public static Organism? ReadOrganism(RecordFields fields) => fields.Id("id", text => new OrganismId(text)) is not { } id ? null : new()
    {
        Id = id,
        Name = fields.NeededText("name"),
        AlsoCalled = fields.Texts("also-called"),
        Group = fields.Word<OrganismGroup>("group") ?? OrganismGroup.Prions,
        OwnClaim = fields.Yes("own-claim"),
        Sources = fields.Sources(),
        Note = fields.Text("note"),
    };

    /// <summary>Reads what a level includes; null where it is none.</summary>
    public static LevelMeaning? ReadLevel(RecordFields fields) => fields.Word<Level>("id") is not { } level ? null : new()
    {
        Level = level,
        Includes = fields.WordList<OrganismGroup>("includes") ?? [],
        Sources = fields.Sources(),
        Note = fields.Text("note"),
    };

    /// <summary>Reads a test; null where its code cannot be read.</summary>
    public static TestStandard? ReadTest(RecordFields fields) => !TestCode.TryParse(fields.Text("code"), out var code) ? null : new()
    {
        Code = code,
        Name = fields.NeededText("name"),
        Field = fields.Word<TestField>("field") ?? TestField.Development,
        Step = fields.Word<TestStep>("step") ?? TestStep.Basic,
        On = fields.WordList<TestedOn>("on") ?? [],
        Wiping = fields.Yes("wiping"),
        Shows = Targets(fields, "shows"),
        Sources = fields.Sources(),
        Note = fields.Text("note"),
    };

    /// <summary>Reads what a contact asks; null where its id cannot be read.</summary>
    public static NeedRule? ReadNeed(RecordFields fields)
    {
        fields.ExactlyOne("a need", "level", "dry");
        return fields.Id("id", text => new NeedRuleId(text)) is not { } id ? null : new()
        {
            Id = id,
            TouchedBy = fields.WordList<TouchedBy>("touched-by") ?? [],
            Soil = fields.WordList<SoilKind>("soil") ?? [],
            Level = fields.Word<Level>("level"),
            CleanFirst = fields.Yes("clean-first"),
            Sources = fields.Sources(),
            Note = fields.Text("note"),
        };
    }

    /// <summary>Reads an occasion; null where its id cannot be read.</summary>
    public static Occasion? ReadOccasion(RecordFields fields) => fields.Id("id", text => new OccasionId(text)) is not { } id ? null : new()
    {
        Id = id,
        Name = fields.NeededText("name"),
        Parts = fields.WordList<TouchedBy>("parts") ?? [],
        AtLeast = fields.Word<Level>("at-least"),
        NeedsAgainst = fields.Yes("needs-against"),
        Hold = fields.Yes("hold"),
        Adds = fields.Texts("adds"),
        Papers = fields.WordList<Paper>("papers") ?? [],
        Sources = fields.Sources(),
        Note = fields.Text("note"),
    };

    /// <summary>Reads a list of groups and organisms.</summary>
    public static IReadOnlyList<OrganismTarget> Targets(RecordFields fields, string key) => fields.Ids(
        key,
        text => Words.TryParse<OrganismGroup>(text, out var group) ? OrganismTarget.Of(group) : OrganismTarget.Of(new OrganismId(text)));
}
