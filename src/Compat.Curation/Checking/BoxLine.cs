using Compat.Exposures;

namespace Compat.Curation.Checking;

/// <summary>Writes a box of exposures in one line.</summary>
public static class BoxLine
{
    /// <summary>The axes that the box names, each with its range; <c>every exposure</c> where it names none.</summary>
    /// <param name="box">The box.</param>
    /// <param name="basis">The unit of the strength; null where there is none.</param>
    public static string Of(ExposureBox box, StrengthUnit? basis)
    {
        var axes = new List<string>();
        Add(Axis.Strength, (basis is null ? StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume) : StrengthUnit.PercentOf(basis.Basis)).Text);
        Add(Axis.Dilution, "% v/v");
        Add(Axis.Residence, "");
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
                Axis.Dilution => limit.Range.Scale(100m).ToString(unit),
                Axis.Residence => limit.Range.ToDurations(),
                _ => limit.Range.ToString(unit),
            };
            axes.Add($"{Words.Of(axis)} {range}");
        }
    }
}
