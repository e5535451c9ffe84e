using System.Text;
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
    /// <param name="renew">Whether renamed keys and words are written anew first; answers that describe a product are then renewed and keep their
    /// layout.</param>
    public static FormatResult Of(string path, bool renew = false) => Directory.Exists(path) ? OfFolder(path, renew) : OfFile(path, renew);

    private static FormatResult OfFolder(string directory, bool renew)
    {
        var faults = new List<Diagnostic>();
        var data = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        var others = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        var found = new Dictionary<string, (string Path, byte[] Bytes)>(StringComparer.Ordinal);
        var files = new List<FormattedFile>();
        foreach (var (path, full) in FolderFiles.Find(directory, faults) ?? [])
        {
            var shownAs = DataFolder.Shown(directory, path);
            var kind = FolderLayout.KindOf(path, shownAs, faults);
            if ((kind is null && (!path.EndsWith(".yaml", StringComparison.Ordinal) || faults.Any(fault => fault.File == shownAs)))
                || SourceReader.ReadBytes(full, shownAs, faults) is not { } bytes)
            {
                continue;
            }

            found[path] = (full, bytes);
            if (renew && kind is null && Renewal.IsOfAnswers(bytes)) files.Add(Answers(full, shownAs, bytes));
            else (kind is null ? others : data)[path] = renew ? Renewal.Of(kind ?? FileKind.Site, bytes) : bytes;
        }

        var read = DataFolder.Read(data, directory);
        faults.AddRange(read.Diagnostics);
        foreach (var (path, bytes) in data)
        {
            var kind = FolderLayout.KindOf(path, path, [])!.Value;
            var up = string.Concat(Enumerable.Repeat("../", path.Count(c => c == '/') + 1));
            Add(files, faults, kind, found[path], DataFolder.Shown(directory, path), bytes,
                $"# yaml-language-server: $schema={up}schemas/{Words.Of(kind)}.schema.json");
        }

        foreach (var (path, bytes) in others)
        {
            var shownAs = DataFolder.Shown(directory, path);
            faults.AddRange(SiteFile.Read(bytes, shownAs, read.Data).Diagnostics);
            Add(files, faults, FileKind.Site, found[path], shownAs, bytes, null);
        }

        if (found.Count == 0 && faults.Count == 0) faults.Add(new("folder-empty", "the folder holds no data files", null, directory, null));
        faults.Sort();
        return new(files.OrderBy(file => file.ShownAs, StringComparer.Ordinal).ToArray(), faults);
    }

    private static FormatResult OfFile(string path, bool renew)
    {
        var faults = new List<Diagnostic>();
        var files = new List<FormattedFile>();
        if (SourceReader.ReadBytes(path, path, faults) is { } bytes && SourceReader.Decode(bytes, path, faults) is { } source)
        {
            if (renew && Renewal.IsOfAnswers(bytes))
            {
                files.Add(Answers(path, path, bytes));
            }
            else if (KindOf(source, faults) is { } kind)
            {
                var before = bytes;
                if (renew) bytes = Renewal.Of(kind, bytes);
                faults.AddRange(kind == FileKind.Site ? SiteFile.Read(bytes, path, new()).Diagnostics : DataFolder.ReadOne(kind, bytes, path).Diagnostics);
                Add(files, faults, kind, (path, before), path, bytes, null);
            }
        }

        return new(files, faults);
    }

    /// <summary>The kind of a single file: the one whose schema it names; a site file where it names none.</summary>
    private static FileKind? KindOf(SourceText source, List<Diagnostic> faults)
    {
        if (HeadPass.SchemaOf(HeadPass.LineEnds(source.Text)) is not { } name) return FileKind.Site;
        if (Words.TryParse<FileKind>(name, out var kind)) return kind;
        faults.Add(
            new("unknown-kind", $"the file names the schema `{name}`, which is not known", Validation.NearestNames.Help(name, Words.All<FileKind>()),
            source.Path, null));
        return null;
    }

    private static FormattedFile Answers(string path, string shownAs, byte[] bytes)
    {
        var after = Renewal.Of(null, bytes);
        return new(path, shownAs, bytes, Encoding.UTF8.GetString(after)) { IsRenewed = after != bytes };
    }

    private static void Add(
        List<FormattedFile> files, List<Diagnostic> faults, FileKind kind, (string Path, byte[] Bytes) file, string shownAs, byte[] bytes, string? modeline)
    {
        if (faults.Any(fault => fault.File == shownAs) || SourceReader.Decode(bytes, shownAs, faults) is not { } source) return;
        if (TextFormatter.Run(kind, source, modeline, faults) is { } after) files.Add(new(file.Path, shownAs, file.Bytes, after)
        {
            IsRenewed = bytes != file.Bytes,
        });
    }
}
