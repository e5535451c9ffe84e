namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The values of one axis as ranks: each boundary has one, and each gap between two has one, so that open and closed ends differ.</summary>
internal sealed class RankTable
{
    private readonly List<decimal> _values;
    private readonly Interval _domain;
    private readonly bool _wholeNumbers;

    public RankTable(IEnumerable<Interval> intervals, Interval domain, bool wholeNumbers)
    {
        _domain = domain;
        _wholeNumbers = wholeNumbers;
        _values = intervals.Append(domain).SelectMany(one => new[] { one.Lower, one.Upper }).OfType<decimal>().Distinct().Order().ToList();
    }

    /// <summary>The rank beyond the last boundary: without end.</summary>
    public long Last => 2 * _values.Count;

    /// <summary>The ranks that hold a value of the axis.</summary>
    public IEnumerable<long> All()
    {
        var (low, high) = Of(_domain);
        for (var rank = low; rank <= high; rank++)
        {
            var gap = (int)(rank / 2);
            var empty = _wholeNumbers && rank % 2 == 0 && gap > 0 && gap < _values.Count && _values[gap] - _values[gap - 1] <= 1;
            if (!empty) yield return rank;
        }
    }

    public (long Low, long High) Of(Interval interval) =>
        (interval.Lower is { } low ? Exactly(low) + (interval.LowerIncluded ? 0 : 1) : 0, interval.Upper is { } high
            ? Exactly(high) - (interval.UpperIncluded ? 0 : 1) : Last);

    private long Exactly(decimal value) => (2 * _values.IndexOf(value)) + 1;
}
