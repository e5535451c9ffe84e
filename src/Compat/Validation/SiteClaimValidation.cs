namespace Compat.Validation;

/// <summary>Checks what a site's labels and instructions say is killed.</summary>
internal static class SiteClaimValidation
{
    public static void Label(Scope scope, Product product, int index, Field at)
    {
        var claim = product.LabelClaims[index];
        if (product.LabelClaims.Take(index).Any(other => other.Id == claim.Id)) at["id"].Wrong("duplicate-id", $"the claim `{claim.Id}` is given twice");
        ClaimValidation.What(at, claim.Reaches, claim.Kills, claim.DoesNotKill, "reaches");
        at["for"].KnowsAll(scope.Parts, claim.For, "part");
        ShownBy(scope, claim, at);
        Box(at["when"], claim.When, null);
        OfProduct(at["when"], product, claim.When);
    }

    /// <summary>
    /// Tests that are known, each named once, or a registration; not both, so that with the last test the claim goes and is not held to less.
    /// </summary>
    private static void ShownBy(Scope scope, LabelClaim claim, Field at)
    {
        for (var i = 0; i < claim.ShownBy.Count; i++)
        {
            var (code, here) = (claim.ShownBy[i], at["shown-by"][i]);
            if (scope.Data.TestStandards.All(test => test.Code != code)) here.Wrong("unknown-test", $"unknown test `{code}`", Near(scope, code.Value));
            else if (claim.ShownBy.Take(i).Contains(code)) here.Wrong("listed-twice", $"`{code}` is listed twice");
        }

        if (claim.Registration is not { } registration) return;
        if (registration.Authority.Trim().Length == 0 || registration.Number.Trim().Length == 0)
            at["registration"].Wrong(
                "no-registration", "a registration names its authority and its number",
                "leave the key out where the label shows none: the claim is none then");
        if (claim.ShownBy.Count > 0)
            at["registration"].Wrong(
                "tests-and-registration", "a claim rests on tests or on a registration, not on both",
                "where the tests are known, leave the registration out");
    }

    /// <summary>The nearest known codes, an edition or what is written small left aside; else what may stand there.</summary>
    private static string Near(Scope scope, string code)
    {
        var known = scope.Data.TestStandards.Select(test => test.Code.Value).ToArray();
        return NearestNames.Help(code, known) ?? NearestNames.Help(code.Split(':', '+', '/')[0].ToUpperInvariant(), known)
            ?? "write codes of `test-standards.yaml`, as `[EN 13727, EN 16615]`, or `registration: { authority, number }`";
    }

    public static void Reached(Scope scope, Device device, InstructedLevel reached, Field at)
    {
        ClaimValidation.What(at, reached.Reaches, reached.Kills, [], "level");
        at["parts"].DeviceParts(device, reached.Parts);
        if (reached.Agent is null == reached.Product is null) at.Wrong("one-subject", "a level is reached with exactly one agent or product");
        if (reached.Agent is { } agent && !at["agent"].Knows(scope.Agents, agent, "agent")) return;
        Box(at["when"], reached.When, reached.Agent);
        if (reached.Product is { } id && at["product"].Knows(scope.Products, id, "product")) OfProduct(at["when"], scope.Products[id], reached.When);
    }

    private static void Box(Field when, ClaimBox box, AgentId? agent)
    {
        if (agent is null && box.Strength.Statement != AxisStatement.NotNamed)
            when["strength"].Wrong("strength-of-product", "a claim of a product names `dilution`, not `strength`");
        if (agent is not null && box.Dilution.Statement != AxisStatement.NotNamed)
            when["dilution"].Wrong("dilution-of-agent", "a claim of an agent names `strength`, not `dilution`");
        if (agent is not null) ClaimValidation.Strength(when["strength"], agent, box.Strength);
        ClaimValidation.Conditions(when, box);
        when.Named(
            "a claim", "the label", ("strength", agent is not null && when.Scope.Basis(agent) is not null ? box.Strength.Statement : null),
            ("temperature", box.Temperature.Statement), ("methods", box.Methods.Statement));
    }

    private static void OfProduct(Field when, Product product, ClaimBox box)
    {
        if (box.Dilution.Statement == AxisStatement.Within)
        {
            when["dilution"].Range(box.Dilution, Axis.Dilution);
            if (product.StrengthOf != StrengthOf.Concentrate && !box.Dilution.Range.Contains(1m))
                when["dilution"].Wrong(
                    "dilution-of-ready", "it is used as it comes, so a claim on it diluted is none", "write `undiluted`, or leave the axis out");
            else if (product.Dilution is { } label && !box.Dilution.Range.IsEmpty && label.Intersect(box.Dilution.Range).IsEmpty)
                when["dilution"].Wrong("outside-label", "the claim holds at no dilution that the label gives");
        }

        if (!product.Methods.IsEmpty && box.Methods.Statement == AxisStatement.Within && !box.Methods.Methods.IsEmpty
            && product.Methods.Intersect(box.Methods.Methods).IsEmpty)
            when["methods"].Wrong("other-method", "the claim holds by no method it is used by");
    }
}
