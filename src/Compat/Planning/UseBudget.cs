namespace Compat.Planning;

/// <summary>Clause L11. How many uses of a product a part stands, as far as a mechanism is concerned.</summary>
/// <param name="Product">The product.</param>
/// <param name="Uses">The limit: at least 1.</param>
public sealed record UseLimit(ProductId Product, long Uses);

/// <summary>
/// How often a part stands a plan: the uses of all products that count towards one mechanism add up, each as its share of its own limit, to one at most.
/// </summary>
public sealed record UseBudget
{
    /// <summary>Makes a budget; <see cref="ArgumentException"/> where there is no limit or one is below 1.</summary>
    /// <param name="mechanism">What the uses count towards.</param>
    /// <param name="limits">The limit of each use in one run of the plan; a product used twice in a run stands twice.</param>
    /// <param name="mostShare">What the shares may add up to, above 0 to 1,000,000.</param>
    public UseBudget(Mechanism mechanism, IReadOnlyList<UseLimit> limits, decimal mostShare = 1m)
    {
        ArgumentNullException.ThrowIfNull(limits);
        if (mostShare is <= 0m or > 1_000_000m)
            throw new ArgumentException("what the shares may add up to lies above 0 and up to 1,000,000", nameof(mostShare));
        MostShare = mostShare;
        if (limits.Count == 0) throw new ArgumentException("a budget has a limit", nameof(limits));
        if (limits.Any(limit => limit is not { Uses: >= 1 })) throw new ArgumentException("a limit of uses is at least 1", nameof(limits));
        Mechanism = mechanism;
        Limits = Frozen.Of(limits);
    }

    /// <summary>What the uses count towards.</summary>
    public Mechanism Mechanism { get; }

    /// <summary>The limit of each use in one run of the plan.</summary>
    public IReadOnlyList<UseLimit> Limits { get; }

    /// <summary>What the shares may add up to.</summary>
    public decimal MostShare { get; }

    /// <summary>How often the plan may be run: whole runs, reckoned exactly; 0 where not even one keeps the limits.</summary>
    public long Runs
    {
        get
        {
            var share = ShareOfOneRun;
            var most = new System.Numerics.BigInteger(MostShare * 1_000_000m);
            return (long)System.Numerics.BigInteger.Min(long.MaxValue, most * share.Denominator / (share.Numerator * 1_000_000));
        }
    }

    /// <summary>The share of the limits that one run takes.</summary>
    internal Fraction ShareOfOneRun => Limits.Aggregate(default(Fraction), (sum, limit) => sum + new Fraction(1, limit.Uses));

    /// <summary>How many whole days it lasts; <see cref="ArgumentOutOfRangeException"/> where it is run less than once a day.</summary>
    /// <param name="runsADay">How often the plan is run on a day, at least 1.</param>
    public long Days(int runsADay) =>
        runsADay < 1 ? throw new ArgumentOutOfRangeException(nameof(runsADay), "a plan is run at least once a day") : Runs / runsADay;
}
