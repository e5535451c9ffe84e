namespace Compat.Deciding;

/// <summary>A box of good choices for one method: the spans of the free axes (<see cref="Piece.ExposureTime"/>, <see cref="Piece.Dilution"/>, <see cref="Piece.Uses"/>).</summary>
internal sealed record ChosenAxes(ApplicationMethod Method, Span[] Spans);

/// <summary>Orders boxes of choices by method, exposure time, dilution and uses.</summary>
internal sealed class ChoiceOrder : IComparer<ChosenAxes>
{
    public static ChoiceOrder Instance { get; } = new();

    public int Compare(ChosenAxes? x, ChosenAxes? y)
    {
        var order = x!.Method - y!.Method;
        for (var axis = 0; axis < x.Spans.Length && order == 0; axis++) order = Compare(x.Spans[axis], y.Spans[axis]);
        return order;
    }

    /// <summary>By start, then by end; a span without a start comes first, one without an end last.</summary>
    private static int Compare(Span x, Span y)
    {
        var byStart = x.From is { } a ? (y.From is { } b ? a.CompareTo(b) : 1) : y.From is null ? 0 : -1;
        if (byStart != 0) return byStart;
        return x.To is { } c ? (y.To is { } d ? c.CompareTo(d) : -1) : y.To is null ? 0 : 1;
    }
}

/// <summary>Orders pieces by the code of their first reason, then by method.</summary>
internal sealed class PieceOrder : IComparer<Piece>
{
    public static PieceOrder Instance { get; } = new();

    public int Compare(Piece? x, Piece? y)
    {
        var byCode = x!.Decision.Reasons[0].Code - y!.Decision.Reasons[0].Code;
        return byCode != 0 ? byCode : x.Method - y.Method;
    }
}

/// <summary>Orders sources: practice, then what is recalled, then what was read by its trust; by id where equal.</summary>
internal sealed class WeakestFirst : IComparer<Source>
{
    public static WeakestFirst Instance { get; } = new();

    public int Compare(Source? x, Source? y)
    {
        var byStrength = Strength(x!) - Strength(y!);
        return byStrength != 0 ? byStrength : x!.Id.CompareTo(y!.Id);
    }

    /// <summary>The sources of a base by these ids, each once.</summary>
    public static Source[] Of(CompiledBase kb, IEnumerable<SourceId> ids) => ids.Distinct().Select(id => kb.SourcesById[id]).OrderBy(source => source, Instance).ToArray();

    private static int Strength(Source source) =>
        source.Kind == SourceKind.CommonPractice ? 0 : source.Recalled ? 1 : 2 + (Trust.Weak - source.Trust);
}
