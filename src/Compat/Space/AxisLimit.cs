namespace Compat.Space;

/// <summary>How a rule speaks of one axis.</summary>
public enum AxisStatement
{
    /// <summary>The rule does not name the axis: unbounded. Only a 'not allowed' may do so.</summary>
    NotNamed,

    /// <summary>A source says that any value will do.</summary>
    Any,

    /// <summary>The source is silent: filled from the conventions, narrow, and shown as a limit.</summary>
    Unstated,

    /// <summary>The values in a range.</summary>
    Within,
}

/// <summary>What a rule says of one numeric axis. The default value does not name the axis.</summary>
/// <param name="Statement">How the rule speaks of it.</param>
/// <param name="Range">The range of a <see cref="AxisStatement.Within"/>, in the axis' unit (<see cref="Axis"/>); else whole.</param>
public readonly record struct AxisLimit(AxisStatement Statement, Interval Range)
{
    private readonly Interval _range = Statement == AxisStatement.Within ? Range : default;

    /// <summary>The range of a <see cref="AxisStatement.Within"/>, in the axis' unit (<see cref="Axis"/>); else whole.</summary>
    public Interval Range
    {
        get => Statement == AxisStatement.Within ? _range : Interval.Whole;
        init => _range = Statement == AxisStatement.Within ? value : default;
    }

    /// <summary>The source says that any value will do.</summary>
    public static AxisLimit Any => new(AxisStatement.Any, Interval.Whole);

    /// <summary>The source is silent.</summary>
    public static AxisLimit Unstated => new(AxisStatement.Unstated, Interval.Whole);

    /// <summary>The values in a range.</summary>
    public static AxisLimit Within(Interval range) => new(AxisStatement.Within, range);
}

/// <summary>What a rule says of the method. The default value does not name it.</summary>
/// <param name="Statement">How the rule speaks of it.</param>
/// <param name="Methods">The methods of a <see cref="AxisStatement.Within"/>; else empty.</param>
public readonly record struct MethodLimit(AxisStatement Statement, MethodSet Methods)
{
    /// <summary>The source says that any method will do, the chamber included.</summary>
    public static MethodLimit Any => new(AxisStatement.Any, MethodSet.None);

    /// <summary>The source is silent.</summary>
    public static MethodLimit Unstated => new(AxisStatement.Unstated, MethodSet.None);

    /// <summary>These methods.</summary>
    public static MethodLimit Within(params ApplicationMethod[] methods) => new(AxisStatement.Within, MethodSet.Of(methods));
}

/// <summary>A box of exposures: what a rule says of each axis. The default value names none.</summary>
public sealed record ExposureBox
{
    /// <summary>The box that names no axis.</summary>
    public static ExposureBox Unbounded { get; } = new();

    /// <summary>Strength in percent of the basis of the rule's agent. Not in a product's rule.</summary>
    public AxisLimit Strength { get; init; }

    /// <summary>Share of the product's volume in the finished liquid, above 0 to 1. Only in a product's rule.</summary>
    public AxisLimit Dilution { get; init; }

    /// <summary>Exposure time in seconds.</summary>
    public AxisLimit ExposureTime { get; init; }

    /// <summary>Temperature in °C.</summary>
    public AxisLimit Temperature { get; init; }

    /// <summary>pH.</summary>
    public AxisLimit Ph { get; init; }

    /// <summary>Uses over the part's life.</summary>
    public AxisLimit Uses { get; init; }

    /// <summary>Methods.</summary>
    public MethodLimit Methods { get; init; }

    /// <summary>The axes on which the source is silent: conventions fill them in.</summary>
    internal IEnumerable<Axis> SilentOn
    {
        get
        {
            for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
                if (On(axis).Statement == AxisStatement.Unstated) yield return axis;
        }
    }

    /// <summary>Whether the source is silent on an axis or on the methods.</summary>
    internal bool IsSilent => Methods.Statement == AxisStatement.Unstated || SilentOn.Any();

    /// <summary>What the box says of a numeric axis.</summary>
    public AxisLimit On(Axis axis) => axis switch
    {
        Axis.Strength => Strength,
        Axis.Dilution => Dilution,
        Axis.ExposureTime => ExposureTime,
        Axis.Temperature => Temperature,
        Axis.Ph => Ph,
        Axis.Uses => Uses,
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };
}
