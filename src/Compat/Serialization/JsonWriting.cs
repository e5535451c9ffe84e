using System.Text.Json;

namespace Compat.Serialization;

/// <summary>What every JSON output shares.</summary>
internal static class JsonWriting
{
    /// <summary>An array of texts.</summary>
    public static void WriteStringList(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }

    /// <summary>An array of whatever is written for each item.</summary>
    public static void WriteList<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items) write(item);
        json.WriteEndArray();
    }

    /// <summary>A strength given in percent of a basis, in the unit it is shown in.</summary>
    public static void WriteStrength(this Utf8JsonWriter json, string name, Interval percent, StrengthUnit? unit) =>
        json.WriteInterval(name, unit is null ? percent : percent.Scale(1m / unit.PercentPerUnit), unit?.Text ?? "%");

    /// <summary>A range: an end that is left out is absent.</summary>
    public static void WriteInterval(this Utf8JsonWriter json, string name, Interval range, string unit)
    {
        json.WriteStartObject(name);
        if (range.Lower is { } low)
        {
            json.WriteNumber("from", low == Interval.WithoutEnd ? 0m : Short(low));
            json.WriteBoolean("fromIncluded", range.LowerIncluded);
        }

        if (range.Upper is { } high && high != Interval.WithoutEnd)
        {
            json.WriteNumber("to", Short(high));
            json.WriteBoolean("toIncluded", range.UpperIncluded);
        }

        if (range.IsPoint && range.Lower == Interval.WithoutEnd) json.WriteBoolean("withoutEnd", true);
        json.WriteString("unit", unit);
        json.WriteEndObject();
    }

    /// <summary>The states of the data an output rests on.</summary>
    public static void WriteIdentity(this Utf8JsonWriter json, IReadOnlyList<DataIdentity> identity) =>
        json.WriteList("identity", identity, state =>
        {
            json.WriteStartObject();
            json.WriteString("name", state.Name);
            json.WriteString("version", state.Version);
            json.WriteString("hash", state.Hash);
            json.WriteEndObject();
        });

    /// <summary>A number without trailing zeros.</summary>
    public static decimal Short(decimal value) => value / 1.000000000000000000000000000000000m;

    /// <summary>The unit that an axis other than strength is written in.</summary>
    public static string UnitOf(Axis axis) => axis switch
    {
        Axis.Dilution => "share of volume",
        Axis.ExposureTime => "s",
        Axis.Temperature => "°C",
        Axis.Uses => "uses",
        _ => "pH",
    };
}
