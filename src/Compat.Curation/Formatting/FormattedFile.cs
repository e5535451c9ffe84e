using System.Text;

namespace Compat.Curation.Formatting;

/// <summary>A file that was read, and its canonical form.</summary>
/// <param name="Path">The file.</param>
/// <param name="ShownAs">The name it is shown by.</param>
/// <param name="Before">Its bytes.</param>
/// <param name="After">Its canonical form.</param>
public sealed record FormattedFile(string Path, string ShownAs, ReadOnlyMemory<byte> Before, string After)
{
    /// <summary>Whether it holds renamed words, which the canonical form has in their new spelling.</summary>
    public bool IsRenewed { get; init; }

    /// <summary>The first line (from 1) that is not as it is written canonically; null where the file is canonical.</summary>
    public int? FirstChange
    {
        get
        {
            var after = Encoding.UTF8.GetBytes(After).AsSpan();
            var before = Before.Span;
            var same = before.CommonPrefixLength(after);
            return same == before.Length && same == after.Length ? null : before[..same].Count((byte)'\n') + 1;
        }
    }

    /// <summary>Writes the canonical form in place of the file: a reader sees the old or the new one whole.</summary>
    /// <exception cref="IOException">It cannot be written, or was changed since it was read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public void Save() => Editing.WholeFile.Replace(Path, After, Before);
}
