namespace Compat.Deciding;

/// <summary>The sorted boundaries of all rules on one axis. Between two neighbours lies a cell in which no rule tells values apart; cells are numbered from 0.</summary>
internal sealed class CutTable
{
    private readonly List<Cut> _cuts;

    /// <param name="known">Boundaries that are known, in order.</param>
    /// <param name="boxes">What more rules say, axis by axis.</param>
    /// <param name="axis">The axis.</param>
    public CutTable(IReadOnlyCollection<Cut> known, IEnumerable<Interval[]> boxes, int axis)
    {
        _cuts = [.. known];
        foreach (var box in boxes)
        {
            var span = Span.Of(box[axis]);
            if (span.From is { } from) Insert(from);
            if (span.To is { } to) Insert(to);
        }
    }

    /// <summary>The boundaries, in order.</summary>
    public IReadOnlyList<Cut> Cuts => _cuts;

    public int LastCell => _cuts.Count;

    /// <summary>Whether the ends of an interval are boundaries of the table.</summary>
    public bool Has(Interval interval)
    {
        var span = Span.Of(interval);
        return (span.From is not { } from || Has(from)) && (span.To is not { } to || Has(to));
    }

    /// <summary>The cells an interval touches, outward.</summary>
    public (int Low, int High) Cells(Interval interval) => Cells(Span.Of(interval));

    /// <summary>The cells a span touches, outward.</summary>
    public (int Low, int High) Cells(Span span)
    {
        return (span.From is { } from ? CountUpTo(from, including: true) : 0, span.To is { } to ? CountUpTo(to, including: false) : LastCell);
    }

    /// <summary>The values of a run of cells.</summary>
    public Span SpanOf(int low, int high) => new(low == 0 ? null : _cuts[low - 1], high >= LastCell ? null : _cuts[high]);

    private bool Has(Cut cut) => CountUpTo(cut, including: false) is var at && at < _cuts.Count && _cuts[at].CompareTo(cut) == 0;

    /// <summary>Puts a boundary in its place. Rules share most of theirs, so that few places move.</summary>
    private void Insert(Cut cut)
    {
        var at = CountUpTo(cut, including: false);
        if (at == _cuts.Count || _cuts[at].CompareTo(cut) != 0) _cuts.Insert(at, cut);
    }

    private int CountUpTo(Cut cut, bool including)
    {
        int low = 0, high = _cuts.Count;
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
