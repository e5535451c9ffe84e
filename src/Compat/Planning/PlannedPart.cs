namespace Compat.Planning;

/// <summary>What a product is used for on a part.</summary>
public enum PlanRole
{
    /// <summary>It cleans.</summary>
    Clean,

    /// <summary>It disinfects.</summary>
    Disinfect,
}

/// <summary>What a step needs and has not.</summary>
public enum MissingCode
{
    /// <summary>Water of a grade. Arguments: grade.</summary>
    Water,

    /// <summary>Clean compressed air. Arguments: none.</summary>
    DryingAir,

    /// <summary>Gloves that hold. Arguments: the materials on record that do.</summary>
    Gloves,

    /// <summary>A label that says it takes the soil off. Arguments: the soils of which it does not.</summary>
    Removes,

    /// <summary>It must never meet the soil. Arguments: soil, mixing hazard.</summary>
    MeetsSoil,
}

/// <summary>What a step needs and the site has not.</summary>
/// <param name="Code">Which.</param>
/// <param name="Arguments">What the code's description lists.</param>
public sealed record MissingThing(MissingCode Code, IReadOnlyList<string> Arguments);

/// <summary>Why a product does not serve a part.</summary>
/// <param name="Product">The product.</param>
/// <param name="Role">What it was judged for.</param>
/// <param name="Closure">What closes its window; null where its window is open.</param>
/// <param name="Missing">What is not at hand; null where all is.</param>
public sealed record ClosedProduct(ProductId Product, PlanRole Role, WindowClosure? Closure, MissingThing? Missing);

/// <summary>Why a part stands under its heading.</summary>
public enum PlanReason
{
    /// <summary>The steps serve it.</summary>
    Served,

    /// <summary>Nothing touches it; it is kept dry.</summary>
    KeptDry,

    /// <summary>The occasion does not take it in.</summary>
    NotOnThisOccasion,

    /// <summary>There is soil on a part that is kept dry: out of use, call the engineer.</summary>
    SoiledWhereDry,

    /// <summary>What touches it is not on record, so nobody knows what it needs.</summary>
    ContactNotKnown,

    /// <summary>No product of the shelf reaches what it needs without harm.</summary>
    NothingServes,

    /// <summary>Something disinfects it, but it must be cleaned first and nothing of the shelf takes its soil off.</summary>
    NoCleaner,

    /// <summary>The shelf could serve it, but not with so few products.</summary>
    MoreProducts,

    /// <summary>What serves it must never meet what the other parts are done with.</summary>
    KeptApart,
}

/// <summary>A way out where a part cannot be done.</summary>
public enum PlanWayOutCode
{
    /// <summary>
    /// A rule would open the window of <see cref="PlanWayOut.Product"/>: a test, or a statement of the maker, for or against <see cref="PlanWayOut.Rules"/>.
    /// </summary>
    RuleNeeded,

    /// <summary>
    /// A label claim of <see cref="PlanWayOut.Product"/> would: the part stands it, that it kills is not shown. Not given where all it holds never kills so
    /// much.
    /// </summary>
    ClaimNeeded,

    /// <summary>More products than the plan may hold, or a second run for this part alone.</summary>
    MoreProducts,

    /// <summary>Take it apart: <see cref="PlanWayOut.Opens"/> serve what lies open then.</summary>
    TakeApart,

    /// <summary>Get what is missing for <see cref="PlanWayOut.Product"/>.</summary>
    GetMissing,

    /// <summary>Brush it clean twice and work the cloth in, open and closed: the gap is still not shown.</summary>
    WorkIn,

    /// <summary>A single-use part takes its place.</summary>
    SingleUse,

    /// <summary>Cover it.</summary>
    Cover,

    /// <summary>A spare part takes its place.</summary>
    Spare,

    /// <summary>Send it to sterile services.</summary>
    SterileServices,

    /// <summary>Withdraw it: always there.</summary>
    Withdraw,
}

/// <summary>A way out where a part cannot be done.</summary>
/// <param name="Code">Which.</param>
public sealed record PlanWayOut(PlanWayOutCode Code)
{
    /// <summary>The product it speaks of; null where of none.</summary>
    public ProductId? Product { get; init; }

    /// <summary>The rules that stand against it; empty where nothing speaks for it.</summary>
    public IReadOnlyList<RuleId> Rules { get; init; } = [];

    /// <summary>The products that serve it once it is taken apart; empty where none does or nobody knows its shape then.</summary>
    public IReadOnlyList<ProductId> Opens { get; init; } = [];

    /// <summary>How it comes apart, where that is on record.</summary>
    public string? How { get; init; }
}

/// <summary>A part on the sheet.</summary>
public sealed record PlannedPart
{
    /// <summary>The part.</summary>
    public required DevicePart Part { get; init; }

    /// <summary>Under which heading it stands.</summary>
    public required PlanHeading Heading { get; init; }

    /// <summary>Why.</summary>
    public required PlanReason Reason { get; init; }

    /// <summary>What it needs.</summary>
    public required Need Need { get; init; }

    /// <summary>The question that asks it, without a product.</summary>
    public required Question Question { get; init; }

    /// <summary>What cleans it in a step of its own; null where none does.</summary>
    public ProductId? Cleaner { get; init; }

    /// <summary>What disinfects it, or cleans and disinfects at once; null where nothing does.</summary>
    public ProductId? Disinfectant { get; init; }

    /// <summary>Whether the cloth is worked into its gap, open and closed.</summary>
    public bool WorkIntoGap { get; init; }

    /// <summary>Organisms of the groups it needs that the claims used say are not killed.</summary>
    public IReadOnlyList<Answers.NotCovered> NotCovered { get; init; } = [];

    /// <summary>Of a part that is not done: for each product of the shelf what closes it, by product.</summary>
    public IReadOnlyList<ClosedProduct> Closed { get; init; } = [];

    /// <summary>Of a part that is not done: every way out, in the order of their codes.</summary>
    public IReadOnlyList<PlanWayOut> WaysOut { get; init; } = [];

    /// <summary>The damage that somebody accepts, of a <see cref="PlanHeading.HarmsThePart"/>.</summary>
    public IReadOnlyList<Damage> Accepted { get; init; } = [];

    /// <summary>How often it stands the plan, by mechanism; empty where no limit is on record.</summary>
    public IReadOnlyList<UseBudget> Budgets { get; init; } = [];

    /// <summary>How many runs it stands, over all mechanisms and rules; null where no limit is on record.</summary>
    public long? Runs { get; init; }
}
