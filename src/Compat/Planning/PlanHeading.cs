namespace Compat.Planning;

/// <summary>Under which heading of the sheet a part stands. The members stand in the order of the sheet: what is not done comes first.</summary>
public enum PlanHeading
{
    /// <summary>It cannot be done: with why, and every way out.</summary>
    CannotBeDone,

    /// <summary>Its open surfaces are reached; that its gap is, nobody has shown.</summary>
    GapNotShown,

    /// <summary>It is reached only by what spoils its looks or wears it: somebody accepts that by name and date, in a blank. The verdict stays not allowed.</summary>
    HarmsThePart,

    /// <summary>It is done by the steps.</summary>
    Done,

    /// <summary>It needs nothing: it is kept dry, or the occasion does not take it in.</summary>
    NeedsNothing,
}
