using System.Numerics;

namespace Compat.Planning;

/// <summary>Finds the best choice of options for the parts of a plan. Exact: no choice is better, and of equal ones the ordinals decide.</summary>
/// <remarks>
/// <para>The levels, the first that differs deciding:</para>
/// <list type="number">
/// <item>Most parts served. All parts count the same.</item>
/// <item>Least harm beyond the mildest. A part's mildest option is the one of the least harm among all its own, whatever products the plan may hold and however
/// many. What counts is first how many parts are given an option of a worse class than that, then by how many classes over all parts. The sentence it stands
/// for
/// is 'no part is given an agent of a worse class than the mildest product of the shelf that serves it, unless that would need more products than the plan may
/// hold'. Where none need be worse, none is, since a choice without any has the count nought and is never more than allowed; where some must be, the count
/// keeps
/// the sentence for as many parts as can be, each part being promised the same, and the sum keeps the others as near to it as can be. The harm of an option is
/// the worst among its products, for a harsh cleaner is not made good by a mild disinfectant. A choice is never made to serve fewer parts for it, nor are
/// products spared for it: serving stands before, the count of products behind.</item>
/// <item>Fewest products.</item>
/// <item>Least share of the limits of use: first the largest share that any part gives away for any mechanism, then the sum of all. Exact fractions.</item>
/// <item>Fewest distinct steps: a step that serves several parts counts once.</item>
/// <item>Least contact time, added up over the parts.</item>
/// <item>The products, as ascending lists of ordinals, the least first; then the options, from the part of the least ordinal on, being served before
/// not.</item>
/// </list>
/// <para>How: the products alone decide the first three levels, since with the products given each part is served by its mildest option among them without
/// regard
/// to the others. So every set of products is tried, the smallest sets first, until one serves each part as mildly as anything could. Of the smallest sets that
/// nothing goes beyond, shares are compared part by part; only steps tie the parts together, and these are searched within the set (<see
/// cref="StepSearch"/>).</para>
/// </remarks>
internal sealed class ChoiceSolver
{
    private const long NotServed = long.MaxValue;

    private readonly ChoicePart[] _parts;
    private readonly int[] _products;
    private readonly bool[,] _apart;
    private readonly BigInteger _unit;
    private readonly List<Bundle>[] _bundles;
    private readonly List<(Reach Reach, List<int[]> Sets)> _best = [];
    private readonly CancellationToken _cancel;

    private ChoiceSolver(ChoiceTask task, CancellationToken cancel)
    {
        Check(task);
        _cancel = cancel;
        _parts = task.Parts.OrderBy(part => part.Ordinal).ToArray();
        _products = _parts.SelectMany(part => part.Options).SelectMany(option => option.Products).Select(used => used.Product).Distinct()
            .OrderBy(product => product).ToArray();
        _apart = Pairs(task.NeverInOnePlan);
        var never = Pairs(task.NeverOnOnePart);
        var possible = _parts.Select(
            part => part.Options.Where(option => option.Shares.Values.All(share => share <= Fraction.One) && !AnyOf(never, Places(option))).ToArray())
            .ToArray();
        _unit = possible.SelectMany(options => options).SelectMany(option => option.Shares.Values)
            .Aggregate(BigInteger.One, (unit, share) => unit / BigInteger.GreatestCommonDivisor(unit, share.Denominator) * share.Denominator);
        _bundles = Bundles(possible);
        Search(Math.Min(task.MaxProducts, _products.Length), new(possible.Count(options => options.Length == 0), 0, 0));
    }

    /// <summary>The best choice.</summary>
    /// <param name="task">What is chosen from; <see cref="ArgumentException"/> where two parts or two options of one have the same ordinal, a product excludes
    /// itself, or a share is below nought.</param>
    /// <param name="cancel">Stops the search by an <see cref="OperationCanceledException"/>: a task can be made hard on purpose.</param>
    public static Choice Solve(ChoiceTask task, CancellationToken cancel = default) => new ChoiceSolver(task, cancel).Of(task.MaxProducts);

    /// <summary>The best choice, and the best one with at least one product fewer; null where it uses none.</summary>
    public static (Choice Choice, OneProductFewer? Fewer) SolveBoth(ChoiceTask task, CancellationToken cancel = default)
    {
        var solver = new ChoiceSolver(task, cancel);
        var choice = solver.Of(task.MaxProducts);
        return (choice, choice.Products.Count == 0 ? null : new(choice, solver.Of(choice.Products.Count - 1)));
    }

