using System.Collections.Concurrent;

namespace Compat.Planning;

/// <summary>A product of the shelf as the site can use it.</summary>
internal sealed record ShelfProduct(int Rank, Product Product, Substance Substance, string? Cloth, int PeopleHazard, IReadOnlyList<Protection> Protection,
    IReadOnlyList<string> Gloves, MissingThing? Missing);

/// <summary>The products of all sites that are laid over the data, by id, and what is at hand where the device is: clause L3.</summary>
internal sealed class PlanShelf
{
    private readonly CompiledBase _kb;
    private readonly SiteConditions _here;
    private readonly HarmClass _harm;

    public PlanShelf(CompiledBase kb, PlanQuestion question)
    {
        _kb = kb;
        _harm = new HarmClass(kb);
        _here = kb.Sites.First(site => site.Devices.Any(device => device.Id == question.Device)).Here;
        Products = kb.Sites.SelectMany(site => site.Products).OrderBy(product => product.Id).Select((product, rank) => Of(product, rank, question)).ToArray();
    }

    public IReadOnlyList<ShelfProduct> Products { get; }

    /// <summary>The ways of a duty for which all is at hand; a grade of water that was not stated is not missed.</summary>
    public IReadOnlyList<DutyWay> AtHand(Duty duty) => duty.Ways.Where(way => Missing(way) is null).ToArray();

    /// <summary>What a duty lacks that has ways of which none can be gone; null where it lacks nothing.</summary>
    public MissingThing? Missing(Duty duty) =>
        duty.Ways.Count == 0 || duty.Ways.Any(way => Missing(way) is null) ? null : Missing(duty.Ways[0]);

    private MissingThing? Missing(DutyWay way) =>
        way.Water is { } grade && _here.Water.Count > 0 && grade > _here.Water.Max() ? new(MissingCode.Water, [Words.Of(grade)])
        : way.Act == Act.CompressedAir && _here.DryingAir == false ? new(MissingCode.DryingAir, [])
        : null;

    private ShelfProduct Of(Product product, int rank, PlanQuestion question)
    {
        var device = _kb.Devices[question.Device];
        var substance = SubstanceResolver.Resolve(_kb, new Question { Device = device.Id, DevicePart = device.Parts[0].Id, Product = product.Id });
        var protection = ProtectionOf(_kb, substance).Distinct().OrderBy(one => one.Id).ToArray();
        var lists = Known(substance).Select(GlovesOf).Where(list => list.Count > 0).ToArray();
        var held = _here.Gloves.Where(glove => lists.All(list => list.Any(material => Names(material, glove)))
            && !protection.Any(one => one.GlovesFail.Contains(glove, StringComparer.OrdinalIgnoreCase))).ToArray();
        var gloves = lists.SelectMany(list => list).Where(material => held.Any(glove => Names(material, glove))).Distinct().ToArray();
        var missing = lists.Length > 0 && _here.Gloves.Count > 0 && held.Length == 0
            ? new MissingThing(
                MissingCode.Gloves, lists.SelectMany(list => list).Distinct().Where(material => lists.All(list => list.Contains(material))).ToArray())
            : null;
        return new(rank, product, substance, question.Cloth ?? ClothFor(product, substance), _harm.OfPeople(substance), protection, gloves, missing);
    }

    /// <summary>The first cloth at hand that does not bind it; where all do, the first. A product that is a wipe brings its own.</summary>
    private string? ClothFor(Product product, Substance substance) =>
        product.StrengthOf == StrengthOf.WholeWipe || _here.Cloths.Count == 0 ? null
        : _here.Cloths.FirstOrDefault(cloth => !ClothBinding.Binds(_kb, substance, cloth)) ?? _here.Cloths[0];

    /// <summary>What is on record of protection from a product at strengths that it has, undiluted or diluted.</summary>
    public static IEnumerable<Protection> ProtectionOf(CompiledBase kb, Substance substance) =>
        Known(substance).SelectMany(component => kb.Agents.Upward(component.Agent).SelectMany(node => Records(kb, node, component)));

    private static IEnumerable<Component> Known(Substance substance) => substance.Components.Where(component => !component.OnlyForbids && !component.Unknown);

