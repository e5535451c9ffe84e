namespace Compat.Planning;

/// <summary>
/// What is never done to a device with the products of its shelf, and what then happens. What is not on it is no permission: only the steps of a plan are.
/// </summary>
public sealed record NeverList
{
    /// <summary>Parts on which nothing wet is ever used, in the order of the device.</summary>
    public IReadOnlyList<DevicePartId> KeepDry { get; init; } = [];

    /// <summary>How wet the other parts may become, driest first; those that may lie in a liquid are left out.</summary>
    public IReadOnlyList<NeverWetter> NeverWetter { get; init; } = [];

    /// <summary>Acts that parts never stand.</summary>
    public IReadOnlyList<NeverAct> NeverActs { get; init; } = [];

    /// <summary>Products never used on a part, by product and then in the order of the device; parts that are kept dry are not named again.</summary>
    public IReadOnlyList<NeverUse> Uses { get; init; } = [];

    /// <summary>Products that the plan uses and what they never meet.</summary>
    public IReadOnlyList<NeverTogether> NeverTogether { get; init; } = [];

    /// <summary>
    /// The list of a plan. A use that the plan itself makes of a product, because its conditions are measured or its harm accepted, is not on it.
    /// </summary>
    /// <param name="knowledgeBase">The knowledge base the plan was made with.</param>
    /// <param name="sheet">The plan; one that is held or stopped has an empty list, for nothing is done then.</param>
    public static NeverList Of(KnowledgeBase knowledgeBase, PlanSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(knowledgeBase);
        ArgumentNullException.ThrowIfNull(sheet);
        if (sheet.Hold || sheet.Prions) return new();
        var ordinals = knowledgeBase.Compiled.Devices[sheet.Question.Device].Parts.Select((part, i) => (part.Id, i))
            .ToDictionary(pair => pair.Id, pair => pair.i);
        var parts = sheet.Parts.OrderBy(part => ordinals[part.Part.Id]).ToArray();
        var wet = parts.Where(part => !part.Need.KeptDry).ToArray();
        var products = knowledgeBase.Sites.SelectMany(site => site.Products).Select(product => product.Id).OrderBy(id => id).ToArray();
        var used = new HashSet<(ProductId, DevicePartId)>(
            sheet.Steps.Where(step => step.Product is not null).SelectMany(step => step.Answers.Select(answer => (step.Product!, answer.Part))));
        var harm = new HarmClass(knowledgeBase.Compiled);
        var traits = wet.Select(part => (part.Part.Id, Variants: PartResolver.Variants(knowledgeBase.Compiled, part.Question))).ToArray();
        return new()
        {
            KeepDry = parts.Where(part => part.Need.KeptDry).Select(part => part.Part.Id).ToArray(),
            NeverWetter = traits.GroupBy(part => part.Variants.Min(variant => variant.Wettest)).Where(group => group.Key < ApplicationMethod.Immerse)
                .OrderBy(group => group.Key)
                .Select(group => new NeverWetter(group.Key, group.Select(part => part.Id).ToArray())).ToArray(),
            NeverActs = traits.SelectMany(part => part.Variants.SelectMany(variant => variant.Never).Distinct().Select(act => (act, part.Id)))
                .GroupBy(pair => pair.act, pair => pair.Id).OrderBy(group => group.Key)
                .Select(group => new NeverAct(group.Key, group.ToArray())).ToArray(),
            Uses = products.SelectMany(product => wet.Where(part => !used.Contains((product, part.Part.Id)))
                .Select(part => Use(knowledgeBase, harm, part, product))).OfType<NeverUse>().ToArray(),
            NeverTogether = Together(new Meetings(knowledgeBase), sheet.Products, products).ToArray(),
        };
    }

