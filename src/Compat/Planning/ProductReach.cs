namespace Compat.Planning;

/// <summary>How far a set of products goes: the levels of a choice that its products alone decide. The higher is the better one.</summary>
/// <param name="Served">Parts served.</param>
/// <param name="Worse">Of these, parts whose mildest option within the set is worse than their mildest of all.</param>
/// <param name="Excess">By how many classes, over all parts.</param>
internal readonly record struct ProductReach(int Served, int Worse, long Excess) : IComparable<ProductReach>
{
    public int CompareTo(ProductReach other)
    {
        if (Served != other.Served) return Served.CompareTo(other.Served);
        return Worse != other.Worse ? other.Worse.CompareTo(Worse) : other.Excess.CompareTo(Excess);
    }

    /// <summary>Of how many parts are served within each tier of excess. Where the counts are upper bounds, so is this.</summary>
    public static ProductReach Of(int[] counts, IReadOnlyList<long> tiers)
    {
        var served = counts[counts.Length - 1];
        var excess = 0L;
        for (var t = 0; t + 1 < counts.Length; t++) excess += (tiers[t + 1] - tiers[t]) * (served - counts[t]);
        return new(served, served - counts[0], excess);
    }
}
