using System.Numerics;

namespace Compat.Planning;

/// <summary>An option with all in it that a search compares as whole numbers.</summary>
/// <param name="Source">The option.</param>
/// <param name="Products">Its products, ascending, by their place in <see cref="ReadyTask.Products"/>.</param>
/// <param name="Steps">Its distinct steps.</param>
/// <param name="Excess">By how many classes it is worse than the mildest option of its part.</param>
/// <param name="Largest">Its largest share, in units of one over <see cref="ReadyTask.Unit"/>.</param>
/// <param name="Sum">Its shares together, in the same unit.</param>
internal sealed record ReadyOption(ChoiceOption Source, int[] Products, HashSet<int> Steps, long Excess, BigInteger Largest, BigInteger Sum)
{
    /// <summary>The set of its products, by its place in <see cref="ReadyTask.Bundles"/>.</summary>
    public int Bundle { get; set; }

    /// <summary>Whether no choice with the other is ever better than the same choice with this one in its place.</summary>
    public bool MakesNeedless(ReadyOption other) =>
        Excess <= other.Excess && Largest <= other.Largest && Sum <= other.Sum && Source.ContactTime <= other.Source.ContactTime
        && (Excess < other.Excess || Sum < other.Sum || Source.ContactTime < other.Source.ContactTime || Source.Ordinal < other.Source.Ordinal)
        && Products.All(other.Products.Contains) && Steps.IsSubsetOf(other.Steps);
}

/// <summary>Products that serve some parts together, all of them being needed.</summary>
/// <param name="Products">The products, ascending, by their place.</param>
/// <param name="Within">For each tier of excess the parts it serves within that tier, as bits; words of the tiers one behind the other.</param>
internal sealed record Bundle(int[] Products, ulong[] Within);

/// <summary>A task made ready: impossible and needless options are gone, all names are places in arrays.</summary>
internal sealed class ReadyTask
{
    private readonly ReadyOption[][] _kept;

    public ReadyTask(ChoiceTask task)
    {
        Check(task);
        Parts = task.Parts.OrderBy(part => part.Ordinal).ToArray();
        var possible = Parts.Select(part => part.Options.Where(option => IsPossible(task, option)).ToArray()).ToArray();
        Products = possible.SelectMany((options, part) => options.SelectMany(option => option.Products).Select(used => (used.Product, Part: part))).Distinct()
            .GroupBy(one => one.Product).OrderByDescending(group => group.Count()).ThenBy(group => group.Key).Select(group => group.Key).ToArray();
        Unit = possible.SelectMany(options => options).SelectMany(option => option.Shares.Values)
            .Aggregate(BigInteger.One, (unit, share) => unit / BigInteger.GreatestCommonDivisor(unit, share.Denominator) * share.Denominator);
        var places = Products.Select((product, place) => (product, place)).ToDictionary(one => one.product, one => one.place);
        _kept = possible.Select(options => Ready(options, places)).ToArray();
        Tiers = _kept.SelectMany(options => options).Select(option => option.Excess).Append(0L).Distinct().OrderBy(excess => excess).ToArray();
        Words = (Parts.Count + 63) / 64;
        Bundles = Bundled();
        Excluded = new bool[Products.Count, Products.Count];
        foreach (var pair in task.NeverInOnePlan)
        {
            if (!places.TryGetValue(pair.One, out var one) || !places.TryGetValue(pair.Other, out var other)) continue;
            Excluded[one, other] = Excluded[other, one] = true;
        }
    }

    /// <summary>The parts, by ordinal.</summary>
    public IReadOnlyList<ChoicePart> Parts { get; }

    /// <summary>The products that any option uses; those that serve most come first.</summary>
    public IReadOnlyList<int> Products { get; }

    /// <summary>All shares are whole multiples of one over this.</summary>
    public BigInteger Unit { get; }

    /// <summary>The excesses that occur, ascending; the first is 0.</summary>
    public IReadOnlyList<long> Tiers { get; }

    /// <summary>How many words the bits of all parts take.</summary>
    public int Words { get; }

    /// <summary>The sets of products that options use.</summary>
    public IReadOnlyList<Bundle> Bundles { get; }

    /// <summary>Whether two products are never in one plan.</summary>
    public bool[,] Excluded { get; }

    /// <summary>The options of a part that are worth a look, by ordinal.</summary>
    public IReadOnlyList<ReadyOption> Options(int part) => _kept[part];

    private static bool IsPossible(ChoiceTask task, ChoiceOption option) =>
        option.Shares.Values.All(share => share <= Fraction.One)
        && !task.NeverOnOnePart.Any(pair => option.Products.Any(used => used.Product == pair.One) && option.Products.Any(used => used.Product == pair.Other));

    private static void Check(ChoiceTask task)
    {
        if (task.Parts.Select(part => part.Ordinal).Distinct().Count() < task.Parts.Count) throw new ArgumentException("two parts have one ordinal", nameof(task));
        if (task.Parts.Any(part => part.Options.Select(option => option.Ordinal).Distinct().Count() < part.Options.Count))
            throw new ArgumentException("two options of a part have one ordinal", nameof(task));
        if (task.NeverInOnePlan.Concat(task.NeverOnOnePart).Any(pair => pair.One == pair.Other)) throw new ArgumentException("a product excludes itself", nameof(task));
        if (task.Parts.SelectMany(part => part.Options).SelectMany(option => option.Shares.Values).Any(share => share.Numerator.Sign < 0))
            throw new ArgumentException("a share is below nought", nameof(task));
    }

    private ReadyOption[] Ready(ChoiceOption[] options, Dictionary<int, int> places)
    {
        if (options.Length == 0) return [];
        var mildest = options.Min(option => (long)option.Harm);
        var all = options.Select(option =>
        {
            var shares = option.Shares.Values.Select(share => share.Numerator * (Unit / share.Denominator)).ToArray();
            return new ReadyOption(
                option,
                option.Products.Select(used => places[used.Product]).Distinct().OrderBy(place => place).ToArray(),
                [.. option.Steps],
                option.Harm - mildest,
                shares.Aggregate(BigInteger.Zero, BigInteger.Max),
                shares.Aggregate(BigInteger.Zero, BigInteger.Add));
        }).ToArray();
        return all.Where(option => !all.Any(other => other != option && other.MakesNeedless(option))).OrderBy(option => option.Source.Ordinal).ToArray();
    }

    private Bundle[] Bundled()
    {
        var bundles = new List<Bundle>();
        var known = new Dictionary<string, int>();
        for (var part = 0; part < _kept.Length; part++)
        {
            foreach (var option in _kept[part])
            {
                var name = string.Join(" ", option.Products);
                if (!known.TryGetValue(name, out var place))
                {
                    known[name] = place = bundles.Count;
                    bundles.Add(new(option.Products, new ulong[Tiers.Count * Words]));
                }

                option.Bundle = place;
                for (var tier = 0; tier < Tiers.Count; tier++)
                    if (option.Excess <= Tiers[tier]) bundles[place].Within[(tier * Words) + (part / 64)] |= 1UL << (part % 64);
            }
        }

        return bundles.ToArray();
    }
}