    /// <summary>Why a product is never used on a part; null where not every use of it is forbidden.</summary>
    private static NeverUse? Use(KnowledgeBase kb, HarmClass worse, PlannedPart part, ProductId product)
    {
        if (kb.AskWhereListable(part.Question with { Product = product }) is not { } answer) return null;
        var people = answer.People is { Verdict: Verdict.NotAllowed } judged ? judged : null;
        if (answer.PartVerdict != Verdict.NotAllowed && people is null) return null;
        var harm = people is null ? [] : people.Rules.Where(rule => people.Forbidding.Contains(rule.Id)).Select(rule => rule.Harm).Distinct().ToArray();
        var damage = answer.PartVerdict != Verdict.NotAllowed ? []
            : answer.DecidedBy.Where(rule => !rule.Allows).Select(rule => rule.Damage).OfType<Damage>().Distinct().OrderByDescending(worse.OfDamage)
            .ThenBy(one => one.Onset).ThenBy(one => one.Mechanism).ToArray();
        var reason = answer.PartVerdict != Verdict.NotAllowed ? NeverReason.HarmsPeople
            : ShelfMaker.IsRefused(answer) ? NeverReason.Instructions
            : damage.Length > 0 ? NeverReason.HarmsThePart
            : answer.Decisive.Code is Answers.ReasonCode.ResidueStays ? NeverReason.ResidueStays
            : answer.Decisive.Code is Answers.ReasonCode.TooWet or Answers.ReasonCode.NeverActs ? NeverReason.TooWet
            : NeverReason.HarmsThePart;
        return new(product, part.Part.Id, reason) { Damage = damage, Harm = harm };
    }

    private static IEnumerable<NeverTogether> Together(Meetings meetings, IReadOnlyList<ProductId> used, ProductId[] shelf) =>
        from one in used
        from other in shelf
        where !used.Contains(other) || one.CompareTo(other) < 0
        let never = meetings.Of(one, other).Where(found => found.Hazard.Severity == MixingSeverity.Never).Select(found => found.Hazard).Distinct().ToArray()
        where never.Length > 0
        select new NeverTogether(one, other, never);
}

/// <summary>Why a product is never used on a part.</summary>
public enum NeverReason
{
    /// <summary>It harms the part: <see cref="NeverUse.Damage"/> says how.</summary>
    HarmsThePart,

    /// <summary>The device's instructions forbid it, or do not list it; <see cref="NeverUse.Damage"/> is what is on record besides.</summary>
    Instructions,

    /// <summary>Its residue or vapour harms people: <see cref="NeverUse.Harm"/> says how.</summary>
    HarmsPeople,

    /// <summary>It is only used wetter than the part stands.</summary>
    TooWet,

    /// <summary>What it leaves could not be taken off.</summary>
    ResidueStays,
}

/// <summary>A product that is never used on a part, however it is brought on.</summary>
/// <param name="Product">The product.</param>
/// <param name="Part">The part.</param>
/// <param name="Reason">Why: of several the first in the order of the members.</param>
public sealed record NeverUse(ProductId Product, DevicePartId Part, NeverReason Reason)
{
    /// <summary>What then happens to the part, by every rule that forbids it, the worst consequence first; empty where none names a damage.</summary>
    public IReadOnlyList<Damage> Damage { get; init; } = [];

    /// <summary>What then happens to people, in the words of the rules that forbid it; empty where none does.</summary>
    public IReadOnlyList<string> Harm { get; init; } = [];
}

/// <summary>The wettest method that parts stand: nothing wetter is ever used on them, whatever the product.</summary>
/// <param name="Wettest">The method.</param>
/// <param name="Parts">The parts, in the order of the device.</param>
public sealed record NeverWetter(ApplicationMethod Wettest, IReadOnlyList<DevicePartId> Parts);

/// <summary>An act that parts never stand, whatever the product.</summary>
/// <param name="Act">The act.</param>
/// <param name="Parts">The parts, in the order of the device.</param>
public sealed record NeverAct(Act Act, IReadOnlyList<DevicePartId> Parts);

/// <summary>A product of the plan and one of the shelf that never meet, on a part, a cloth or in a bucket.</summary>
/// <param name="One">The one that the plan uses; of two that it uses the first by id.</param>
/// <param name="Other">The other.</param>
/// <param name="Hazards">What then happens, by id; at least one.</param>
public sealed record NeverTogether(ProductId One, ProductId Other, IReadOnlyList<MixingHazard> Hazards);
