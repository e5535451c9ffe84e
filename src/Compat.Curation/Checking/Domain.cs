namespace Compat.Curation.Checking;

/// <summary>The values that each axis has at all.</summary>
internal static class Domain
{
    public static Interval Ph { get; } = Interval.Closed(-1m, 15m);

    /// <summary>All values of an axis that can be asked of a speaker.</summary>
    public static Interval Of(Axis axis, Speaker speaker) => axis switch
    {
        Axis.Strength => speaker.Substance.Product is null ? speaker.Component.Strength : new Interval(0m, true, null, false),
        Axis.Dilution => speaker.Substance.Dilution,
        Axis.ExposureTime => Interval.Above(0m),
        Axis.Temperature => Interval.Closed(-40m, 200m),
        Axis.Ph => Ph,
        _ => RuleCompiler.WholeNumbers(Interval.AtLeast(1m)),
    };

    /// <summary>The cells that the values of each axis touch.</summary>
    public static CellBox Cells(CompiledBase kb, Speaker speaker)
    {
        return CellBox.Of(kb.Grid.CellsOf(Box<Stretch>.Of(MethodSet.All, axis => Stretch.Of(Of(axis, speaker)))));
    }
}
