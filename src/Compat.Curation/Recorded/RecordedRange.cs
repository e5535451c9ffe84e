using Compat.Curation.Reading;
using Compat.Serialization;

namespace Compat.Curation.Recorded;

/// <summary>Reads ranges as the outputs of the command write them.</summary>
internal static class RecordedRange
{
    /// <summary>The range of a key on an axis; null where it is not written or wrong, which is reported.</summary>
    internal static Interval? Read(RecordFields record, string key, Axis axis) => Read(record, key, JsonWriting.UnitOf(axis));

    /// <summary>The range of a key in a unit; null where it is not written or wrong, which is reported.</summary>
    internal static Interval? Read(RecordFields record, string key, string unit)
    {
        if (record.Record(key) is not { } range) return null;
        if (range.Scalar("unit") is { } written && written.Text != unit) range.Report(written, "unit", $"`{key}` is in `{written.Text}`", $"expected `{unit}`");
        return Read(range, key);
    }

    /// <summary>A strength in the unit it is written in.</summary>
    internal static Strength? ReadStrength(RecordFields record, string key)
    {
        if (record.Record(key) is not { } range) return null;
        if (StrengthUnit.TryParse(range.Text("unit"), out var unit)) return Read(range, key) is { } figures ? new Strength(figures, unit) : null;
        range.ReportRecord("unit", $"`{key}` has no unit that a strength is written in");
        return null;
    }

    /// <summary>A range whose upper end, where it is 'without end', is left out, as it is written.</summary>
    internal static Interval Written(Interval range) => range.Upper == Interval.WithoutEnd
        && !range.IsPoint ? new(range.Lower, range.LowerIncluded, null, false) : range;

    private static Interval? Read(RecordFields range, string key)
    {
        if (range.Yes("withoutEnd")) return Interval.Exactly(Interval.WithoutEnd);
        foreach (var end in new[] { "from", "to" })
            if (range.Has(end) != range.Has(end + "Included")) range.ReportRecord("range", $"`{key}` states only one of `{end}` and `{end}Included`");
        var read = new Interval(range.PlainNumber("from"), range.Yes("fromIncluded"), range.PlainNumber("to"), range.Yes("toIncluded"));
        if (!read.IsEmpty) return read;
        range.ReportRecord("range", $"no value lies in `{key}`");
        return null;
    }
}
