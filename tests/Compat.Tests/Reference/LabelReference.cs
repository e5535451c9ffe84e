using Compat.Efficacy;

namespace Compat.Tests.Reference;

/// <content>What the claims of a label are worth: the tests they name, and the water they allow.</content>
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
    /// <summary>Whether a claim is held against no tests, or one that speaks of the method on a device can show that this is killed.</summary>
    private bool IsTested(Told claim, OrganismTarget target, ApplicationMethod by) => claim.Tests is null || claim.Tests.Any(t =>
        t.Field is TestField.Medical or TestField.AnySurface && by < ApplicationMethod.Chamber && (by <= ApplicationMethod.WetWipe || !t.Wiping)
        && (t.On.Contains(TestedOn.Surfaces) || (by > ApplicationMethod.Spray && t.On.Contains(TestedOn.Instruments))) && (t.Shows.Contains(target)
            || (target.Organism is not null && !Record(target).OwnClaim && t.Shows.Contains(OrganismTarget.Of(GroupOf(target))))));
}
