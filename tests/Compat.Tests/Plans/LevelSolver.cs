using System.Numerics;
using Compat.Planning;
using Google.OrTools.Sat;

namespace Compat.Tests.Plans;

/// <summary>
/// States a task as constraints and asks a general-purpose solver for the best value of one level after another, each with those before it held.
/// </summary>
internal sealed class LevelSolver
{
    private readonly CpModel _model = new();
    private readonly ChoicePart[] _parts;
    private readonly List<(ChoicePart Part, ChoiceOption Option, long Excess, BoolVar Chosen)> _options = [];

    public LevelSolver(ChoiceTask task)
    {
        _parts = task.Parts.OrderBy(part => part.Ordinal).ToArray();
        foreach (var part in _parts)
        {
            var possible = part.Options.Where(option => option.Shares.Values.All(share => share <= Fraction.One)
                && !task.NeverOnOnePart.Any(pair => Uses(option, pair.One) && Uses(option, pair.Other))).ToArray();
            _options.AddRange(
                possible.Select(
                    option => (part, option, (long)option.Harm - possible.Min(one => one.Harm), _model.NewBoolVar($"{part.Ordinal}:{option.Ordinal}"))));
            _model.AddAtMostOne(Of(part).Select(one => one.Chosen));
        }

        var products = Held(option => option.Products.Select(used => used.Product));
        var steps = Held(option => option.Steps);
        _model.Add(LinearExpr.Sum(products.Values) <= task.MaxProducts);
        foreach (var pair in task.NeverInOnePlan)
            if (products.TryGetValue(pair.One, out var one) && products.TryGetValue(pair.Other, out var other)) _model.AddAtMostOne([one, other]);

        NotServed = (int)(_parts.Length - Most(Sum(_ => 1)));
        PartsWorse = (int)Least(Sum(one => one.Excess > 0 ? 1 : 0));
        HarmExcess = Least(Sum(one => one.Excess));
        ProductCount = (int)Least(LinearExpr.Sum(products.Values));
        Unit = _options.SelectMany(one => one.Option.Shares.Values)
            .Aggregate(BigInteger.One, (unit, share) => unit * share.Denominator / BigInteger.GreatestCommonDivisor(unit, share.Denominator));
        var largest = _model.NewIntVar(0, (long)Unit, "largest");
        foreach (var (_, option, _, chosen) in _options)
            foreach (var share in option.Shares.Values) _model.Add(largest >= chosen * Whole(share));
        LargestShare = new(Least(largest), Unit);
        ShareSum = new(Least(Sum(one => one.Option.Shares.Values.Sum(Whole))), Unit);
        Steps = (int)Least(LinearExpr.Sum(steps.Values));
        ContactTime = Least(Sum(one => (long)one.Option.ContactTime));
        Products = FirstOf(products);
        Options = FirstOptions();
    }

    public int NotServed { get; }

    public int PartsWorse { get; }

    public long HarmExcess { get; }

    public int ProductCount { get; }

    public Fraction LargestShare { get; }

    public Fraction ShareSum { get; }

    public int Steps { get; }

    public long ContactTime { get; }

    public IReadOnlyList<int> Products { get; }

    public string Options { get; }

    private BigInteger Unit { get; }

    private static bool Uses(ChoiceOption option, int product) => option.Products.Any(used => used.Product == product);

    private long Whole(Fraction share) => (long)(share.Numerator * Unit / share.Denominator);

    private IEnumerable<(ChoicePart Part, ChoiceOption Option, long Excess, BoolVar Chosen)> Of(ChoicePart part) => _options.Where(one => one.Part == part);

    private LinearExpr Sum(Func<(ChoicePart Part, ChoiceOption Option, long Excess, BoolVar Chosen), long> weight) =>
        LinearExpr.WeightedSum(_options.Select(one => one.Chosen), _options.Select(weight));

    /// <summary>For each key whether a chosen option names it.</summary>
    private SortedDictionary<int, BoolVar> Held(Func<ChoiceOption, IEnumerable<int>> keys)
    {
        var held = new SortedDictionary<int, BoolVar>();
        foreach (var group in _options.SelectMany(one => keys(one.Option).Distinct().Select(key => (key, one.Chosen))).GroupBy(one => one.key))
        {
            var any = held[group.Key] = _model.NewBoolVar("held" + group.Key);
            foreach (var (_, chosen) in group) _model.AddImplication(chosen, any);
            _model.AddBoolOr(group.Select(one => one.Chosen)).OnlyEnforceIf(any);
        }

        return held;
    }

    private long Most(LinearExpr level) => -Least(-level);

    /// <summary>The least value of a level, held from then on.</summary>
    private long Least(LinearExpr level)
    {
        _model.Minimize(level);
        var solver = Solve();
        var least = solver.Value(level);
        _model.Add(level == least);
        return least;
    }

    private CpSolver Solve()
    {
        var solver = new CpSolver { StringParameters = "num_workers:1" };
        var status = solver.Solve(_model);
        Assert.True(status == CpSolverStatus.Optimal, status.ToString());
        return solver;
    }

    /// <summary>Of lists of one length the first: each product in turn is held where it can be.</summary>
    private int[] FirstOf(SortedDictionary<int, BoolVar> held) =>
        held.Count == 0 ? [] : Ranked(held.Values.Select((one, place) => (one, 1L << (held.Count - 1 - place))), held.Keys);

    private int[] Ranked(IEnumerable<(BoolVar Var, long Weight)> weighted, IEnumerable<int> keys)
    {
        var all = weighted.ToArray();
        var sum = Most(LinearExpr.WeightedSum(all.Select(one => one.Var), all.Select(one => one.Weight)));
        return keys.Where((_, place) => (sum & all[place].Weight) != 0).ToArray();
    }

    /// <summary>Options are compared part by part, those of a few parts at a time as digits of one number; not served is above every option.</summary>
    private string FirstOptions()
    {
        var chosen = new List<string>();
        var not = _parts.SelectMany(part => part.Options).Select(option => option.Ordinal + 1L).DefaultIfEmpty(1L).Max();
        foreach (var parts in _parts.Chunk((int)(40 / Math.Log2(not + 1))))
        {
            var level = LinearExpr.Constant(0);
            foreach (var part in parts)
            {
                level *= not + 1;
                level += LinearExpr.WeightedSum(Of(part).Select(one => one.Chosen), Of(part).Select(one => one.Option.Ordinal - not)) + not;
            }

            var digits = Least(level);
            foreach (var part in parts.Reverse())
            {
                if (digits % (not + 1) != not) chosen.Add($"{part.Ordinal}:{digits % (not + 1)}");
                digits /= not + 1;
            }

            chosen.Sort((one, other) => int.Parse(one.Split(':')[0], null).CompareTo(int.Parse(other.Split(':')[0], null)));
        }

        return string.Join(", ", chosen);
    }
}
