using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Notes where each record stands while the records are read.</summary>
internal sealed class PlaceBuilder
{
    private readonly Dictionary<(RecordKind Kind, string Id), List<(SourceText Source, YamlMapping Record)>> _records = [];

    /// <summary>The kinds of which some record could not be read at all, so that references to it cannot be judged.</summary>
    public HashSet<RecordKind> Gaps { get; } = [];

    /// <summary>Notes a record.</summary>
    public void Add(RecordKind kind, string id, YamlMapping record, SourceText source)
    {
        if (!_records.TryGetValue((kind, id), out var list)) _records[(kind, id)] = list = [];
        list.Add((source, record));
    }

    /// <summary>Reads records of one kind and notes each.</summary>
    public IReadOnlyList<TRecord> Read<TRecord>(
        RecordKind kind, IEnumerable<RecordFields> records, Func<RecordFields, TRecord?> read, Func<TRecord, string> idOf)
        where TRecord : class
    {
        var list = new List<TRecord>();
        foreach (var fields in records)
        {
            if (read(fields) is not { } record)
            {
                Gaps.Add(kind);
                continue;
            }

            list.Add(record);
            Add(kind, idOf(record), fields.Mapping, fields.Faults.Source);
        }

        return list;
    }

    /// <summary>What was noted.</summary>
    public SourceMap Build() => new(_records);
}
