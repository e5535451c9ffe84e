namespace Compat.Planning;

/// <summary>What a product is to a part: worst first.</summary>
public enum ShelfWord
{
    /// <summary>The part or people are harmed, and the level is not shown to be reached either.</summary>
    HarmsAndIsNotShownToReach,

    /// <summary>It reaches the level, and harms the part or people, or not both at once are to be had.</summary>
    ReachesButHarms,

    /// <summary>The instructions forbid it or do not list it.</summary>
    RefusedByInstructions,

    /// <summary>Nobody knows.</summary>
    NotKnown,

    /// <summary>The part and the people stand it, and the level is not reached.</summary>
    SparesButDoesNotReach,

    /// <summary>It reaches the level and spares, with more beside it.</summary>
    DoesItWithMore,

    /// <summary>It reaches the level and spares.</summary>
    DoesIt,

    /// <summary>The part needs nothing.</summary>
    NothingNeeded,
}

/// <summary>What more it takes for a product to do it.</summary>
public enum ShelfMore
{
    /// <summary>Clean first, in a step of its own.</summary>
    CleanFirst,

    /// <summary>Wipe again, to keep it visibly wet long enough.</summary>
    WipeAgain,

    /// <summary>Time how long it stays wet: it is not on record.</summary>
    TimeIt,

    /// <summary>Take the residue off afterwards.</summary>
    TakeOff,

    /// <summary>Activate it first.</summary>
    Activate,

    /// <summary>Measure the temperature and keep to it.</summary>
    MeasureTemperature,

    /// <summary>Measure the pH and keep to it.</summary>
    MeasurePh,

    /// <summary>A gap of the part is not shown to be reached: something else for the gap.</summary>
    ReachTheGap,
}

/// <summary>One product on one part.</summary>
public sealed record ShelfCell
{
    /// <summary>The product.</summary>
    public required ProductId Product { get; init; }

    /// <summary>What it is to the part.</summary>
    public required ShelfWord Word { get; init; }

    /// <summary>What more it takes; empty but for <see cref="ShelfWord.DoesItWithMore"/>.</summary>
    public IReadOnlyList<ShelfMore> More { get; init; } = [];

    /// <summary>The whole answer it was read from; null where the part needs nothing. It was asked for the first part of this kind, so its question may name another device.</summary>
    public Answer? Answer { get; init; }

    /// <summary>Whether the product serves the part.</summary>
    public bool Serves => Word is ShelfWord.DoesIt or ShelfWord.DoesItWithMore;
}
