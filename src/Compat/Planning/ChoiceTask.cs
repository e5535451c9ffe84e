using System.Numerics;

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

/// <summary>What a choice comes to, level by level; the lesser is the better one, and the first level that differs decides.</summary>
/// <param name="NotServed">Parts with no option chosen.</param>
/// <param name="PartsWorse">Parts whose option is of a worse class than their mildest one.</param>
/// <param name="HarmExcess">By how many classes, over all parts.</param>
/// <param name="Products">Products used.</param>
/// <param name="LargestShare">The largest share of a limit of uses that any part gives away for any mechanism.</param>
/// <param name="ShareSum">The sum of those shares over all parts and mechanisms.</param>
/// <param name="Steps">Distinct steps.</param>
/// <param name="ContactTime">The contact times of all parts together, in seconds.</param>
internal sealed record ChoiceCost(
    int NotServed, int PartsWorse, long HarmExcess, int Products, Fraction LargestShare, Fraction ShareSum, int Steps, decimal ContactTime)
        : IComparable<ChoiceCost>
{
    public int CompareTo(ChoiceCost? other)
    {
        if (other is null) return 1;
        var order = NotServed.CompareTo(other.NotServed);
        if (order == 0) order = PartsWorse.CompareTo(other.PartsWorse);
        if (order == 0) order = HarmExcess.CompareTo(other.HarmExcess);
        if (order == 0) order = Products.CompareTo(other.Products);
        if (order == 0) order = LargestShare.CompareTo(other.LargestShare);
        if (order == 0) order = ShareSum.CompareTo(other.ShareSum);
        if (order == 0) order = Steps.CompareTo(other.Steps);
        return order == 0 ? ContactTime.CompareTo(other.ContactTime) : order;
    }
}

/// <summary>The option chosen for one part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Option">Its option.</param>
/// <param name="Excess">By how many classes its harm is worse than that of the part's mildest option.</param>
internal sealed record ChosenOption(ChoicePart Part, ChoiceOption Option, long Excess);

/// <summary>The best choice of a task.</summary>
internal sealed record Choice
{
    /// <summary>The products used, ascending.</summary>
    public required IReadOnlyList<int> Products { get; init; }

    /// <summary>The parts served, by ordinal.</summary>
    public required IReadOnlyList<ChosenOption> Served { get; init; }

    /// <summary>The parts not served, by ordinal.</summary>
    public required IReadOnlyList<ChoicePart> NotServed { get; init; }

    /// <summary>What it comes to.</summary>
    public required ChoiceCost Cost { get; init; }
}

/// <summary>What one product fewer would cost.</summary>
/// <param name="With">The best choice.</param>
/// <param name="Without">The best one that uses at least one product fewer.</param>
internal sealed record OneProductFewer(Choice With, Choice Without)
{
    /// <summary>Parts, by ordinal, that would no longer be served.</summary>
    public IReadOnlyList<ChoicePart> Lost => Without.NotServed.Where(part => With.Served.Any(one => one.Part == part)).ToArray();

    /// <summary>Parts, by ordinal, that would be served instead.</summary>
    public IReadOnlyList<ChoicePart> Gained => With.NotServed.Where(part => Without.Served.Any(one => one.Part == part)).ToArray();

    /// <summary>Parts, by ordinal, that would be given something of a worse class.</summary>
    public IReadOnlyList<ChosenOption> Worse =>
        Without.Served.Where(one => With.Served.Any(before => before.Part == one.Part && before.Excess < one.Excess)).ToArray();

    /// <summary>By how much the largest share of a limit of uses would grow; below nought where it would shrink.</summary>
    public Fraction MoreOfLimits => Without.Cost.LargestShare - With.Cost.LargestShare;

    /// <summary>Steps more; below nought where they would be fewer.</summary>
    public int MoreSteps => Without.Cost.Steps - With.Cost.Steps;

    /// <summary>Contact time more, in seconds; below nought where it would be less.</summary>
    public decimal MoreContactTime => Without.Cost.ContactTime - With.Cost.ContactTime;
}

/// <summary>An exact fraction in lowest terms; its default is nought.</summary>
internal readonly record struct Fraction : IComparable<Fraction>
{
    private readonly BigInteger _denominatorLessOne;

    /// <summary>Makes a fraction; <see cref="ArgumentOutOfRangeException"/> where the denominator is not above nought.</summary>
    public Fraction(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.Sign <= 0) throw new ArgumentOutOfRangeException(nameof(denominator), "a denominator is above nought");
        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        Numerator = numerator / divisor;
        _denominatorLessOne = (denominator / divisor) - 1;
    }

    public static Fraction One => new(1, 1);

    public BigInteger Numerator { get; }

    /// <summary>Above nought.</summary>
    public BigInteger Denominator => _denominatorLessOne + 1;

    public static Fraction operator +(Fraction one, Fraction other) =>
        new((one.Numerator * other.Denominator) + (other.Numerator * one.Denominator), one.Denominator * other.Denominator);

    public static Fraction operator -(Fraction one, Fraction other) =>
        new((one.Numerator * other.Denominator) - (other.Numerator * one.Denominator), one.Denominator * other.Denominator);

    public static bool operator <(Fraction one, Fraction other) => one.CompareTo(other) < 0;

    public static bool operator >(Fraction one, Fraction other) => one.CompareTo(other) > 0;

    public static bool operator <=(Fraction one, Fraction other) => one.CompareTo(other) <= 0;

    public static bool operator >=(Fraction one, Fraction other) => one.CompareTo(other) >= 0;

    public int CompareTo(Fraction other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    public override string ToString() => Denominator.IsOne ? Numerator.ToString() : Numerator + "/" + Denominator;
}
