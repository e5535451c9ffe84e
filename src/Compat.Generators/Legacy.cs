namespace Compat.Generators;

/// <summary>The order and the coding of format 6 where they differ from the order of declaration.</summary>
internal static class Legacy
{
    private static readonly Dictionary<string, string> Orders = new()
    {
        ["Material"] = "Id Under",
        ["PartType"] = "Id Under Name AlsoCalled Materials MaterialsKnown Wettest Never Geometry TouchedBy Patients Duties Sources Note",
        ["AgentClass"] = "Id Under",
        ["Rule"] = "Id Target Agent Product CompositionDated Allows When SeenWith WholeClass Overrides Damage CountsTowards Duties Why KnownBy Tested "
            + "Edition Sources Reviewed IsSecondSource",
        ["StandingRule"] = "Id Part Material Agent When AlwaysWith Reason Sources",
        ["Protection"] = "Id Agent When Gloves GlovesFail Eyes Breathing Ventilation Fire Oxygen Energised Disposal FirstAid NotFor FlashPoint",
    };

    private static readonly HashSet<string> Coded =
    [
        "Delicacy", "ApplicationMethod", "Act", "Geometry", "TouchedBy", "DutyKind", "WaterGrade", "SourceKind", "Trust", "Mechanism", "Onset",
        "Consequence", "KnownBy", "TestPiece", "Residue", "Nature", "Hazard", "Composition", "StrengthOf", "PhState", "ConventionKey", "AxisStatement",
    ];

    public static IEnumerable<FieldModel> Order(RecordModel record)
    {
        var first = Orders.TryGetValue(record.Name, out var names) ? names.Split(' ').ToList() : [];
        return record.Fields.OrderBy(field => first.IndexOf(field.Name) is >= 0 and var at ? at : 1000);
    }

    public static bool IsCoded(FieldModel field, RecordModel record) =>
        Coded.Contains(field.Item.Name) && !(field.IsList && record.Name is "NeedRule" or "Occasion" or "Convention" or "SiteConditions");
}
