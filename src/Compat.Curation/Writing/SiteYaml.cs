using System.Globalization;
using Compat.Exposures;
using Compat.Sites;

namespace Compat.Curation.Writing;

/// <summary>Writes the records of a site.</summary>
internal static class SiteYaml
{
    public static void Product(RecordText to, Product one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).Field("composition", Words.Of(one.Composition))
        .Field("composition-dated", one.CompositionDated?.ToString()).Field("strength-of", Words.Of(one.StrengthOf))
        .Raw("liquid-share", ExposureYaml.Figure(one.LiquidShare * 100, "%"))
        .Lines("ingredients", one.Ingredients.Select(IngredientText))
        .Raw("density", ExposureYaml.Figure(one.Density, "kg/L"))
        .Lines("ph", one.Ph.Select(ph => RecordText.Inline([("value", ExposureYaml.Range(ph.Value, "")), ("of", Words.Of(ph.Of))])))
        .Raw("dilution", ExposureYaml.Range(one.Dilution, "% v/v", 100)).Raw("temperature", ExposureYaml.Range(one.Temperature, "°C"))
        .Flag("needs-activation", one.NeedsActivation).Field("note", one.Note);

    public static void Device(RecordText to, Device one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).Records("parts", one.Parts, Part).Records("instructions", one.Instructions, Edition).Field("note", one.Note);

    private static string IngredientText(Ingredient one) => RecordText.Inline(
    [
        ("agent", one.Agent?.Value),
        ("unknown", one.Unknown is null ? null : RecordText.Quoted(one.Unknown)),
        ("strength", one.Strength is { } strength ? RecordText.Quoted(strength.ToString()) : null),
    ]);

    private static void Part(RecordText to, DevicePart one)
    {
        to.Field("id", one.Id.Value).Field("name", one.Name).Raw("type", one.OneOfTypes.Count == 1
            ? one.OneOfTypes[0].Value
            : "{ one-of: " + RecordText.Words(KnowledgeYaml.Ids(one.OneOfTypes)) + " }");
        KnowledgeYaml.Materials(to, one.Materials, one.MaterialsKnown);
        to.Field("wettest", KnowledgeYaml.Word(one.Wettest)).Field("wettest-from", one.WettestFrom?.Value)
            .Field("geometry", KnowledgeYaml.Word(one.Geometry)).Field("touched-by", KnowledgeYaml.Word(one.TouchedBy));
    }

    private static void Edition(RecordText to, InstructionsEdition one) => to
        .Field("id", one.Id.Value).Field("dated", one.Dated?.ToString())
        .List("serials", one.Serials.Select(Serials)).List("replaces", KnowledgeYaml.Ids(one.Replaces))
        .Field("agents", one.OnlyListed ? "only-listed" : null).Field("source", one.Source?.Value);

    private static string Serials(SerialRange range) =>
        range.First == range.Last && range.Prefix.Length == 0 ? range.First.ToString(CultureInfo.InvariantCulture) + ".." + range.Last.ToString(CultureInfo.InvariantCulture) : range.ToString();
}
