using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Finds claims of labels that say more than their tests show: a group of the level they reach, or what they say is killed.</summary>
/// <remarks>The engine takes such a claim for no more than its tests show; who wrote it may not know that.</remarks>
internal sealed class ClaimsBeyondTests(Ground ground)
{
    public IEnumerable<Finding> Find()
    {
        foreach (var product in ground.Kb.Sites.SelectMany(site => site.Products))
            for (var i = 0; i < product.LabelClaims.Count; i++)
                if (product.LabelClaims[i] is { ShownBy.Count: > 0 } claim && Of(product, claim, i) is { } finding) yield return finding;
    }

    private Finding? Of(Product product, LabelClaim claim, int index)
    {
        var tests = claim.ShownBy.Select(code => ground.Kb.Data.TestStandards.First(test => test.Code == code)).ToArray();
        var used = new KillClaim { Origin = ClaimOrigin.Label, Id = claim.Id.Value, ShownBy = tests };
        var methods = new ClaimAxes(ground.Kb).Methods(claim.When.Methods, product)
            .Intersect(product.Methods.IsEmpty ? MethodSet.Ladder : product.Methods).Methods;
        var missing = methods.GroupBy(method => string.Join(", ", NotShown(used, claim, method))).Where(group => group.Key.Length > 0).ToArray();
        if (missing.Length == 0) return null;
        var where = missing.Select(group => group.Key + (group.Count() == methods.Count ? "" : $" by {string.Join(", ", group.Select(Words.Of))}"));
        var says = claim.Reaches is { } level ? $"reaches {Words.Of(level)}" : $"kills {string.Join(", ", claim.Kills)}";
        var idle = tests.Where(test => !methods.Any(test.SpeaksOf))
            .Select(test => $"`{test.Code}` ({Words.Of(test.Field)}, on {string.Join(" and ", test.On.Select(Words.Of))})").ToArray();
        return new Finding
        {
            Kind = FindingKind.ClaimBeyondTests,
            IsFault = true,
            Message = $"the label claim `{claim.Id}` of `{product.Id}` {says}, and its tests do not show that it kills {string.Join("; ", where)}",
            Involved = [new(new ProblemPlace(RecordKind.Product, product.Id.Value, $"label-claims.{index}.shown-by"), "its tests")],
            Agent = product.Id.Value,
            Help = (idle.Length == 0 ? "" : $"{string.Join(", ", idle)} shows nothing of how it is used here; ")
                + "name the tests that the label names for it, or write the claim no wider than they are",
        };
    }

    private IEnumerable<OrganismTarget> NotShown(KillClaim used, LabelClaim claim, ApplicationMethod method) =>
        (claim.Reaches is { } level ? LabelTests.NotShown(ground.Kb, used, level, method).Select(OrganismTarget.Of) : [])
            .Concat(claim.Kills.Where(target => !LabelTests.Show(ground.Kb, used, target, method))).Distinct();
}
