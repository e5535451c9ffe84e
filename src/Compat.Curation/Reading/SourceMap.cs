using System.Globalization;
using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Knows where each record stands in the files. Immutable and safe to share between threads.</summary>
public sealed class SourceMap
{
    private readonly Dictionary<(RecordKind Kind, string Id), List<(SourceText Source, YamlMapping Record)>> _records;

    internal SourceMap(Dictionary<(RecordKind Kind, string Id), List<(SourceText Source, YamlMapping Record)>> records) => _records = records;

    /// <summary>
    /// The place of a problem: its field where that is written, else the nearest that is, else the id of the record; null where there is no such record.
    /// </summary>
    public SourcePlace? Find(ProblemPlace place)
    {
        if (Record(place) is not { } found) return null;
        var span = FieldSpan(found.Record, place.Field) ?? IdSpan(found.Record);
        return new(found.Source, span);
    }

    /// <summary>The whole stretch of a record; null where there is no such record.</summary>
    public SourcePlace? FindRecord(ProblemPlace place) => Record(place) is { } found ? new(found.Source, found.Record.Span) : null;

    /// <summary>What is written at a field, as it stands in the file; null where the record does not write it.</summary>
    internal string? WrittenAt(ProblemPlace place)
    {
        if (Record(place) is not { } found) return null;
        YamlNode node = found.Record;
        foreach (var step in place.Field.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if ((node as YamlMapping)?.Find(step) is not { } entry) return null;
            node = entry.Value;
        }

        return node is YamlScalar scalar ? scalar.Text : found.Source.Excerpt(node.Span);
    }

    /// <summary>The ids of the records whose stretch is such.</summary>
    internal IReadOnlyList<string> IdsOf(Func<SourcePlace, bool> isSuch) =>
        _records.Where(pair => pair.Value.Any(one => isSuch(new(one.Source, one.Record.Span)))).Select(pair => pair.Key.Id).ToArray();

    /// <summary>This map with the records of another behind its own.</summary>
    internal SourceMap With(SourceMap other)
    {
        var all = _records.ToDictionary(pair => pair.Key, pair => pair.Value.ToList());
        foreach (var (key, value) in other._records)
        {
            if (all.TryGetValue(key, out var list)) list.AddRange(value);
            else all[key] = [.. value];
        }

        return new(all);
    }

    private (SourceText Source, YamlMapping Record)? Record(ProblemPlace place) =>
        _records.TryGetValue((place.Kind, place.Id), out var list) ? list[Math.Clamp(place.Occurrence, 0, list.Count - 1)] : null;

    private static TextSpan IdSpan(YamlMapping record)
    {
        var head = record.Find("site")?.Value as YamlMapping ?? record;
        return head.Find("id")?.Value.Span ?? NodePath.PointAt(record);
    }

    private static TextSpan? FieldSpan(YamlMapping record, string field)
    {
        YamlNode node = record;
        TextSpan? span = null;
        foreach (var step in field.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if (node is YamlMapping mapping && mapping.Find(step) is { } entry)
            {
                node = entry.Value;
                span = node is YamlScalar { IsNothing: false } ? node.Span : entry.Key.Span;
            }
            else if (
                node is YamlSequence list && int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < list.Items.Count)
            {
                node = list.Items[index];
                span = NodePath.PointAt(node);
            }
            else
            {
                break;
            }
        }

        return span;
    }
}
