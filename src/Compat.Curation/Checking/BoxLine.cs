using System.Globalization;

namespace Compat.Curation.Checking;

/// <summary>Writes a box of exposures in one line.</summary>
internal static class BoxLine
{
    /// <summary>The axes that the box names, each with its range; <c>every exposure</c> where it names none.</summary>
    /// <param name="box">The box.</param>
    /// <param name="basis">The unit in which the strength of the agent is written; null where it has none.</param>
    /// <exception cref="ArgumentException">The box names a strength, and there is no unit for it.</exception>
    public static string Of(ExposureBox box, StrengthUnit? basis)
    {
        var axes = new List<string>();
        if (basis is null && box.Strength.Statement == AxisStatement.Within) throw new ArgumentException("a strength without its unit says nothing",
            nameof(basis));
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

/// <summary>Writes a question as the command that asks it.</summary>
internal static class WitnessLine
{
    /// <summary>The line to type.</summary>
    /// <param name="question">The question.</param>
    /// <param name="directory">The data folder; null for the shipped data.</param>
    /// <param name="sitePaths">The site files over it.</param>
    public static string Of(Question question, string? directory = null, params IReadOnlyList<string> sitePaths)
    {
        var words = new List<string> { "compat ask" };
        Add("data", directory);
        foreach (var path in sitePaths) Add("site", path);
        Add("device", question.Device?.Value);
        Add("serial", question.Serial?.ToString());
        Add("part", question.DevicePart?.Value ?? question.Part?.Value);
        foreach (var slot in question.Materials) Add("material", string.Join("|", slot.OneOf.Select(id => id.Value)));
        Add("materials-known", question.MaterialsKnown is { } known ? known ? "fully" : "partly" : null);
        Add("agent", question.Agent?.Value);
        Add("product", question.Product?.Value);
        Add("strength", question.Strength?.ToString());
        Add("dilution", question.Dilution is { } dilution ? Figure(dilution.Scale(100m), " % v/v") : null);
        Add("method", question.Method is { } method ? Words.Of(method) : null);
        Add("exposure-time", question.ExposureTime is { } exposureTime ? Figure(exposureTime, " s") : null);
        Add("temperature", question.Temperature is { } temperature ? Figure(temperature, " °C") : null);
        Add("ph", question.Ph is { } ph ? Figure(ph, "") : null);
        Add("uses", question.Uses?.ToString(CultureInfo.InvariantCulture));
        if (question.OnlyPart) Add("only", "part");
        return string.Join(" ", words);

        void Add(string option, string? value)
        {
            if (value is null) return;
            var plain = value.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.' or '/' or '_');
            words.Add($"--{option} {(plain ? value : $"\"{value}\"")}");
        }
    }

    private static string Figure(Interval range, string unit) =>
        range.Equals(Interval.Exactly(Interval.WithoutEnd)) ? "without end" : range.IsPoint ? Interval.Figure(range.Lower!.Value) + unit
            : range.ToString(unit.Trim());
}

/// <summary>Boxes that records write as boxes of values, and back.</summary>
internal static class BoxValues
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
