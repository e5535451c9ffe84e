using System.Diagnostics.CodeAnalysis;
using Compat.Snapshots;

namespace Compat.Validation;

/// <summary>
/// Records by id: of several with the same id, the first. The table is made when it is first asked for; whichever thread makes it makes the same.
/// </summary>
/// <param name="records">Records.</param>
/// <param name="others">More of them, of the sites.</param>
/// <param name="name">The id of one, as text.</param>
internal sealed class RecordsById<TId, T>(IReadOnlyList<T> records, IReadOnlyList<T> others, Func<T, string> name) where TId : class where T : class
{
    private Dictionary<string, int>? _places;

    /// <summary>The ids as text, in the order of the records.</summary>
    public IEnumerable<string> Names => Places.Keys;

    /// <summary>The records, in order.</summary>
    public IEnumerable<T> Values => Places.Values.Select(At);

    private Dictionary<string, int> Places => _places ??= Numbered();

    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public T this[TId key] => At(Places[key.ToString()!]);

    /// <summary>The record of an id as text, which need not be one; null where there is none.</summary>
    public T? Find(string id) => Places.TryGetValue(id, out var place) ? At(place) : null;

    public bool ContainsKey(TId key) => Places.ContainsKey(key.ToString()!);

    public bool TryGetValue(TId key, [NotNullWhen(true)] out T? record)
    {
        record = Places.TryGetValue(key.ToString()!, out var place) ? At(place) : null;
        return record is not null;
    }

    private T At(int place) => place < records.Count ? records[place] : others[place - records.Count];

    private Dictionary<string, int> Numbered()
    {
        var places = new Dictionary<string, int>(records.Count + others.Count, StringComparer.Ordinal);
        for (var i = 0; i < records.Count + others.Count; i++)
        {
            var id = i < records.Count && records is IStoredIds stored ? stored.IdAt(i) : name(At(i));
            if (!places.ContainsKey(id)) places[id] = i;
        }

        return places;
    }
}
