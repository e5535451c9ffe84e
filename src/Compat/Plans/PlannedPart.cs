using Compat.Knowledge;
using Compat.Needs;
using Compat.Sites;
using Compat.Windows;

namespace Compat.Plans;

/// <summary>Why a product does not serve a part.</summary>
/// <param name="Product">The product.</param>
/// <param name="Closure">What closes its window.</param>
public sealed record ClosedProduct(ProductId Product, WindowClosure Closure);

/// <summary>A way out where a part cannot be done.</summary>
public enum PlanWayOutCode
{
    /// <summary>A rule on record would open the window of <see cref="PlanWayOut.Product"/>: test it, or ask the maker.</summary>
    RuleNeeded,

    /// <summary>More products than the plan may hold.</summary>
    MoreProducts,

    /// <summary>Take it apart: what lies open then can be done.</summary>
    TakeApart,

    /// <summary>Cover it.</summary>
    Cover,

    /// <summary>A spare part takes its place.</summary>
    Spare,

    /// <summary>A single-use part takes its place.</summary>
    SingleUse,

    /// <summary>Send it to sterile services.</summary>
    SterileServices,

    /// <summary>Withdraw it: always there.</summary>
    Withdraw,
}

/// <summary>A way out where a part cannot be done.</summary>
/// <param name="Code">Which.</param>
/// <param name="Product">The product it speaks of; null where of none.</param>
public sealed record PlanWayOut(PlanWayOutCode Code, ProductId? Product);

/// <summary>A part on the sheet.</summary>
public sealed record PlannedPart
{
    /// <summary>The part.</summary>
    public required DevicePart Part { get; init; }

    /// <summary>Under which heading it stands.</summary>
    public required PlanHeading Heading { get; init; }

    /// <summary>What it needs.</summary>
    public required Need Need { get; init; }

    /// <summary>What cleans it in a step of its own; null where none does.</summary>
    public ProductId? Cleaner { get; init; }

    /// <summary>What disinfects it, or cleans and disinfects at once; null where nothing does.</summary>
    public ProductId? Disinfectant { get; init; }

    /// <summary>Of a part that is not done: for each product of the shelf what closes it, by product.</summary>
    public IReadOnlyList<ClosedProduct> Closed { get; init; } = [];

    /// <summary>Of a part that is not done: every way out, in the order of their codes.</summary>
    public IReadOnlyList<PlanWayOut> WaysOut { get; init; } = [];

    /// <summary>The damage that somebody accepts, of a <see cref="PlanHeading.HarmsThePart"/>.</summary>
    public IReadOnlyList<Damage> Accepted { get; init; } = [];

    /// <summary>How often it stands the plan, by mechanism; empty where no limit is on record.</summary>
    public IReadOnlyList<UseBudget> Budgets { get; init; } = [];
}
