namespace Compat.Evaluation;

/// <summary>The sorted boundaries of all rules on one axis. Between two neighbours lies a cell in which no rule tells values apart; cells are numbered from 0.</summary>
internal sealed class CutTable
{
    private readonly Cut[] _cuts;
    private int _count;

    public CutTable(CompiledRule[] rules, int axis)
    {
        _cuts = new Cut[2 * rules.Length];
        foreach (var rule in rules)
        {
            var span = Span.Of(rule.Box[axis]);
            if (span.From is { } from) Insert(from);
            if (span.To is { } to) Insert(to);
        }
    }

    public int LastCell => _count;

    /// <summary>The cells an interval touches, outward.</summary>
    public (int Low, int High) Cells(Interval interval) => Cells(Span.Of(interval));

    /// <summary>The cells a span touches, outward.</summary>
    public (int Low, int High) Cells(Span span)
    {
        return (span.From is { } from ? CountUpTo(from, including: true) : 0, span.To is { } to ? CountUpTo(to, including: false) : LastCell);
    }

    /// <summary>The values of a run of cells.</summary>
    public Span SpanOf(int low, int high) => new(low == 0 ? null : _cuts[low - 1], high >= LastCell ? null : _cuts[high]);

    /// <summary>Puts a boundary in its place. Rules share most of theirs, so that few places move.</summary>
    private void Insert(Cut cut)
    {
        var at = CountUpTo(cut, including: false);
        if (at < _count && _cuts[at].CompareTo(cut) == 0) return;
        Array.Copy(_cuts, at, _cuts, at + 1, _count - at);
        _cuts[at] = cut;
        _count++;
    }

    private int CountUpTo(Cut cut, bool including)
    {
        int low = 0, high = _count;
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