    private static void Check(ChoiceTask task)
    {
        if (task.MaxProducts < 0) throw new ArgumentOutOfRangeException(nameof(task), "the number of products is not below nought");
        if (task.Parts.Select(part => part.Ordinal).Distinct().Count() < task.Parts.Count)
            throw new ArgumentException("two parts have one ordinal", nameof(task));
        if (task.Parts.Any(part => part.Options.Select(option => option.Ordinal).Distinct().Count() < part.Options.Count))
            throw new ArgumentException("two options of a part have one ordinal", nameof(task));
        if (task.NeverInOnePlan.Concat(task.NeverOnOnePart).Any(pair => pair.One == pair.Other))
            throw new ArgumentException("a product excludes itself", nameof(task));
        if (task.Parts.SelectMany(part => part.Options).SelectMany(option => option.Shares.Values).Any(share => share.Numerator.Sign < 0))
            throw new ArgumentException("a share is below nought", nameof(task));
    }

    /// <summary>The products of an option by their place, ascending.</summary>
    private int[] Places(ChoiceOption option) =>
        option.Products.Select(used => Array.BinarySearch(_products, used.Product)).Distinct().OrderBy(place => place).ToArray();

    private bool[,] Pairs(IReadOnlyList<ProductPair> pairs)
    {
        var held = new bool[_products.Length, _products.Length];
        foreach (var pair in pairs)
        {
            var (one, other) = (Array.BinarySearch(_products, pair.One), Array.BinarySearch(_products, pair.Other));
            if (one >= 0 && other >= 0) held[one, other] = held[other, one] = true;
        }

        return held;
    }

    private static bool AnyOf(bool[,] pairs, int[] set)
    {
        for (var i = 1; i < set.Length; i++)
        {
            for (var j = 0; j < i; j++)
                if (pairs[set[i], set[j]]) return true;
        }

        return false;
    }

    /// <summary>
    /// The options by the set of their products; the sets by the place of their last product, one further on: those without a product stand first.
    /// </summary>
    private List<Bundle>[] Bundles(ChoiceOption[][] possible)
    {
        var bundles = Enumerable.Range(0, _products.Length + 1).Select(_ => new List<Bundle>()).ToArray();
        for (var part = 0; part < possible.Length; part++)
        {
            var mildest = possible[part].Select(option => (long)option.Harm).DefaultIfEmpty().Min();
            foreach (var option in possible[part])
            {
                var places = Places(option);
                var ending = bundles[places.Length == 0 ? 0 : places[places.Length - 1] + 1];
                var bundle = ending.Find(one => one.Products.SequenceEqual(places));
                if (bundle is null) ending.Add(bundle = new(places, _parts.Length));
                var shares = option.Shares.Values.Select(share => share.Numerator * (_unit / share.Denominator)).ToArray();
                bundle.Add(part,
                    new(option, option.Harm - mildest, shares.Aggregate(BigInteger.Zero, BigInteger.Max), shares.Aggregate(BigInteger.Zero, BigInteger.Add)));
            }
        }

        return bundles;
    }

    /// <summary>For each number of products with which more is reached than with fewer: the best reach, and all sets that have it, by their products.</summary>
    private void Search(int most, Reach ideal)
    {
        var best = new Reach(int.MaxValue, 0, 0);
        for (var size = 0; size <= most && best != ideal; size++)
        {
            var sets = new List<int[]>();
            foreach (var set in Sets(size).Where(set => !AnyOf(_apart, set)))
            {
                _cancel.ThrowIfCancellationRequested();
                var reach = ReachOf(set);
                var order = reach.CompareTo(best);
                if (order > 0 || (order == 0 && sets.Count == 0)) continue;
                if (order < 0) sets.Clear();
                sets.Add((int[])set.Clone());
                best = reach;
            }

            if (sets.Count > 0) _best.Add((best, sets));
        }
    }

    /// <summary>All sets of so many products, the first by their products first; one array, changed in between.</summary>
    private IEnumerable<int[]> Sets(int size)
    {
        var set = Enumerable.Range(0, size).ToArray();
        while (true)
        {
            yield return set;
            var last = size - 1;
            while (last >= 0 && set[last] == _products.Length - size + last) last--;
            if (last < 0) yield break;
            set[last]++;
            for (var i = last + 1; i < size; i++) set[i] = set[i - 1] + 1;
        }
    }

    private IEnumerable<Bundle> Within(int[] set)
    {
        foreach (var bundle in _bundles[0]) yield return bundle;
        foreach (var product in set)
        {
            foreach (var bundle in _bundles[product + 1])
                if (Array.TrueForAll(bundle.Products, one => Array.IndexOf(set, one) >= 0)) yield return bundle;
        }
    }

    private Reach ReachOf(int[] set)
    {
        var mildest = Enumerable.Repeat(NotServed, _parts.Length).ToArray();
        foreach (var bundle in Within(set))
        {
            for (var part = 0; part < mildest.Length; part++) mildest[part] = Math.Min(mildest[part], bundle.Mildest[part]);
        }

        var served = mildest.Where(excess => excess < NotServed).ToArray();
        return new(mildest.Length - served.Length, served.Count(excess => excess > 0), served.Sum());
    }

