using System.Collections;

namespace Compat.Snapshots;

/// <summary>The records of one kind as a snapshot holds them: each is read when it is first asked for, and kept.</summary>
/// <param name="texts">The texts they name.</param>
/// <param name="bytes">The body of the snapshot.</param>
/// <param name="starts">Where each record begins, and where the last one ends.</param>
/// <param name="read">Reads one.</param>
internal class StoredRecords<T>(SnapshotTexts texts, byte[] bytes, int[] starts, Func<SnapshotReader, T> read) : IReadOnlyList<T>, IStoredIds, IFrozen where T
    : class
{
    private readonly T?[] _records = new T?[starts.Length - 1];

    public int Count => _records.Length;

    /// <exception cref="SnapshotException">It is damaged, which the hash of the file did not show: it was forged.</exception>
    public T this[int index] => _records[index] ?? Read(index);

    /// <summary>The id of a record, which is what each begins with.</summary>
    public string IdAt(int index) => HeadOf(index).Text();

    /// <summary>A reader at the begin of a record.</summary>
    public SnapshotReader HeadOf(int index) => new(texts, bytes, starts[index], starts[index + 1]);

    public IEnumerator<T> GetEnumerator()
    {
        for (var i = 0; i < Count; i++) yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private T Read(int index)
    {
        var reader = HeadOf(index);
        T record;
        try
        {
            record = read(reader);
        }
        catch (ArgumentException problem)
        {
            throw new SnapshotException(problem.Message);
        }

        if (!reader.IsAtEnd) throw new SnapshotException("a record does not fill its length");
        return Interlocked.CompareExchange(ref _records[index], record, null) ?? record;
    }
}
