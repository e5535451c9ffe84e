namespace Compat.Curation.Reviewing;

/// <summary>Boxes of rules as spans of every axis, and back.</summary>
internal static class BoxSpans
{
    /// <summary>The box as spans of every axis; what is not named is unbounded.</summary>
    public static Span[] Of(ExposureBox box) => Enumerable.Range(0, CompiledRule.AxisCount)
        .Select(axis => box.On((Axis)axis) is { Statement: AxisStatement.Within } limit ? Span.Of(limit.Range) : Span.Whole).ToArray();

    /// <summary>The methods of a box.</summary>
    public static MethodSet Methods(ExposureBox box) => box.Methods.Statement == AxisStatement.Within ? box.Methods.Methods : MethodSet.All;

    /// <summary>Spans of every axis as a box.</summary>
    public static ExposureBox ToBox(Span[] spans) => new()
    {
        Strength = Limit(spans[(int)Axis.Strength]),
        Dilution = Limit(spans[(int)Axis.Dilution]),
        ExposureTime = Limit(spans[(int)Axis.ExposureTime]),
        Temperature = Limit(spans[(int)Axis.Temperature]),
        Ph = Limit(spans[(int)Axis.Ph]),
        Uses = Limit(spans[(int)Axis.Uses]),
    };

    /// <summary>A span as a limit; one without ends limits nothing.</summary>
    public static AxisLimit Limit(Span span) => span.From is null && span.To is null ? default : AxisLimit.Within(span.ToInterval());

    /// <summary>Whether a box holds all of another.</summary>
    public static bool Holds(ExposureBox box, ExposureBox other)
    {
        var (wide, narrow) = (Of(box), Of(other));
        return Methods(other).Intersect(Methods(box)).Equals(Methods(other)) && narrow.Select((span, axis) => span.LiesIn(wide[axis])).All(lies => lies);
    }
}
