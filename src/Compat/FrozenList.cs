using System.Collections;
using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>A list that nobody can change, whoever holds it.</summary>
internal interface IFrozen;

/// <summary>
/// Copies what is handed over to a record, so that a record stays as it was made: its owner may fill or empty his own list afterwards, and neither
/// the answers nor the hash that stands for them change.
/// </summary>
internal static class Frozen
{
    /// <summary>A copy of a list; the list itself where it is a copy already.</summary>
    [return: NotNullIfNotNull(nameof(list))]
    public static IReadOnlyList<T>? Of<T>(IReadOnlyList<T>? list) =>
        list is null or IFrozen ? list : list.Count == 0 ? [] : new FrozenList<T>([.. list]);

    /// <summary>A copy of a table of lists.</summary>
    [return: NotNullIfNotNull(nameof(table))]
    public static IReadOnlyDictionary<TKey, IReadOnlyList<T>>? Of<TKey, T>(IReadOnlyDictionary<TKey, IReadOnlyList<T>>? table) where TKey : notnull =>
        table?.ToDictionary(pair => pair.Key, pair => Of(pair.Value));
}

/// <summary>The copy of a list. Equal to another of the same items in the same order.</summary>
internal sealed class FrozenList<T>(T[] items) : IReadOnlyList<T>, IFrozen
{
    public int Count => items.Length;

    public T this[int index] => items[index];

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => items.GetEnumerator();

    public override bool Equals(object? other) => ReferenceEquals(this, other) || (other is FrozenList<T> list && items.SequenceEqual(list.Items));

    public override int GetHashCode()
    {
        var hash = items.Length;
        foreach (var item in items) hash = (hash * 397) ^ (item?.GetHashCode() ?? 0);
        return hash;
    }

    private T[] Items => items;
}
