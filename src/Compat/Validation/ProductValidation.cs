namespace Compat.Validation;

/// <summary>Checks a product: what is in it, and its figures.</summary>
internal static class ProductValidation
{
    /// <summary>Harder than any water: a figure above it is a slip of the unit.</summary>
    public const decimal MostHardness = 10_000m;

    public static void Check(Scope scope, Product product)
    {
        var place = new ProblemPlace(RecordKind.Product, product.Id.Value);
        if (product.Ingredients.Count == 0) scope.Add("no-ingredients", place, "a product has at least one ingredient");
        var least = new Dictionary<StrengthBasis, decimal>();
        for (var i = 0; i < product.Ingredients.Count; i++)
        {
            var ingredient = product.Ingredients[i];
            var field = $"ingredients.{i}";
            if (ingredient.Agent is null == string.IsNullOrWhiteSpace(ingredient.Unknown)) scope.Add("one-ingredient", place with { Field = field }, "an ingredient is an agent or has the name of an unknown one");
            if (ingredient.Agent is { } agent) scope.Knows(scope.Agents, agent, place, field + ".agent", "agent");
            if (ingredient.Strength is not { } strength) continue;
            BoxValidation.Strength(scope, place, field + ".strength", strength.Percent, strength.Unit);
            least.TryGetValue(strength.Unit.Basis, out var sum);
            least[strength.Unit.Basis] = sum + (strength.Percent.Lower ?? 0m);
        }

        foreach (var pair in least.Where(p => p.Value > 100m && p.Key is StrengthBasis.VolumePerVolume or StrengthBasis.MassPerMass))
            scope.Add("over-100-percent", place with { Field = "ingredients" }, $"the lower bounds in {StrengthUnit.PercentOf(pair.Key)} add up to {Interval.Figure(pair.Value)} %, over 100 %");
        var wipe = product.StrengthOf == StrengthOf.WholeWipe;
        if (product.LiquidShare is not null && !wipe) scope.Add("liquid-share", place with { Field = "liquid-share" }, "`liquid-share` goes with `strength-of: whole-wipe` only");
        if (product.LiquidShare is <= 0m or > 1m) scope.Add("outside-axis", place with { Field = "liquid-share" }, "a share lies above 0 and up to 100 %");
        if (product.Dilution is { } dilution)
        {
            if (product.StrengthOf != StrengthOf.Concentrate) scope.Add("dilution-of-ready", place with { Field = "dilution" }, "only a concentrate has dilutions on its label");
            BoxValidation.Range(scope, place, "dilution", dilution, 0m, 1m, false, "dilution");
        }

        if (product.Density is < KnowledgeValidation.LeastDensity or > KnowledgeValidation.MostDensity) scope.Add("outside-axis", place with { Field = "density" }, KnowledgeValidation.DensityRange);
        if (product.Temperature is { } temperature) BoxValidation.Range(scope, place, "temperature", temperature, -40m, 200m, true, "temperature");
        for (var i = 0; i < product.Ph.Count; i++) BoxValidation.Range(scope, place, $"ph.{i}.value", product.Ph[i].Value, -1m, 15m, true, "pH");
        for (var i = 0; i < product.LabelClaims.Count; i++) SiteClaimValidation.Label(scope, product, i);
        ProductUseValidation.Check(scope, product, place);
    }
}