    /// <summary>The best choice of at most so many products.</summary>
    private Choice Of(int most)
    {
        var (reach, sets) = _best.Last(one => one.Sets[0].Length <= most);
        var largest = Least(ref sets,
            set => Mildest(set).Where(Serve).Select(options => options.Min(option => option.Largest)).Aggregate(BigInteger.Zero, BigInteger.Max));
        var sum = Least(ref sets, set => Spared(set, largest).Where(Serve).Aggregate(BigInteger.Zero, (all, options) => all + options[0].Sum));
        Choice? best = null;
        foreach (var set in sets)
        {
            var options = Spared(set, largest);
            var served = Enumerable.Range(0, _parts.Length).Where(part => Serve(options[part])).ToArray();
            var steps = StepSearch.Solve(served.Select(part => options[part].Select(option => option.Source)).ToArray(), _cancel);
            var cost = new ChoiceCost(
                reach.NotServed, reach.Worse, reach.Excess, set.Length, new(largest, _unit), new(sum, _unit),
                steps.SelectMany(option => option.Steps).Distinct().Count(), steps.Sum(option => option.ContactTime));
            if (best is not null && best.Cost.CompareTo(cost) <= 0) continue;
            best = new()
            {
                Products = set.Select(place => _products[place]).ToArray(),
                Served = served.Select((part, i) => new ChosenOption(_parts[part], steps[i], options[part][0].Excess)).ToArray(),
                NotServed = _parts.Where((_, part) => !Serve(options[part])).ToArray(),
                Cost = cost,
            };
        }

        return best!;
    }

    /// <summary>The least value that a set has; only the sets that have it are left.</summary>
    private BigInteger Least(ref List<int[]> sets, Func<int[], BigInteger> value)
    {
        var left = new List<int[]>();
        var least = BigInteger.Zero;
        foreach (var set in sets)
        {
            _cancel.ThrowIfCancellationRequested();
            var here = value(set);
            if (left.Count > 0 && here > least) continue;
            if (here < least) left.Clear();
            left.Add(set);
            least = here;
        }

        sets = left;
        return least;
    }

    private static bool Serve(ReadyOption[] options) => options.Length > 0;

    /// <summary>Of each part the mildest options within a set; none where the set does not serve it.</summary>
    private ReadyOption[][] Mildest(int[] set)
    {
        var within = Within(set).ToArray();
        return _parts.Select((_, part) =>
        {
            var mildest = within.Select(bundle => bundle.Mildest[part]).DefaultIfEmpty(NotServed).Min();
            return mildest == NotServed ? [] : within.SelectMany(bundle => bundle.Options[part]).Where(option => option.Excess == mildest).ToArray();
        }).ToArray();
    }

    /// <summary>Of these the ones that give least of the limits of use away, none of them more than the largest share.</summary>
    private ReadyOption[][] Spared(int[] set, BigInteger largest) => Mildest(set).Select(options =>
    {
        var kept = options.Where(option => option.Largest <= largest).ToArray();
        var least = kept.Select(option => option.Sum).DefaultIfEmpty(BigInteger.Zero).Min();
        return kept.Where(option => option.Sum == least).ToArray();
    }).ToArray();

    /// <summary>An option, by how many classes it is worse than the mildest of its part, and its shares in units of one over the common denominator.</summary>
    private sealed record ReadyOption(ChoiceOption Source, long Excess, BigInteger Largest, BigInteger Sum);

    /// <summary>All options that use just these products, by their part.</summary>
    private sealed class Bundle(int[] products, int parts)
    {
        public int[] Products { get; } = products;

        public List<ReadyOption>[] Options { get; } = Enumerable.Range(0, parts).Select(_ => new List<ReadyOption>()).ToArray();

        /// <summary>The least excess of each part.</summary>
        public long[] Mildest { get; } = Enumerable.Repeat(NotServed, parts).ToArray();

        public void Add(int part, ReadyOption option)
        {
            Options[part].Add(option);
            Mildest[part] = Math.Min(Mildest[part], option.Excess);
        }
    }

    /// <summary>How far a set of products goes: the levels of a choice that its products alone decide. The lesser is the better one.</summary>
    /// <param name="NotServed">Parts not served.</param>
    /// <param name="Worse">Parts whose mildest option within the set is worse than their mildest of all.</param>
    /// <param name="Excess">By how many classes, over all parts.</param>
    private readonly record struct Reach(int NotServed, int Worse, long Excess) : IComparable<Reach>
    {
        public int CompareTo(Reach other) => (NotServed, Worse, Excess).CompareTo((other.NotServed, other.Worse, other.Excess));
    }
}
