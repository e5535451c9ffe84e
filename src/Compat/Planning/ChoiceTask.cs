namespace Compat.Planning;

/// <summary>A product as an option uses it.</summary>
/// <param name="Product">The product, by its rank among the ids of the shelf.</param>
/// <param name="Harm">The rank of the worst damage or people-hazard class it has on this part; the higher the worse.</param>
internal readonly record struct UsedProduct(int Product, int Harm);

/// <summary>Two products that exclude each other; their order means nothing.</summary>
internal readonly record struct ProductPair(int One, int Other);

/// <summary>One way to serve a part: what is used on it, and what that costs.</summary>
internal sealed record ChoiceOption
{
    /// <summary>Tells it from the other options of its part; the lower is taken where all else is equal.</summary>
    public required int Ordinal { get; init; }

    /// <summary>The products, cleaner included; empty where none is needed.</summary>
    public IReadOnlyList<UsedProduct> Products { get; init; } = [];

    /// <summary>The share of the part's limit of uses that it takes, for each mechanism. Above one for any mechanism it is no option.</summary>
    public IReadOnlyDictionary<Mechanism, Fraction> Shares { get; init; } = new Dictionary<Mechanism, Fraction>();

    /// <summary>Keys of its steps. Parts that are served by the same step name the same key, and it counts once.</summary>
    public IReadOnlyList<int> Steps { get; init; } = [];

    /// <summary>How long the part is kept wet, in seconds.</summary>
    public decimal ContactTime { get; init; }

    /// <summary>The worst of the harms of its products; 0 where it uses none.</summary>
    public int Harm => Products.Count == 0 ? 0 : Products.Max(used => used.Harm);
}

/// <summary>A part that needs something, and its options.</summary>
internal sealed record ChoicePart
{
    /// <summary>Tells it from the other parts; the options of the lowest are compared first where all else is equal.</summary>
    public required int Ordinal { get; init; }

    /// <summary>Its options, in any order; empty where nothing serves it.</summary>
    public IReadOnlyList<ChoiceOption> Options { get; init; } = [];
}

/// <summary>What a plan chooses from. No order of any list in it means anything: only ordinals do.</summary>
internal sealed record ChoiceTask
{
    /// <summary>How many products the plan may use at most, cleaners included.</summary>
    public required int MaxProducts { get; init; }

    /// <summary>The parts.</summary>
    public required IReadOnlyList<ChoicePart> Parts { get; init; }

    /// <summary>Products of which never both are in one plan.</summary>
    public IReadOnlyList<ProductPair> NeverInOnePlan { get; init; } = [];

    /// <summary>Products of which never both are used on one part.</summary>
    public IReadOnlyList<ProductPair> NeverOnOnePart { get; init; } = [];
}
