namespace Compat.Curation.Reviewing;

/// <summary>Boxes that records write as boxes of values, and back.</summary>
internal static class BoxSpans
{
    /// <summary>The values a box holds; what is not named is unbounded.</summary>
    public static Box<Stretch> Of(ExposureBox box) => Box<Stretch>.Of(Methods(box), axis => Stretch.Of(box.On(axis)));

    /// <summary>The methods of a box.</summary>
    public static MethodSet Methods(ExposureBox box) => box.Methods.Statement == AxisStatement.Within ? box.Methods.Methods : MethodSet.All;

    /// <summary>A box of values as a record writes it, its methods aside.</summary>
    public static ExposureBox ToBox(in Box<Stretch> box) => new()
    {
        Strength = Limit(box.Strength),
        Dilution = Limit(box.Dilution),
        ExposureTime = Limit(box.ExposureTime),
        Temperature = Limit(box.Temperature),
        Ph = Limit(box.Ph),
        Uses = Limit(box.Uses),
    };

    /// <summary>A stretch as a limit; one without ends limits nothing.</summary>
    public static AxisLimit Limit(Stretch values) => values.Equals(Stretch.Whole) ? default : AxisLimit.Within(values.ToInterval());

    /// <summary>Whether a box holds all of another.</summary>
    public static bool Holds(ExposureBox box, ExposureBox other) => Of(other).LiesIn(Of(box));
}
