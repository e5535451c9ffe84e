using Compat.Curation.Reading;

namespace Compat.Curation.Writing;

/// <summary>Writes the records of a site.</summary>
internal sealed partial class SiteYaml(AgentBases bases)
{
    /// <summary>What is at hand, as a block of its own; empty where nothing is stated.</summary>
    public static string Here(SiteConditions one)
    {
        (string Key, string? Value)[] entries =
        [
            ("temperature", ExposureYaml.Range(one.Temperature, "°C")),
            ("hardness", ExposureYaml.Range(one.Hardness, "mg/L CaCO3")),
            ("water", WordsOrNone(one.Water.Select(Words.Of))),
            ("cloths", WordsOrNone(one.Cloths)),
            ("gloves", WordsOrNone(one.Gloves)),
            ("drying-air", one.DryingAir switch { true => "true", false => "false", _ => null }),
        ];
        var text = RecordText.Inline(entries);
        return text == "{}" ? "" : "here: " + text + "\n";
    }

    public static void LevelDecision(RecordText to, LevelDecision one) => to
        .Field("device", one.Device.Value).Field("part", one.Part?.Value).Field("level", Words.Of(one.Level))
        .Field("decided-by", one.DecidedBy).Field("because", one.Because).List("sources", KnowledgeYaml.Ids(one.Sources));

    public void Product(RecordText to, Product one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).Field("composition", Words.Of(one.Composition))
        .Field("composition-dated", one.CompositionDated?.ToString()).Field("strength-of", Words.Of(one.StrengthOf))
        .Raw("liquid-share", ExposureYaml.Figure(one.LiquidShare * 100, "%"))
        .Lines("ingredients", one.Ingredients.Select(IngredientText))
        .Raw("density", ExposureYaml.Figure(one.Density, "kg/L"))
        .Lines("ph", one.Ph.Select(ph => RecordText.Inline([("value", ExposureYaml.Range(ph.Value, "")), ("of", Words.Of(ph.Of))])))
        .Raw("dilution", ExposureYaml.Range(one.Dilution, "% v/v", 100)).Raw("temperature", ExposureYaml.Range(one.Temperature, "°C"))
        .Flag("needs-activation", one.NeedsActivation)
        .List("methods", one.Methods.Methods.Select(Words.Of)).Records("label-claims", one.LabelClaims, LabelClaim)
        .Lines("contact-times", one.ContactTimes.Select(wet => RecordText.Inline([("method", Words.Of(wet.Method)), ("time", ExposureYaml.Range(wet.Time, "s"))])))
        .List("removes", one.Removes.Select(Words.Of)).Flag("one-step", one.OneStep).Braces("life", Life(one.Life)).Braces("bath", Bath(one.Bath))
        .Raw("most-hardness", ExposureYaml.Figure(one.MostHardness, "mg/L CaCO3")).List("bound-by-cloths", one.BoundByCloths)
        .Field("note", one.Note);

    private static string IngredientText(Ingredient one) => RecordText.Inline(
    [
        ("agent", one.Agent?.Value),
        ("unknown", one.Unknown is null ? null : RecordText.Quoted(one.Unknown)),
        ("strength", one.Strength is { } strength ? RecordText.Quoted(strength.ToString()) : null),
    ]);

    private static void LabelClaim(RecordText to, LabelClaim one) => to
        .Field("id", one.Id.Value).Braces("when", ExposureYaml.Box(one.When, null)).Field("reaches", KnowledgeYaml.Word(one.Reaches))
        .List("kills", one.Kills.Select(target => target.ToString())).List("for", KnowledgeYaml.Ids(one.For))
        .List("does-not-kill", one.DoesNotKill.Select(target => target.ToString())).List("needs", one.Needs.Select(Words.Of))
        .List("stands-soil", one.StandsSoil.Select(Words.Of)).List("shown-by", one.ShownBy.Select(code => code.Value))
        .Braces("registration", one.Registration is not { } registration ? [] : [("authority", RecordText.Quoted(registration.Authority)), ("number", RecordText.Quoted(registration.Number))]);

    private static (string, string?)[] Life(ProductLife one) =>
    [
        ("activated", ExposureYaml.Figure(one.Activated, "s")),
        ("diluted", ExposureYaml.Figure(one.Diluted, "s")),
        ("opened", ExposureYaml.Figure(one.Opened, "s")),
        ("may-be-refilled", one.MayBeRefilled ? "true" : null),
    ];

    private (string, string?)[] Bath(ProductBath? one) => one is null ? [] :
    [
        ("agent", one.Agent.Value),
        ("minimum", ExposureYaml.Range(one.Use.Minimum, ExposureYaml.PercentOf(bases.Of(one.Agent.Value)))),
        ("reuse", ExposureYaml.Figure(one.Use.Reuse, "s")),
        ("test", one.Use.Test is { } test ? RecordText.Quoted(test) : null),
    ];

    private static string? WordsOrNone(IEnumerable<string> words) => words.Any() ? RecordText.Words(words) : null;
}
