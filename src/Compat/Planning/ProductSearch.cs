namespace Compat.Planning;

/// <summary>Walks sets of products by branch and bound: for each product in turn with it and without it, as long as what may still be added could matter.</summary>
/// <remarks>
/// The bound: each part that further products serve needs at least one of them, so the parts each of them could help to serve, added up over the best of them,
/// are never fewer than what is gained; nor can more be gained than all of them together could serve.
/// </remarks>
internal sealed class ProductSearch
{
    private readonly ReadyTask _task;
    private readonly int _tiers;
    private readonly int _words;
    private readonly CancellationToken _cancel;
    private readonly List<int> _chosen = [];
    private readonly bool[] _isChosen;
    private readonly int[] _blocked;
    private ProductReach _goal;
    private bool _mustExceed;
    private Action<IReadOnlyList<int>>? _found;

    public ProductSearch(ReadyTask task, CancellationToken cancel)
    {
        _task = task;
        _tiers = task.Tiers.Count;
        _words = task.Words;
        _cancel = cancel;
        _isChosen = new bool[task.Products.Count];
        _blocked = new int[task.Products.Count];
    }

    /// <summary>The best that any set of at most so many products reaches.</summary>
    public ProductReach Best(int size)
    {
        _goal = new(-1, 0, 0);
        _mustExceed = true;
        _found = null;
        Start(size);
        return _goal;
    }

    /// <summary>Names every set of at most so many products that reaches a goal which none exceeds.</summary>
    /// <param name="size">The most products.</param>
    /// <param name="goal">The goal.</param>
    /// <param name="found">Told of each set, by the places of its products; the list changes afterwards.</param>
    public void Each(int size, ProductReach goal, Action<IReadOnlyList<int>> found)
    {
        _goal = goal;
        _mustExceed = false;
        _found = found;
        Start(size);
    }

    private void Start(int size)
    {
        var within = new ulong[_tiers * _words];
        var open = new List<int>();
        for (var b = 0; b < _task.Bundles.Count; b++)
        {
            if (_task.Bundles[b].Products.Length > 0) open.Add(b);
            else within = Bits.Union(within, _task.Bundles[b].Within);
        }

        Walk(within, 0, size, open);
    }

    private void Walk(ulong[] within, int from, int room, List<int> open)
    {
        _cancel.ThrowIfCancellationRequested();
        var counts = Counts(within);
        Visit(counts);
        if (room == 0) return;
        var helps = new ulong[_isChosen.Length][];
        var all = within;
        var still = new List<int>();
        foreach (var b in open)
        {
            var bundle = _task.Bundles[b];
            if (Missing(bundle, from) is not (> 0 and var missing) || missing > room) continue;
            still.Add(b);
            all = Bits.Union(all, bundle.Within);
            foreach (var product in bundle.Products)
                if (!_isChosen[product]) helps[product] = helps[product] is { } before ? Bits.Union(before, bundle.Within) : bundle.Within;
        }

        var gains = helps.Select(one => one is null ? null : Counts(Bits.Without(one, within))).ToArray();
        var bounds = Bounds(counts, Counts(all), gains, from, room);
        for (var product = from; product < _isChosen.Length; product++)
        {
            if (bounds[product] is not { } bound || !Matters(ProductReach.Of(bound, _task.Tiers))) continue;
            Take(product, 1);
            var next = within;
            foreach (var b in still)
                if (_task.Bundles[b].Products.All(one => _isChosen[one])) next = Bits.Union(next, _task.Bundles[b].Within);
            Walk(next, product + 1, room - 1, still);
            Take(product, -1);
        }
    }

    /// <summary>How many products of a bundle are still to be added; -1 where one can be no more.</summary>
    private int Missing(Bundle bundle, int from)
    {
        var missing = 0;
        foreach (var product in bundle.Products)
        {
            if (_isChosen[product]) continue;
            if (product < from || _blocked[product] > 0) return -1;
            missing++;
        }

        return missing;
    }

    /// <summary>For each product that may come next what the set can come to at most, of products behind it only; null where it may not.</summary>
    private int[]?[] Bounds(int[] counts, int[] ceiling, int[]?[] gains, int from, int room)
    {
        var bounds = new int[]?[gains.Length];
        var best = new int[_tiers, room];
        for (var product = gains.Length - 1; product >= from; product--)
        {
            if (gains[product] is not { } gain) continue;
            var bound = new int[_tiers];
            for (var t = 0; t < _tiers; t++)
            {
                bound[t] = counts[t] + gain[t];
                for (var r = 0; r < room - 1; r++) bound[t] += best[t, r];
                bound[t] = Math.Min(bound[t], ceiling[t]);
                var value = gain[t];
                for (var r = 0; r < room - 1; r++)
                    if (value > best[t, r]) (best[t, r], value) = (value, best[t, r]);
            }

            bounds[product] = bound;
        }

        return bounds;
    }

    private void Take(int product, int step)
    {
        _isChosen[product] = step > 0;
        if (step > 0) _chosen.Add(product);
        else _chosen.RemoveAt(_chosen.Count - 1);
        for (var other = 0; other < _blocked.Length; other++)
            if (_task.Excluded[product, other]) _blocked[other] += step;
    }

    private int[] Counts(ulong[] set)
    {
        var counts = new int[_tiers];
        for (var t = 0; t < _tiers; t++) counts[t] = Bits.Count(set, t * _words, _words);
        return counts;
    }

    private bool Matters(ProductReach bound) => _mustExceed ? bound.CompareTo(_goal) > 0 : bound.CompareTo(_goal) >= 0;

    private void Visit(int[] counts)
    {
        var reach = ProductReach.Of(counts, _task.Tiers);
        if (!Matters(reach)) return;
        if (_mustExceed) _goal = reach;
        else _found!(_chosen);
    }
}
