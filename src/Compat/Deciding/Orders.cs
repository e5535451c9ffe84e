namespace Compat.Deciding;

/// <summary>Orders boxes of choices by method, exposure time, dilution and uses.</summary>
internal sealed class ChoiceOrder : IComparer<Box<Stretch>>
{
    public static ChoiceOrder Instance { get; } = new();

    public int Compare(Box<Stretch> x, Box<Stretch> y)
    {
        var order = x.Methods.Driest - y.Methods.Driest;
        if (order == 0) order = x.ExposureTime.CompareTo(y.ExposureTime);
        if (order == 0) order = x.Dilution.CompareTo(y.Dilution);
        return order != 0 ? order : x.Uses.CompareTo(y.Uses);
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
