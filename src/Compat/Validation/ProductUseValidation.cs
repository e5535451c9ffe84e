namespace Compat.Validation;

/// <summary>Checks how a product is used: by which methods, how long it stays wet, how long it is good, how its bath is kept.</summary>
internal static class ProductUseValidation
{
    public static void Check(Scope scope, Product product, ProblemPlace place)
    {
        ContactTimes(scope, product, place);
        Life(scope, product, place);
        if (product.Bath is { } bath) Bath(scope, product, bath, place);
        if (product.OneStep && product.Removes.Count == 0)
            scope.Add("one-step-removes-nothing", place with { Field = "one-step" }, "it cleans in one step and removes nothing", "say in `removes` which soil its label names");
        RecordFacts.Texts(scope, place, "bound-by-cloths", product.BoundByCloths);
        if (product.MostHardness is not { } hardness) return;
        if (hardness is < 0m or > ProductValidation.MostHardness)
            scope.Add("outside-axis", place with { Field = "most-hardness" }, "a hardness lies in 0..10000 mg/L CaCO3");
        if (product.StrengthOf != StrengthOf.Concentrate)
            scope.Add("hardness-of-ready", place with { Field = "most-hardness" }, "only a concentrate is diluted with water");
    }

    private static void ContactTimes(Scope scope, Product product, ProblemPlace place)
    {
        for (var i = 0; i < product.ContactTimes.Count; i++)
        {
            var wet = product.ContactTimes[i];
            var field = $"contact-times.{i}";
            if (product.ContactTimes.Take(i).Any(other => other.Method == wet.Method))
                scope.Add("listed-twice", place with { Field = field + ".method" }, $"the contact time of `{Words.Of(wet.Method)}` is given twice");
            if (wet.Method == ApplicationMethod.DryWipe)
                scope.Add("other-method", place with { Field = field + ".method" }, "a dry wipe carries no product", "leave it out");
            else if (!product.Methods.IsEmpty && !product.Methods.Contains(wet.Method))
                scope.Add("other-method", place with { Field = field + ".method" }, $"it is not used by `{Words.Of(wet.Method)}`", "add the method to `methods`, or leave its contact time out");
            if (wet.Time.Lower is null || wet.Time.Upper is null)
                scope.Add("no-contact-time", place with { Field = field + ".time" }, "a contact time goes from the least to the most that was seen", "write `30..60 s`");
            else BoxValidation.Range(scope, place, field + ".time", wet.Time, 0m, null, false, "contact time");
        }
    }

    private static void Life(Scope scope, Product product, ProblemPlace place)
    {
        foreach (var (field, time) in new[] { ("activated", product.Life.Activated), ("diluted", product.Life.Diluted), ("opened", product.Life.Opened) })
            if (time is <= 0m) scope.Add("outside-axis", place with { Field = "life." + field }, "a time is above 0");
        if (product.Life.Activated is not null && !product.NeedsActivation)
            scope.Add("life-without-activation", place with { Field = "life.activated" }, "what is not activated has no life after it", "add `needs-activation: true`");
        if (product.Life.Diluted is not null && product.StrengthOf != StrengthOf.Concentrate)
            scope.Add("life-without-dilution", place with { Field = "life.diluted" }, "only a concentrate has a life after dilution");
    }

    private static void Bath(Scope scope, Product product, ProductBath bath, ProblemPlace place)
    {
        if (!product.Methods.IsEmpty && !product.Methods.Contains(ApplicationMethod.Immerse))
            scope.Add("bath-of-no-bath", place with { Field = "bath" }, "nothing is immersed in it, so it has no bath");
        if (!scope.Knows(scope.Agents, bath.Agent, place, "bath.agent", "agent")) return;
        if (product.Ingredients.All(i => scope.Upward(i.Agent).All(a => a.Id != bath.Agent)))
            scope.Add("not-in-it", place with { Field = "bath.agent" }, $"`{bath.Agent}` is none of its ingredients", NearestNames.Help(bath.Agent.Value, product.Ingredients.Select(i => i.Agent?.Value).OfType<string>()));
        ClaimValidation.Bath(scope, bath.Agent, bath.Use, scope.Basis(bath.Agent), place);
    }
}
