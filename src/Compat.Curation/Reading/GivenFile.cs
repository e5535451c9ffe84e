using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;

namespace Compat.Curation.Reading;

/// <summary>A file that the caller named, read once: it may be a pipe, which gives its bytes once only.</summary>
/// <param name="Path">The file; it is shown by this name.</param>
/// <param name="Bytes">Its bytes; null where it could not be read.</param>
/// <param name="Faults">What kept it from being read.</param>
internal sealed record GivenFile(string Path, byte[]? Bytes, IReadOnlyList<Diagnostic> Faults)
{
    /// <summary>Reads a file.</summary>
    public static GivenFile Read(string path)
    {
        var faults = new List<Diagnostic>();
        return new(path, SourceReader.ReadBytes(path, path, faults), faults);
    }

    /// <summary>Reads files, each name once.</summary>
    public static IReadOnlyList<GivenFile> Read(IReadOnlyList<string> paths)
    {
        var read = paths.Distinct(StringComparer.Ordinal).ToDictionary(path => path, Read, StringComparer.Ordinal);
        return paths.Select(path => read[path]).ToArray();
    }
}
