namespace Compat.Model;

/// <summary>The exposures in which a claim holds. Every axis is named: a range, 'any' where the source says so, 'unstated' where it is silent.</summary>
public sealed record ClaimBox
{
    /// <summary>Strength in percent of the basis of the claim's agent; not named only where the agent has none.</summary>
    public AxisLimit Strength { get; init; }

    /// <summary>
    /// Share of the product's volume in the finished liquid, above 0 to 1. Only in a claim of a product's label or of instructions on a product.
    /// </summary>
    public AxisLimit Dilution { get; init; }

    /// <summary>Contact time in seconds: how long the surface stays visibly wet. Always a range with a lower end.</summary>
    public AxisLimit ContactTime { get; init; }

    /// <summary>Temperature in °C.</summary>
    public AxisLimit Temperature { get; init; }

    /// <summary>pH.</summary>
    public AxisLimit Ph { get; init; }

    /// <summary>Methods.</summary>
    public MethodLimit Methods { get; init; }
}
