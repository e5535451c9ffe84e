using Compat.Evaluation;
using Compat.Knowledge;

namespace Compat.Plans;

/// <summary>Ranks what a product does to a part and can do to people, so that the mildest that serves is taken.</summary>
/// <remarks>
/// The damage class is the worst consequence of the damage that the rules which permit it name: in the order of <see cref="Consequence"/>, which goes from what is
/// only seen to what reaches the patient. The people-hazard class is how many kinds of hazard its ingredients have on record: more kinds, more to be kept from.
/// The damage to the part comes first, hazards to people decide between products that damage alike; a gap that stays unreached is worse than either.
/// </remarks>
internal static class HarmClass
{
    private const int PerDamage = 100;
    private const int OfGap = 10_000;

    /// <summary>The class of a product on a part.</summary>
    /// <param name="damage">The damage of the rules that permit it there.</param>
    /// <param name="hazards">How many kinds of hazard it has.</param>
    /// <param name="gapNotShown">Whether it leaves a gap of which nobody has shown that it is reached.</param>
    public static int Of(IEnumerable<Damage> damage, int hazards, bool gapNotShown) =>
        (damage.Select(one => (int)one.Consequence + 1).DefaultIfEmpty(0).Max() * PerDamage) + Math.Min(hazards, PerDamage - 1) + (gapNotShown ? OfGap : 0);

    /// <summary>How many kinds of hazard the ingredients of a substance have on record; an ingredient that no class covers counts as one more.</summary>
    public static int Hazards(CompiledBase kb, Substance substance) =>
        substance.Components.Where(c => !c.OnlyForbids && !c.Unknown).SelectMany(c => kb.Agents.Upward(c.Agent)).SelectMany(node => kb.Data.Agents[node].Hazards).Distinct().Count()
        + (substance.Components.Any(c => c.Unknown) ? 1 : 0);
}
