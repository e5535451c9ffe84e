namespace Compat.Planning;

/// <summary>A product of the shelf as the site can use it.</summary>
internal sealed record ShelfProduct(int Rank, Product Product, Substance Substance, string? Cloth, int PeopleHazard, IReadOnlyList<Protection> Protection, IReadOnlyList<string> Gloves, MissingThing? Missing);

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
        var agents = substance.Components.Where(c => !c.OnlyForbids && !c.Unknown).ToArray();
        var protection = agents.SelectMany(c => _kb.Agents.Upward(c.Agent).SelectMany(node => Records(node, c))).Distinct().OrderBy(one => one.Id).ToArray();
        var lists = agents.Select(GlovesOf).Where(list => list.Count > 0).ToArray();
        var held = _here.Gloves.Where(glove => lists.All(list => list.Any(material => Names(material, glove))) && !protection.Any(one => one.GlovesFail.Contains(glove, StringComparer.OrdinalIgnoreCase))).ToArray();
        var gloves = lists.SelectMany(list => list).Where(material => held.Any(glove => Names(material, glove))).Distinct().ToArray();
        var missing = lists.Length > 0 && _here.Gloves.Count > 0 && held.Length == 0 ? new MissingThing(MissingCode.Gloves, lists.SelectMany(list => list).Distinct().Where(material => lists.All(list => list.Contains(material))).ToArray()) : null;
        return new(rank, product, substance, question.Cloth ?? ClothFor(product, substance), _harm.OfPeople(substance), protection, gloves, missing);
    }

    /// <summary>The first cloth at hand that does not bind it; where all do, the first. A product that is a wipe brings its own.</summary>
    private string? ClothFor(Product product, Substance substance) =>
        product.StrengthOf == StrengthOf.WholeWipe || _here.Cloths.Count == 0 ? null
        : _here.Cloths.FirstOrDefault(cloth => !ClothBinding.Binds(_kb, substance, cloth)) ?? _here.Cloths[0];

    private IEnumerable<Protection> Records(int node, Component component) =>
        _kb.Data.Protections.Where(one => one.Agent == _kb.Data.Agents[node].Id && (one.When.Strength.Statement != AxisStatement.Within || MayReach(component.Strength, one.When.Strength.Range)));

    /// <summary>A concentrate is handled undiluted too: every strength up to that of the stock counts.</summary>
    private static bool MayReach(Interval stock, Interval range) => !new Interval(0m, true, stock.Upper, stock.UpperIncluded).Intersect(range).IsEmpty;

    /// <summary>The glove materials of the nearest record that names any; what is said of every agent names none.</summary>
    private IReadOnlyList<string> GlovesOf(Component component)
    {
        foreach (var node in _kb.Agents.Upward(component.Agent).Where(node => _kb.Data.Agents[node].Id != AgentClass.Root))
        {
            var gloves = Records(node, component).SelectMany(one => one.Gloves).Select(one => one.Material).Distinct().ToArray();
            if (gloves.Length > 0) return gloves;
        }

        return [];
    }

    private static bool Names(string text, string word) =>
        text.Split(' ', ',', ';', '(', ')').Any(one => string.Equals(one, word, StringComparison.OrdinalIgnoreCase));
}
