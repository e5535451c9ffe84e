namespace Compat.Validation;

/// <summary>Checks a product: what is in it, its figures, how it is used, how its bath is kept.</summary>
internal static class ProductValidation
{
    /// <summary>The hardness that water can have, in mg/L CaCO3; no water is harder: a figure above it is a slip of the unit.</summary>
    public static readonly Interval Hardness = Interval.Closed(0m, 10_000m);

    public static void Check(Scope scope, Product product)
    {
        var at = new Field(scope, RecordKind.Product, product.Id.Value);
        Ingredients(scope, product, at);
        var isConcentrate = product.StrengthOf == StrengthOf.Concentrate;
        if (product.LiquidShare is not null && product.StrengthOf != StrengthOf.WholeWipe)
            at["liquid-share"].Wrong("liquid-share", "`liquid-share` goes with `strength-of: whole-wipe` only");
        if (product.LiquidShare is <= 0m or > 1m) at["liquid-share"].Wrong("outside-axis", "a share lies above 0 and up to 100 %");
        if (product.Dilution is { } dilution)
        {
            if (!isConcentrate) at["dilution"].Wrong("dilution-of-ready", "only a concentrate has dilutions on its label");
            at["dilution"].Range(dilution, Axis.Dilution);
        }

        KnowledgeValidation.Density(at["density"], product.Density);
        if (product.Temperature is { } temperature) at["temperature"].Range(temperature, Axis.Temperature);
        for (var i = 0; i < product.Ph.Count; i++) at["ph"][i]["value"].Range(product.Ph[i].Value, Axis.Ph, "pH");
        for (var i = 0; i < product.LabelClaims.Count; i++) SiteClaimValidation.Label(scope, product, i, at["label-claims"][i]);
        for (var i = 0; i < product.ContactTimes.Count; i++) ContactTime(product, i, at["contact-times"][i]);
        Life(product, isConcentrate, at["life"]);
        if (product.Bath is { } bath) Bath(scope, product, bath, at["bath"]);
        if (product.OneStep && product.Removes.Count == 0)
            at["one-step"].Wrong("one-step-removes-nothing", "it cleans in one step and removes nothing", "say in `removes` which soil its label names");
        at["bound-by-cloths"].Texts(product.BoundByCloths);
        if (product.MostHardness is not { } hardness) return;
        if (!Hardness.Contains(hardness)) at["most-hardness"].Wrong("outside-axis", "a hardness lies in 0..10000 mg/L CaCO3");
        if (!isConcentrate) at["most-hardness"].Wrong("hardness-of-ready", "only a concentrate is diluted with water");
    }

    private static void Ingredients(Scope scope, Product product, Field at)
    {
        if (product.Ingredients.Count == 0) at.Wrong("no-ingredients", "a product has at least one ingredient");
        var least = new Dictionary<StrengthBasis, decimal>();
        for (var i = 0; i < product.Ingredients.Count; i++)
        {
            var (ingredient, field) = (product.Ingredients[i], at["ingredients"][i]);
            if (ingredient.Agent is null == string.IsNullOrWhiteSpace(ingredient.Unknown))
                field.Wrong("one-ingredient", "an ingredient is an agent or has the name of an unknown one");
            if (ingredient.Agent is { } agent) field["agent"].Knows(scope.Agents, agent, "agent");
            if (ingredient.Strength is not { } strength) continue;
            field["strength"].Strength(strength.Percent, strength.Unit);
            least.TryGetValue(strength.Unit.Basis, out var sum);
            least[strength.Unit.Basis] = sum + (strength.Percent.Lower ?? 0m);
        }

        foreach (var pair in least.Where(p => p.Value > 100m && p.Key is StrengthBasis.VolumePerVolume or StrengthBasis.MassPerMass))
            at["ingredients"].Wrong(
                "over-100-percent", $"the lower bounds in {StrengthUnit.PercentOf(pair.Key)} add up to {Interval.Figure(pair.Value)} %, over 100 %");
    }

    private static void ContactTime(Product product, int index, Field at)
    {
        var wet = product.ContactTimes[index];
        if (product.ContactTimes.Take(index).Any(other => other.Method == wet.Method))
            at["method"].Wrong("listed-twice", $"the contact time of `{Words.Of(wet.Method)}` is given twice");
        if (wet.Method == ApplicationMethod.DryWipe) at["method"].Wrong("other-method", "a dry wipe carries no product", "leave it out");
        else if (!product.Methods.IsEmpty && !product.Methods.Contains(wet.Method))
            at["method"].Wrong("other-method", $"it is not used by `{Words.Of(wet.Method)}`", "add the method to `methods`, or leave its contact time out");
        if (wet.Time.Lower is null || wet.Time.Upper is null)
            at["time"].Wrong("no-contact-time", "a contact time goes from the least to the most that was seen", "write `30..60 s`");
        else at["time"].Range(wet.Time, Axis.ExposureTime, "contact time");
    }

    private static void Life(Product product, bool isConcentrate, Field at)
    {
        at["activated"].Time(product.Life.Activated);
        at["diluted"].Time(product.Life.Diluted);
        at["opened"].Time(product.Life.Opened);
        if (product.Life.Activated is not null && !product.NeedsActivation)
            at["activated"].Wrong("life-without-activation", "what is not activated has no life after it", "add `needs-activation: true`");
        if (product.Life.Diluted is not null && !isConcentrate) at["diluted"].Wrong("life-without-dilution", "only a concentrate has a life after dilution");
    }

    private static void Bath(Scope scope, Product product, ProductBath bath, Field at)
    {
        if (!product.Methods.IsEmpty && !product.Methods.Contains(ApplicationMethod.Immerse))
            at.Wrong("bath-of-no-bath", "nothing is immersed in it, so it has no bath");
        if (!at["agent"].Knows(scope.Agents, bath.Agent, "agent")) return;
        if (product.Ingredients.All(i => i.Agent is not { } agent || !scope.LiesIn(agent, bath.Agent)))
            at["agent"].Wrong("not-in-it", $"`{bath.Agent}` is none of its ingredients",
                NearestNames.Help(bath.Agent.Value, product.Ingredients.Select(i => i.Agent?.Value).OfType<string>()));
        ClaimValidation.Bath(at, bath.Agent, bath.Use);
    }
}
