namespace Compat.Validation;

/// <summary>Checks what a site's labels and instructions say is killed.</summary>
internal static class SiteClaimValidation
{
    public static void Label(Scope scope, Product product, int index)
    {
        var claim = product.LabelClaims[index];
        var place = new ProblemPlace(RecordKind.Product, product.Id.Value);
        var field = $"label-claims.{index}";
        if (product.LabelClaims.Take(index).Any(other => other.Id == claim.Id))
            scope.Add("duplicate-id", place with { Field = field + ".id" }, $"the claim `{claim.Id}` is given twice");
        ClaimValidation.What(scope, claim.Reaches, claim.Kills, claim.DoesNotKill, place, field, "reaches");
        RecordFacts.Parts(scope, place, field + ".for", claim.For);
        ShownBy(scope, claim, place, field);
        Box(scope, place, field + ".when", claim.When, null);
        OfProduct(scope, product, claim.When, place, field + ".when");
    }

    /// <summary>Tests that are known, each named once, or a registration; not both, so that with the last test the claim goes and is not held to less.</summary>
    private static void ShownBy(Scope scope, LabelClaim claim, ProblemPlace place, string field)
    {
        for (var i = 0; i < claim.ShownBy.Count; i++)
        {
            var code = claim.ShownBy[i];
            var here = place with { Field = $"{field}.shown-by.{i}" };
            if (scope.Data.TestStandards.All(test => test.Code != code)) scope.Add("unknown-test", here, $"unknown test `{code}`", Near(scope, code.Value));
            else if (claim.ShownBy.Take(i).Contains(code)) scope.Add("listed-twice", here, $"`{code}` is listed twice");
        }

        if (claim.Registration is not { } registration) return;
        var registered = field + ".registration";
        if (registration.Authority.Trim().Length == 0 || registration.Number.Trim().Length == 0)
            scope.Add("no-registration", place with { Field = registered }, "a registration names its authority and its number", "leave the key out where the label shows none: the claim is none then");
        if (claim.ShownBy.Count > 0)
            scope.Add("tests-and-registration", place with { Field = registered }, "a claim rests on tests or on a registration, not on both", "where the tests are known, leave the registration out");
    }

    /// <summary>The nearest known codes, an edition or what is written small left aside; else what may stand there.</summary>
    private static string Near(Scope scope, string code)
    {
        var known = scope.Data.TestStandards.Select(test => test.Code.Value).ToArray();
        return NearestNames.Help(code, known) ?? NearestNames.Help(code.Split(':', '+', '/')[0].ToUpperInvariant(), known)
            ?? "write codes of `test-standards.yaml`, as `[EN 13727, EN 16615]`, or `registration: { authority, number }`";
    }

    public static void Reached(Scope scope, Device device, InstructedLevel reached, ProblemPlace place, string field)
    {
        ClaimValidation.What(scope, reached.Reaches, reached.Kills, [], place, field, "level");
        RecordFacts.DeviceParts(scope, place, reached.Parts, device, i => $"{field}.parts.{i}");
        if (reached.Agent is null == reached.Product is null)
            scope.Add("one-subject", place with { Field = field }, "a level is reached with exactly one agent or product");
        if (reached.Agent is { } agent && !scope.Knows(scope.Agents, agent, place, field + ".agent", "agent")) return;
        Box(scope, place, field + ".when", reached.When, reached.Agent);
        if (reached.Product is { } id && scope.Knows(scope.Products, id, place, field + ".product", "product"))
            OfProduct(scope, scope.Products[id], reached.When, place, field + ".when");
    }

    private static void Box(Scope scope, ProblemPlace place, string field, ClaimBox box, AgentId? agent)
    {
        if (agent is null && box.Strength.Statement != AxisStatement.NotNamed)
            scope.Add("strength-of-product", place with { Field = field + ".strength" }, "a claim of a product names `dilution`, not `strength`");
        if (agent is not null && box.Dilution.Statement != AxisStatement.NotNamed)
            scope.Add("dilution-of-agent", place with { Field = field + ".dilution" }, "a claim of an agent names `strength`, not `dilution`");
        if (agent is not null) ClaimValidation.Strength(scope, agent, box.Strength, place with { Field = field + ".strength" });
        ClaimValidation.ContactTime(scope, box.ContactTime, place with { Field = field + ".contact-time" });
        ClaimValidation.Conditions(scope, box, place, field);
        var missing = new List<string>();
        if (agent is not null && scope.Basis(agent) is not null && box.Strength.Statement == AxisStatement.NotNamed) missing.Add("strength");
        if (box.Temperature.Statement == AxisStatement.NotNamed) missing.Add("temperature");
        if (box.Methods.Statement == AxisStatement.NotNamed) missing.Add("methods");
        if (missing.Count > 0)
            scope.Add("axis-not-named", place with { Field = field }, "a claim leaves " + string.Join(", ", missing) + " unnamed", "name every axis: a range, `any` where the label says so, or `unstated`");
    }

    private static void OfProduct(Scope scope, Product product, ClaimBox box, ProblemPlace place, string field)
    {
        if (box.Dilution.Statement == AxisStatement.Within)
        {
            BoxValidation.Range(scope, place, field + ".dilution", box.Dilution.Range, 0m, 1m, false, "dilution");
            if (product.StrengthOf != StrengthOf.Concentrate && !box.Dilution.Range.Contains(1m))
                scope.Add("dilution-of-ready", place with { Field = field + ".dilution" }, "it is used as it comes, so a claim on it diluted is none", "write `undiluted`, or leave the axis out");
            else if (product.Dilution is { } label && !box.Dilution.Range.IsEmpty && label.Intersect(box.Dilution.Range).IsEmpty)
                scope.Add("outside-label", place with { Field = field + ".dilution" }, "the claim holds at no dilution that the label gives");
        }

        if (!product.Methods.IsEmpty && box.Methods.Statement == AxisStatement.Within && !box.Methods.Methods.IsEmpty && product.Methods.Intersect(box.Methods.Methods).IsEmpty)
            scope.Add("other-method", place with { Field = field + ".methods" }, "the claim holds by no method it is used by");
    }
}
