using System.Globalization;

namespace Compat.Curation.Checking;

/// <summary>Writes a question as the command that asks it.</summary>
public static class WitnessLine
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
        range.Equals(Interval.Exactly(Interval.WithoutEnd)) ? "without end" : range.IsPoint ? Interval.Figure(range.Lower!.Value) + unit : range.ToString(unit.Trim());
}
