namespace Compat.Snapshots;

/// <summary>The rules of a snapshot, in the order of their ids, with what is needed of them before any is read.</summary>
/// <param name="texts">The texts they name.</param>
/// <param name="bytes">The body of the snapshot.</param>
/// <param name="starts">Where each rule begins, and where the last one ends.</param>
/// <param name="cuts">The boundaries of all rules, axis by axis, each in order.</param>
internal sealed class StoredRules(SnapshotTexts texts, byte[] bytes, int[] starts, Cut[][] cuts)
    : StoredRecords<Rule>(texts, bytes, starts, static reader => reader.ReadRule())
{
    /// <summary>The boundaries of all rules, axis by axis, each in order.</summary>
    public Cut[][] Cuts => cuts;
}
