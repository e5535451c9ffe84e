namespace Compat.Curation.Checking;

/// <summary>Writes a box of exposures in one line.</summary>
public static class BoxLine
{
    /// <summary>The axes that the box names, each with its range; <c>every exposure</c> where it names none.</summary>
    /// <param name="box">The box.</param>
    /// <param name="basis">The unit in which the strength of the agent is written; null where it has none.</param>
    /// <exception cref="ArgumentException">The box names a strength, and there is no unit for it.</exception>
    public static string Of(ExposureBox box, StrengthUnit? basis)
    {
        var axes = new List<string>();
        if (basis is null && box.Strength.Statement == AxisStatement.Within) throw new ArgumentException("a strength without its unit says nothing", nameof(basis));
        Add(Axis.Strength, basis?.Text ?? "");
        Add(Axis.Dilution, "% v/v");
        Add(Axis.ExposureTime, "");
        Add(Axis.Temperature, "°C");
        Add(Axis.Ph, "");
        Add(Axis.Uses, "");
        if (box.Methods.Statement == AxisStatement.Within) axes.Add("methods " + box.Methods.Methods);
        return axes.Count == 0 ? "every exposure" : string.Join("; ", axes);

        void Add(Axis axis, string unit)
        {
            if (box.On(axis) is not { Statement: AxisStatement.Within } limit) return;
            var range = axis switch
            {
                Axis.Strength => limit.Range.Scale(1m / basis!.PercentPerUnit).ToString(unit),
                Axis.Dilution => limit.Range.Scale(100m).ToString(unit),
                Axis.ExposureTime => limit.Range.ToDurations(),
                _ => limit.Range.ToString(unit),
            };
            axes.Add($"{Words.Of(axis)} {range}");
        }
    }
}
