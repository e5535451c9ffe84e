using System.Text.Json;

namespace Compat.Cli.Json;

/// <summary>Writes a recipe as <c>schemas/dilution.schema.json</c> describes.</summary>
internal sealed class DilutionJson(Utf8JsonWriter json)
{
    /// <summary>A dilution to a strength.</summary>
    public void Write(DilutionRecipe recipe)
    {
        var question = recipe.Question;
        json.WriteStartObject();
        json.WriteString("agent", question.Agent.Value);
        Strength("stock", question.Stock);
        Strength("wanted", question.Wanted);
        Strength("reached", recipe.Reached);
        if (question.Litres is { } litres) json.WriteNumber("litres", litres);
        if (question.Kilograms is { } kilograms) json.WriteNumber("kilograms", kilograms);
        json.WriteBoolean("powder", question.IsPowder);
        if (question.StockDensity is { } density) json.WriteNumber("stockDensity", density);
        json.WriteNumber("temperature", question.Temperature);
        if (recipe.StockLitres is { } stock) json.WriteInterval("stockLitres", stock, "L");
        if (recipe.StockGrams is { } grams) json.WriteInterval("stockGrams", grams, "g");
        if (recipe.WaterLitres is { } water) json.WriteNumber("waterLitres", water);
        if (recipe.WaterGrams is { } waterGrams) json.WriteNumber("waterGrams", waterGrams);
        json.WriteNumber("contractionLitres", recipe.ContractionLitres);
        End(recipe.Identity);
    }

    /// <summary>A dilution by the label.</summary>
    public void Write(LabelDilution dilution)
    {
        json.WriteStartObject();
        json.WriteString("product", dilution.Product.Value);
        json.WriteNumber("litres", dilution.Litres);
        json.WriteInterval("stockLitres", dilution.StockLitres, "L");
        json.WriteList("ingredients", dilution.Reached, pair =>
        {
            json.WriteStartObject();
            json.WriteString("agent", pair.Agent.Value);
            Strength("reached", pair.Strength);
            json.WriteEndObject();
        });
        End(dilution.Identity);
    }

    private void Strength(string name, Strength strength) => json.WriteInterval(name, strength.Range, strength.Unit.Text);

    private void End(IReadOnlyList<DataIdentity> identity)
    {
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(identity);
        json.WriteEndObject();
    }
}
