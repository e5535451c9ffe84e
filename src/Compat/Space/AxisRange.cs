namespace Compat.Space;

/// <summary>The values that each axis has, as <see cref="Axis"/> states them.</summary>
internal static class AxisRange
{
    /// <summary>The values of an axis.</summary>
    public static Interval Of(Axis axis) => axis switch
    {
        Axis.Strength => Interval.AtLeast(0m),
        Axis.Dilution => new Interval(0m, false, 1m, true),
        Axis.ExposureTime => Interval.Above(0m),
        Axis.Temperature => Interval.Closed(-40m, 200m),
        Axis.Ph => Interval.Closed(-1m, 15m),
        _ => Interval.AtLeast(1m),
    };
}
