namespace Compat.Cli.Say;

/// <summary>Writes a recipe for people.</summary>
internal sealed class DilutionText(Page page, Names names)
{
    public void Write(DilutionRecipe recipe)
    {
        var question = recipe.Question;
        page.Line(Take(recipe), 0, 2);
        if (recipe.ContractionLitres > 0m)
            page.Line($"The mixture is {Litres(recipe.ContractionLitres)} less than its two volumes: the water to add is not the difference of volumes. "
                + $"Volumes hold at {FigureWording.Number(question.Temperature)}\u00a0°C.");
        if (recipe is { WaterLitres: { } water, StockLitres.Lower: > 0m and var stock, WaterGrams: null })
            page.Line($"That is 1 part of stock and {Four(water / stock)} parts of water.");
        page.Blank();
        page.Line($"Agent: {names.Agent(question.Agent.Value)}", 0, 2);
        var density = question.StockDensity is { } stated ? $", {FigureWording.Number(stated)}\u00a0kg/L" : "";
        page.Line($"Stock: {Strength(question.Stock)}{density}{(question.IsPowder ? ", by mass of the powder" : "")}", 0, 2);
        page.Line($"Wanted: {Strength(question.Wanted)}", 0, 2);
        page.Line($"Reached: {Strength(recipe.Reached)}{(recipe.Reached.Range.IsPoint ? "" : ", for the stock's strength is only known as a range")}", 0, 2);
        End(recipe.Identity);
    }

    public void Write(LabelDilution dilution)
    {
        page.Line($"Take {Range(dilution.StockLitres, Litres)} of {names.Product(dilution.Product.Value)} and make up to {Litres(dilution.Litres)} with "
            + "water, as its label says.", 0, 2);
        page.Heading("In the finished liquid");
        foreach (var (agent, strength) in dilution.Reached) page.Item($"{names.Agent(agent.Value)}: {Strength(strength)}");
        if (dilution.Reached.Count == 0) page.Item("no strength of an ingredient is on record");
        End(dilution.Identity);
    }

    private void End(IReadOnlyList<DataIdentity> identity)
    {
        page.Cautions();
        page.Item("Make up fresh what the label says is made up fresh; mark it with what it is, its strength and the day.");
        page.Data(identity);
    }

    private static string Take(DilutionRecipe recipe)
    {
        var question = recipe.Question;
        if (recipe.WaterGrams is { } grams) return $"Weigh {Range(recipe.StockGrams!.Value, Grams)} of the stock and add {Grams(grams)} of water.";
        var finished = Litres(question.Litres!.Value);
        if (recipe.StockLitres is not { } stock) return $"Weigh {Range(recipe.StockGrams!.Value, Grams)} of the powder and make up to {finished} with water.";
        if (recipe.ContractionLitres > 0m) return $"Take {Range(stock, Litres)} of the stock and add {Litres(recipe.WaterLitres!.Value)} of water: it makes "
            + $"{finished}.";
        return $"Take {Range(stock, Litres)} of the stock and make up to {finished} with water"
            + (recipe.WaterLitres is { } water ? $" (about {Litres(water)} of it)."
                : ". Measure the finished volume, not the water: volumes of liquids do not add up.");
    }

    private static string Strength(Strength strength) => FigureWording.Strength(strength.Percent, strength.Unit);

    private static string Range(Interval range, Func<decimal, string> figure) =>
        range.IsPoint ? figure(range.Lower!.Value) : $"{figure(range.Lower!.Value)} to {figure(range.Upper!.Value)}";

    private static string Litres(decimal litres) => litres < 1m ? Four(litres * 1000m) + "\u00a0mL" : Four(litres) + "\u00a0L";

    private static string Grams(decimal grams) => grams < 1000m ? Four(grams) + "\u00a0g" : Four(grams / 1000m) + "\u00a0kg";

    private static string Four(decimal value)
    {
        var (size, digits) = (Math.Abs(value), 4);
        while (size >= 1m && digits > 0) (size, digits) = (size / 10m, digits - 1);
        while (size is > 0m and < 0.1m && digits < 10) (size, digits) = (size * 10m, digits + 1);
        return FigureWording.Number(Math.Round(value, digits));
    }
}
