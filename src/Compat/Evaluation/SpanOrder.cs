namespace Compat.Evaluation;

/// <summary>Orders spans by their start, then by their end; one without a start comes first, one without an end last.</summary>
internal sealed class SpanOrder : IComparer<Span>
{
    public static SpanOrder Instance { get; } = new();

    public int Compare(Span x, Span y)
    {
        var byStart = x.From is { } a ? (y.From is { } b ? a.CompareTo(b) : 1) : y.From is null ? 0 : -1;
        if (byStart != 0) return byStart;
        return x.To is { } c ? (y.To is { } d ? c.CompareTo(d) : -1) : y.To is null ? 0 : 1;
    }
}