    private static IEnumerable<Protection> Records(CompiledBase kb, int node, Component component) =>
        kb.Data.Protections.Where(one => one.Agent == kb.Data.Agents[node].Id
            && (one.When.Strength.Statement != AxisStatement.Within || MayReach(component.Strength, one.When.Strength.Range)));

    /// <summary>A concentrate is handled undiluted too: every strength up to that of the stock counts.</summary>
    private static bool MayReach(Interval stock, Interval range) => !new Interval(0m, true, stock.Upper, stock.UpperIncluded).Intersect(range).IsEmpty;

    /// <summary>The glove materials of the nearest record that names any; what is said of every agent names none.</summary>
    private IReadOnlyList<string> GlovesOf(Component component)
    {
        foreach (var node in _kb.Agents.Upward(component.Agent).Where(node => _kb.Data.Agents[node].Id != AgentClass.Root))
        {
            var gloves = Records(_kb, node, component).SelectMany(one => one.Gloves).Select(one => one.Material).Distinct().ToArray();
            if (gloves.Length > 0) return gloves;
        }

        return [];
    }

    private static bool Names(string text, string word) =>
        text.Split(' ', ',', ';', '(', ')').Any(one => string.Equals(one, word, StringComparison.OrdinalIgnoreCase));
}

/// <summary>Clause L10. What is on record where the products of a shelf meet each other and soil; looked up once for each pair.</summary>
internal sealed class Meetings(KnowledgeBase knowledge)
{
    private readonly ConcurrentDictionary<(ProductId, ProductId), MixingAnswer?> _products = [];
    private readonly ConcurrentDictionary<(ProductId, SoilKind), MixingAnswer?> _soils = [];

    public IReadOnlyList<FoundHazard> Of(ProductId one, SoilKind soil) =>
        _soils.GetOrAdd((one, soil), _ => Look(MixingPartner.Of(one), MixingPartner.Of(soil)))?.Hazards ?? [];

    public IReadOnlyList<FoundHazard> Of(ProductId one, ProductId other) => Between(one, other)?.Hazards ?? [];

    /// <summary>Hazards on record of two products that hold only at other strengths than theirs.</summary>
    public IReadOnlyList<FoundHazard> AtOtherStrengths(ProductId one, ProductId other) => Between(one, other)?.AtOtherStrengths ?? [];

    /// <summary>Pairs that never stand in one plan: what must never meet, and nothing on record lets them follow each other.</summary>
    public bool NeverInOnePlan(ProductId one, ProductId other) =>
        Of(one, other)
            .Any(found => found.Hazard.Severity == MixingSeverity.Never && found.Hazard.SeparatedBy.All(separation => separation == Separation.Nothing));

    /// <summary>Pairs that are never used on one part: what must never meet.</summary>
    public bool NeverOnOnePart(ProductId one, ProductId other) => Of(one, other).Any(found => found.Hazard.Severity == MixingSeverity.Never);

    private MixingAnswer? Between(ProductId one, ProductId other) =>
        one == other ? null
        : one.CompareTo(other) > 0 ? Between(other, one)
        : _products.GetOrAdd((one, other), _ => Look(MixingPartner.Of(one), MixingPartner.Of(other)));

    private MixingAnswer? Look(MixingPartner one, MixingPartner other) =>
        Mixture.TryJudge(knowledge, one, other, out var answer, out _) ? answer : null;
}

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

    /// <summary>
    /// The people-hazard class of a substance: 0 where nothing is on record. What an ingredient can do that no class covers nobody knows: the worst.
    /// </summary>
    public int OfPeople(Substance substance) =>
        substance.Components.Any(c => c.Unknown) ? _hazards.Count
        : substance.Components.Where(c => !c.OnlyForbids).SelectMany(c => _kb.Agents.Upward(c.Agent)).SelectMany(node => _kb.Data.Agents[node].Hazards)
        .Select(hazard => _hazards[hazard]).DefaultIfEmpty(0).Max();

    private static Dictionary<T, int> Classes<T>(IReadOnlyList<T> mildestFirst) where T : notnull =>
        mildestFirst.Select((one, place) => (one, place)).ToDictionary(pair => pair.one, pair => pair.place + 1);
}
