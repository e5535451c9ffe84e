namespace Compat.Evaluation;

/// <summary>The sorted boundaries of all rules on one axis. Between two neighbours lies a cell in which no rule tells values apart; cells are numbered from 0.</summary>
internal sealed class CutTable
{
    private readonly Cut[] _cuts;

    public CutTable(IEnumerable<Interval> intervals)
    {
        var list = new List<Cut>();
        foreach (var interval in intervals)
        {
            var span = Span.Of(interval);
            if (span.From is { } from) list.Add(from);
            if (span.To is { } to) list.Add(to);
        }

        list.Sort();
        var count = 0;
        for (var i = 0; i < list.Count; i++)
            if (count == 0 || list[count - 1].CompareTo(list[i]) != 0) list[count++] = list[i];
        _cuts = list.GetRange(0, count).ToArray();
    }

    public int LastCell => _cuts.Length;

    /// <summary>The cells an interval touches, outward.</summary>
    public (int Low, int High) Cells(Interval interval)
    {
        var span = Span.Of(interval);
        return (span.From is { } from ? CountUpTo(from, including: true) : 0, span.To is { } to ? CountUpTo(to, including: false) : LastCell);
    }

    /// <summary>The values of a run of cells.</summary>
    public Span SpanOf(int low, int high) => new(low == 0 ? null : _cuts[low - 1], high >= LastCell ? null : _cuts[high]);

    private int CountUpTo(Cut cut, bool including)
    {
        int low = 0, high = _cuts.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            var order = _cuts[middle].CompareTo(cut);
            if (order < 0 || (including && order == 0)) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
