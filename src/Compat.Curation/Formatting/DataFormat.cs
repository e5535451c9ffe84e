using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>Brings data files and site files into the one canonical format.</summary>
/// <remarks>
/// Canonical is: the line that names the schema first; keys in the order of the schema; two spaces a level, list items one level further in;
/// <c>{ a: b }</c> and <c>[a, b]</c>; every value on one line, in double quotes only where it needs them or is measured; ranges as <c>&lt;= 70 % v/v</c>;
/// one space before a comment behind a value; at most one blank line; LF, no spaces at line ends, one line end at the end.
/// Kept is: every comment, the order of records, blank lines between, what is in brackets and what in lines, every value.
/// A file that cannot be read, or would not be read back as the same records, is left as it is. Nothing is written until <see cref="FormattedFile.Save"/>.
/// </remarks>
public static class DataFormat
{
    /// <summary>Formats a data folder with the site files in it, or a single data or site file.</summary>
    /// <param name="path">The folder or file; it is shown by this name.</param>
    public static FormatResult Of(string path) => Directory.Exists(path) ? OfFolder(path) : OfFile(path);

    private static FormatResult OfFolder(string directory)
    {
        var faults = new List<Diagnostic>();
        var data = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        var others = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        var paths = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (path, full) in FolderFiles.Find(directory, faults) ?? [])
        {
            var shownAs = DataFolder.Shown(directory, path);
            var isData = FolderLayout.KindOf(path, shownAs, faults) is not null;
            if ((!isData && (!path.EndsWith(".yaml", StringComparison.Ordinal) || faults.Any(fault => fault.File == shownAs)))
                || SourceReader.ReadBytes(full, shownAs, faults) is not { } bytes)
            {
                continue;
            }

            (isData ? data : others)[path] = bytes;
            paths[path] = full;
        }

        var read = DataFolder.Read(data, directory);
        faults.AddRange(read.Diagnostics);
        var files = new List<FormattedFile>();
        foreach (var (path, bytes) in data)
        {
            var kind = FolderLayout.KindOf(path, path, [])!.Value;
            var up = string.Concat(Enumerable.Repeat("../", path.Count(c => c == '/') + 1));
            Add(files, faults, kind, paths[path], DataFolder.Shown(directory, path), bytes, $"# yaml-language-server: $schema={up}schemas/{Words.Of(kind)}.schema.json");
        }

        foreach (var (path, bytes) in others)
        {
            var shownAs = DataFolder.Shown(directory, path);
            faults.AddRange(SiteFile.Read(bytes, shownAs, read.Data).Diagnostics);
            Add(files, faults, FileKind.Site, paths[path], shownAs, bytes, null);
        }

        if (paths.Count == 0 && faults.Count == 0) faults.Add(new("folder-empty", "the folder holds no data files", null, directory, null));
        faults.Sort();
        return new(files.OrderBy(file => file.ShownAs, StringComparer.Ordinal).ToArray(), faults);
    }

    private static FormatResult OfFile(string path)
    {
        var faults = new List<Diagnostic>();
        var files = new List<FormattedFile>();
        if (SourceReader.ReadBytes(path, path, faults) is { } bytes && SourceReader.Decode(bytes, path, faults) is { } source)
        {
            if (KindOf(source, faults) is { } kind)
            {
                faults.AddRange(kind == FileKind.Site ? SiteFile.Read(bytes, path, new()).Diagnostics : DataFolder.ReadOne(kind, bytes, path).Diagnostics);
                Add(files, faults, kind, path, path, bytes, null);
            }
        }

        return new(files, faults);
    }

    /// <summary>The kind of a single file: the one whose schema it names; a site file where it names none.</summary>
    private static FileKind? KindOf(SourceText source, List<Diagnostic> faults)
    {
        if (HeadPass.SchemaOf(HeadPass.LineEnds(source.Text)) is not { } name) return FileKind.Site;
        if (Words.TryParse<FileKind>(name, out var kind)) return kind;
        faults.Add(new("unknown-kind", $"the file names the schema `{name}`, which is not known", Validation.NearestNames.Help(name, Words.All<FileKind>()), source.Path, null));
        return null;
    }

    private static void Add(List<FormattedFile> files, List<Diagnostic> faults, FileKind kind, string path, string shownAs, byte[] bytes, string? modeline)
    {
        if (faults.Any(fault => fault.File == shownAs) || SourceReader.Decode(bytes, shownAs, faults) is not { } source) return;
        if (TextFormatter.Run(kind, source, modeline, faults) is { } after) files.Add(new(path, shownAs, bytes, after));
    }
}
