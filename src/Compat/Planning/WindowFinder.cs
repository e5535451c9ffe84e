namespace Compat.Planning;

/// <summary>A box of a window for which all is at hand.</summary>
/// <param name="Box">The box.</param>
/// <param name="Gap">Whether the part has a gap of which nobody has shown that it is reached in this box.</param>
/// <param name="WorkIntoGap">Whether the cloth is worked into the gap.</param>
internal sealed record CaseBox(WindowBox Box, bool Gap, bool WorkIntoGap)
{
    public bool CleanFirst => Box.Claims.Any(claim => claim.Needs.Contains(ClaimNeed.CleanFirst));
}

/// <summary>What a product does for a part in a role: open boxes of every method, or what closes it.</summary>
internal sealed record CaseWindow(PartCase Case, ShelfProduct Product, PlanRole Role, IReadOnlyList<CaseBox> Boxes, ClosedProduct? Closed);

/// <summary>Finds the windows of a shelf on the parts of a device.</summary>
internal sealed class WindowFinder(CompiledBase kb, PlanShelf shelf, Meetings meetings, IReadOnlyList<DataIdentity> identity)
{
    /// <summary>The window in which a product disinfects a part.</summary>
    /// <param name="one">The part.</param>
    /// <param name="product">The product.</param>
    /// <param name="dismantled">Whether the part is judged as it is once taken apart.</param>
    /// <param name="accept">Consequences that somebody accepts.</param>
    public CaseWindow Disinfecting(PartCase one, ShelfProduct product, bool dismantled = false, IReadOnlyList<Consequence>? accept = null) =>
        Find(one, product, PlanRole.Disinfect, one.Need, dismantled, accept);

    /// <summary>The window in which a product cleans a part; null where it is no cleaner.</summary>
    public CaseWindow? Cleaning(PartCase one, ShelfProduct product, bool dismantled = false)
    {
        if (product.Product.Removes.Count == 0) return null;
        var stays = one.Need.Soil.Except(product.Product.Removes).ToArray();
        if (stays.Length > 0) return Shut(one, product, PlanRole.Clean, null, new(MissingCode.Removes, stays.Select(soil => Words.Of(soil)).ToArray()));
        if (MeetsSoil(one, product) is { } meets) return Shut(one, product, PlanRole.Clean, null, meets);
        return Find(one, product, PlanRole.Clean, one.Need with { Level = Level.Cleaned, Against = [], CleanFirst = false }, dismantled, null);
    }

    /// <summary>The soil of a part that a product must never meet; null where there is none.</summary>
    public MissingThing? MeetsSoil(PartCase one, ShelfProduct product) =>
        (from soil in one.Need.Soil
         from found in meetings.Of(product.Product.Id, soil)
         where found.Hazard.Severity == MixingSeverity.Never
         select new MissingThing(MissingCode.MeetsSoil, [Words.Of(soil), found.Hazard.Id.Value])).FirstOrDefault();

    /// <summary>Whether a part stands a product at all, so that only a claim is wanting.</summary>
    public bool StandsIt(PartCase one, ShelfProduct product)
    {
        var ground = new WindowGround(kb, one.Question with { Product = product.Product.Id }, one.Need with { Level = Level.Cleaned, Against = [] },
            measured: true);
        return ground.Methods.Any(method => ground.Boxes(method, ground.PartHoles(method).Concat(ground.PeopleHoles(method))).Count > 0);
    }

    /// <summary>Whether a rule of instructions is among those that close a window: nothing sets these aside.</summary>
    public bool IsForbiddenByInstructions(WindowClosure closure) =>
        kb.Rules.Any(rule => rule.OfInstructions && !rule.Allows && closure.Rules.Contains(rule.Rule.Id));

    private CaseWindow Find(PartCase one, ShelfProduct product, PlanRole role, Need need, bool dismantled, IReadOnlyList<Consequence>? accept)
    {
        if (product.Missing is { } lacks) return Shut(one, product, role, null, lacks);
        var question = one.Question with { Product = product.Product.Id, Cloth = product.Cloth };
        var variants = PartResolver.Variants(kb, question);
        if (dismantled && one.Part.WhenDismantled is { } apart)
        {
            variants = variants.Select(v => v with { Geometry = apart.Geometry, Wettest = Wettest(apart, v) }).ToArray();
            need = need with { Geometry = apart.Geometry };
        }

        if (accept is not null && (variants.Count > 1 || need.Level >= Level.High)) return Shut(one, product, role, null, null);
        var ground = new WindowGround(kb, question, need, measured: true, variants: variants, accepts: accept is null ? null
            : piece => Accepts(piece, product.Product, accept));
        var window = new WindowMaker(kb, question, ground).Make(identity);
        if (!window.IsOpen) return Shut(one, product, role, window.Closure, null);
        var lacking = window.Boxes.SelectMany(box => box.Duties).Select(shelf.Missing).FirstOrDefault(missing => missing is not null);
        var gap = ground.Cover.Targets.Count > 0 && !window.WorkIntoGap && variants.Any(v => v.Geometry is Geometry.Crevice or Geometry.Hinge);
        var boxes = window.Boxes.Where(box => box.Duties.All(duty => shelf.Missing(duty) is null))
            .Select(box => new CaseBox(
                box with { Duties = box.Duties.Select(duty => duty with { Ways = shelf.AtHand(duty) }).ToArray() },
                gap && box.Method != ApplicationMethod.Chamber && !(box.Claims.Count > 0 && box.Claims.All(claim => claim.NamesThePart)),
                window.WorkIntoGap))
            .ToArray();
        if (boxes.Length == 0) return Shut(one, product, role, null, lacking);
        var reaching = boxes.Any(box => !box.Gap) ? boxes.Where(box => !box.Gap).ToArray() : boxes;
        return new(one, product, role, reaching, null);
    }

    private static ApplicationMethod Wettest(DismantledPart apart, PartVariant variant) =>
        apart.Wettest is not { } wettest ? variant.Wettest
        : wettest <= variant.Wettest || variant.Editions.Any(edition => edition.Id == apart.From) ? wettest : variant.Wettest;

    /// <summary>
    /// Whether all that forbids a piece is harm that somebody accepts, and nothing else is against it: no instructions, no duty that cannot be met, nothing
    /// undeclared.
    /// </summary>
    private static bool Accepts(Piece piece, Product product, IReadOnlyList<Consequence> accept)
    {
        var forbidding = piece.Decision.Deciding;
        if (piece.Component is not { Unknown: false } component || piece.Verdict != Verdict.NotAllowed || forbidding.Count == 0) return false;
        if (!forbidding.All(rule => !rule.Allows && !rule.OfInstructions && rule.Rule.Damage is { } damage && accept.Contains(damage.Consequence)))
            return false;
        var variant = piece.Decision.Variant;
        return variant.Editions.All(edition => !edition.OnlyListed) && component.Duties.Concat(variant.Duties).All(variant.CanMeet)
            && (product.Composition == Composition.Full || forbidding.Any(rule => rule.Agent < 0));
    }

    private static CaseWindow Shut(PartCase one, ShelfProduct product, PlanRole role, WindowClosure? closure, MissingThing? missing) =>
        new(one, product, role, [], new ClosedProduct(product.Product.Id, role, closure, missing));
}
