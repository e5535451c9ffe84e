namespace Compat.Planning;

/// <summary>Under which heading of the sheet a part stands. The members stand in the order of the sheet: what is not done comes first.</summary>
public enum PlanHeading
{
    /// <summary>It cannot be done: with why, and every way out.</summary>
    CannotBeDone,

    /// <summary>Its open surfaces are reached; that its gap is, nobody has shown.</summary>
    GapNotShown,

    /// <summary>
    /// It is reached only by what spoils its looks or wears it: somebody accepts that by name and date, in a blank. The verdict stays not allowed.
    /// </summary>
    HarmsThePart,

    /// <summary>It is done by the steps.</summary>
    Done,

    /// <summary>It needs nothing: it is kept dry, or the occasion does not take it in.</summary>
    NeedsNothing,
}

/// <summary>What a plan with one product fewer would come to, beside the plan that was made.</summary>
public sealed record OneFewer
{
    /// <summary>The products it would use.</summary>
    public IReadOnlyList<ProductId> Products { get; init; } = [];

    /// <summary>Parts that would no longer be done.</summary>
    public IReadOnlyList<DevicePartId> Lost { get; init; } = [];

    /// <summary>Parts that would be done instead.</summary>
    public IReadOnlyList<DevicePartId> Gained { get; init; } = [];

    /// <summary>Parts that would be given something of a worse damage or people-hazard class.</summary>
    public IReadOnlyList<DevicePartId> Harsher { get; init; } = [];

    /// <summary>Steps more; below nought where they would be fewer.</summary>
    public int MoreSteps { get; init; }

    /// <summary>Contact time more, in seconds over all parts; below nought where it would be less.</summary>
    public decimal MoreContactTime { get; init; }
}

/// <summary>A plan for a device: which parts are done by which steps, which are not and why.</summary>
public sealed record PlanSheet
{
    /// <summary>The question.</summary>
    public required PlanQuestion Question { get; init; }

    /// <summary>The occasion; null where none was named.</summary>
    public Occasion? Occasion { get; init; }

    /// <summary>Whether nothing is done and the device is kept as it is: then there are no steps.</summary>
    public bool Hold { get; init; }

    /// <summary>Whether prions are named: then nothing is computed. Stop, quarantine, ask infection prevention.</summary>
    public bool Prions { get; init; }

    /// <summary>How many products the plan could use at most.</summary>
    public int MaxProducts { get; init; }

    /// <summary>The products it uses, by id.</summary>
    public IReadOnlyList<ProductId> Products { get; init; } = [];

    /// <summary>The parts, by heading and then in the order of the device.</summary>
    public IReadOnlyList<PlannedPart> Parts { get; init; } = [];

    /// <summary>The steps, in working order.</summary>
    public IReadOnlyList<PlanStep> Steps { get; init; } = [];

    /// <summary>The papers it asks.</summary>
    public IReadOnlyList<Paper> Papers { get; init; } = [];

    /// <summary>What one product fewer would cost; null where the plan uses none.</summary>
    public OneFewer? Fewer { get; init; }

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }

    /// <summary>Whether every part is done or needs nothing: none stands under another heading, and nothing is held or stopped.</summary>
    public bool IsWhole => !Hold && !Prions && Parts.All(part => part.Heading is PlanHeading.Done or PlanHeading.NeedsNothing);

    /// <summary>The parts under a heading, in the order of the device.</summary>
    public IEnumerable<PlannedPart> Under(PlanHeading heading) => Parts.Where(part => part.Heading == heading);
}
