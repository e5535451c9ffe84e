namespace Compat.Answers;

/// <summary>How an axis entered the answer.</summary>
public enum AxisTreatment
{
    /// <summary>Stated, one value.</summary>
    Exactly,

    /// <summary>Nobody controls it: the worst counts.</summary>
    Uncertain,

    /// <summary>The person chooses: one good choice is enough.</summary>
    Free,
}

/// <summary>What was taken for an axis.</summary>
/// <param name="Axis">The axis, or null for the method.</param>
/// <param name="Treatment">How it entered.</param>
/// <param name="Range">The range; whole for the method.</param>
/// <param name="Methods">The methods, where the axis is the method.</param>
/// <param name="Stated">Whether the question stated it; else it was assumed.</param>
public sealed record Assumption(Axis? Axis, AxisTreatment Treatment, Interval Range, MethodSet Methods, bool Stated);
