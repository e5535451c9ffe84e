using System.Numerics;

namespace Compat.Planning;

/// <summary>A set of products, and the options of each part that are still to be compared once harm and shares are at their least.</summary>
internal sealed class ProductSet
{
    private readonly ReadyTask _task;
    private readonly int[] _products;
    private readonly List<int> _served = [];
    private readonly List<IReadOnlyList<ReadyOption>> _options = [];

    public ProductSet(ReadyTask task, IReadOnlyList<int> products)
    {
        _task = task;
        _products = products.Select(place => task.Products[place]).OrderBy(product => product).ToArray();
        var holds = task.Bundles.Select(bundle => bundle.Products.All(products.Contains)).ToArray();
        for (var part = 0; part < task.Parts.Count; part++)
        {
            var options = task.Options(part).Where(option => holds[option.Bundle]).ToArray();
            if (options.Length == 0) continue;
            var mildest = options.Min(option => option.Excess);
            var mild = options.Where(option => option.Excess == mildest).ToArray();
            _served.Add(part);
            _options.Add(mild);
            Largest = BigInteger.Max(Largest, mild.Min(option => option.Largest));
        }

        for (var i = 0; i < _options.Count; i++)
        {
            var spared = _options[i].Where(option => option.Largest <= Largest).ToArray();
            var least = spared.Min(option => option.Sum);
            _options[i] = spared.Where(option => option.Sum == least).ToArray();
            Sum += least;
        }
    }

    private BigInteger Largest { get; set; } = BigInteger.Zero;

    private BigInteger Sum { get; set; } = BigInteger.Zero;

    public int CompareShares(ProductSet other) => Largest == other.Largest ? Sum.CompareTo(other.Sum) : Largest.CompareTo(other.Largest);

    public int CompareProducts(ProductSet other)
    {
        for (var i = 0; i < Math.Min(_products.Length, other._products.Length); i++)
            if (_products[i] != other._products[i]) return _products[i].CompareTo(other._products[i]);
        return _products.Length.CompareTo(other._products.Length);
    }

    /// <summary>The best choice of options; the reach of the set is known.</summary>
    public Choice Choose(ProductReach reach, CancellationToken cancel)
    {
        var chosen = new StepSearch(_options, cancel).Solve();
        return new()
        {
            Products = _products,
            Served = _served.Select((part, i) => new ChosenOption(_task.Parts[part], chosen[i].Source, chosen[i].Excess)).ToArray(),
            NotServed = _task.Parts.Where((_, part) => !_served.Contains(part)).ToArray(),
            Cost = new(
                _task.Parts.Count - reach.Served,
                reach.Worse,
                reach.Excess,
                _products.Length,
                new(Largest, _task.Unit),
                new(Sum, _task.Unit),
                chosen.SelectMany(option => option.Steps).Distinct().Count(),
                chosen.Sum(option => option.Source.ContactTime)),
        };
    }
}
