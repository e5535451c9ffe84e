namespace Compat.Space;

/// <summary>The axes of an exposure that are measured by a number (the sixth, the method, is an <see cref="ApplicationMethod"/>).</summary>
public enum Axis
{
    /// <summary>Strength in percent of the agent's basis: 0..100 for fractions, 0 and above for mass per volume.</summary>
    Strength,

    /// <summary>Dilution of a product: its volume as a share (0..1) of the finished liquid's volume. Takes the place of strength in a product's
    /// rules.</summary>
    Dilution,

    /// <summary>Exposure time in seconds, above 0: how long the agent is on the part until it is taken off or gone.</summary>
    ExposureTime,

    /// <summary>Temperature in °C, -40..200.</summary>
    Temperature,

    /// <summary>pH, -1..15.</summary>
    Ph,

    /// <summary>Uses over the part's life, a whole number from 1.</summary>
    Uses,
}

/// <summary>What is the same for all that lies on the axes.</summary>
internal static class Axes
{
    /// <summary>The contact time in seconds: an axis of claims and windows only, which no rule can name.</summary>
    public const Axis ContactTime = Axis.Uses + 1;

    /// <summary>The values of an axis, as <see cref="Axis"/> states them.</summary>
    public static Interval RangeOf(Axis axis) => axis switch
    {
        Axis.Strength => Interval.AtLeast(0m),
        Axis.Dilution => new Interval(0m, false, 1m, true),
        Axis.ExposureTime or ContactTime => Interval.Above(0m),
        Axis.Temperature => Interval.Closed(-40m, 200m),
        Axis.Ph => Interval.Closed(-1m, 15m),
        _ => Interval.AtLeast(1m),
    };
}
