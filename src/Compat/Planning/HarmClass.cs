namespace Compat.Planning;

/// <summary>Clause L9. Ranks what a product does to a part and can do to people, so that the mildest that serves is taken.</summary>
/// <remarks>
/// Both orders are conventions of the data. The damage class is the place of the worst consequence that the rules which permit a product there name, the
/// people-hazard class that of the worst hazard its ingredients have on record. The damage to the part comes first, hazards to people decide between products
/// that damage alike; a gap that stays unreached is worse than either.
/// </remarks>
internal sealed class HarmClass
{
    private const int PerDamage = 100;
    private const int OfGap = 10_000;

    private readonly CompiledBase _kb;
    private readonly Dictionary<Consequence, int> _damage;
    private readonly Dictionary<Hazard, int> _hazards;

    public HarmClass(CompiledBase kb)
    {
        _kb = kb;
        _damage = Classes(kb.Convention(ConventionKey.DamageOrder).Consequences);
        _hazards = Classes(kb.Convention(ConventionKey.HazardOrder).Hazards);
    }

    /// <summary>The damage class of one damage: the greater, the worse.</summary>
    public int OfDamage(Damage damage) => _damage[damage.Consequence];

    /// <summary>The class of a product on a part.</summary>
    /// <param name="damage">The damage of the rules that permit it there.</param>
    /// <param name="people">Its people-hazard class.</param>
    /// <param name="gapNotShown">Whether it leaves a gap of which nobody has shown that it is reached.</param>
    public int Of(IEnumerable<Damage> damage, int people, bool gapNotShown) =>
        (damage.Select(OfDamage).DefaultIfEmpty(0).Max() * PerDamage) + people + (gapNotShown ? OfGap : 0);

    /// <summary>The people-hazard class of a substance: 0 where nothing is on record. What an ingredient can do that no class covers nobody knows: the worst.</summary>
    public int OfPeople(Substance substance) =>
        substance.Components.Any(c => c.Unknown) ? _hazards.Count
        : substance.Components.Where(c => !c.OnlyForbids).SelectMany(c => _kb.Agents.Upward(c.Agent)).SelectMany(node => _kb.Data.Agents[node].Hazards).Select(hazard => _hazards[hazard]).DefaultIfEmpty(0).Max();

    private static Dictionary<T, int> Classes<T>(IReadOnlyList<T> mildestFirst) where T : notnull =>
        mildestFirst.Select((one, place) => (one, place)).ToDictionary(pair => pair.one, pair => pair.place + 1);
}
