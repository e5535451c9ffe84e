namespace Compat.Tests.Reference;

/// <content>What the claims of a label are worth, clauses K8 to K10: the tests they name, and the water they allow.</content>
internal sealed partial class ReferenceWhole
{
    private bool WaterTooHard => _product!.StrengthOf == StrengthOf.Concentrate && _product.MostHardness is { } most
        && _sites.Any(s => s.Here.Hardness is { } water && !(water.Upper <= most));
    private IEnumerable<Told> Label(Variant v) =>
        from claim in _product!.LabelClaims
        where RestsOnSomething(claim) && !WaterTooHard && Names(claim.For, v)
        select Fill(null, claim.When, null, claim.Reaches, claim.Kills, claim.DoesNotKill, false, true, claim.For.Count > 0) with
        { Tests = claim.Registration is null ? claim.ShownBy.Select(code => _data.TestStandards.Single(t => t.Code == code)).ToArray() : null };
    private static bool RestsOnSomething(LabelClaim claim) => claim.ShownBy.Count > 0 || claim.Registration is not null;
    /// <summary>Whether a claim is held against no tests, or some speak of the method and each target is shown by one of these.</summary>
    private bool IsTested(Told claim, KillTarget target, ApplicationMethod by)
    {
        if (claim.Tests is null) return true;
        var speaking = claim.Tests.Where(t => t.Field is TestField.Medical or TestField.AnySurface && by < ApplicationMethod.Chamber
            && (by <= ApplicationMethod.WetWipe || !t.Wiping)
            && (t.On.Contains(TestedOn.Surfaces) || (by > ApplicationMethod.Spray && t.On.Contains(TestedOn.Instruments)))).ToArray();
        var needed = target.Against is { } one ? [one]
            : _data.Levels.Where(l => l.Level == target.Level).SelectMany(l => l.Includes).Select(OrganismTarget.Of);
        return speaking.Length > 0 && needed.All(n => speaking.Any(t => t.Shows.Contains(n)
            || (n.Organism is not null && !Record(n).OwnClaim && t.Shows.Contains(OrganismTarget.Of(GroupOf(n))))));
    }
}
