using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Which file of a data folder is of which kind. A file that nobody would read is a fault, not a surprise; only `README.md` and
/// `CHANGELOG.md` may stand beside them.</summary>
internal static class FolderLayout
{
    private static readonly string[] Beside = ["README.md", "CHANGELOG.md"];
    private const string Extension = ".yaml";
    private const string Form = "a name is lower-case letters, digits and hyphens, and ends in `.yaml`";

    private static readonly Dictionary<string, FileKind> Folders = new()
    {
        ["materials"] = FileKind.Materials,
        ["parts"] = FileKind.Parts,
        ["agents"] = FileKind.Agents,
        ["sources"] = FileKind.Sources,
        ["rules"] = FileKind.Rules,
        ["organisms"] = FileKind.Organisms,
        ["efficacy"] = FileKind.Efficacy,
        ["mixing"] = FileKind.Mixing,
        ["persons"] = FileKind.Persons,
        ["protection"] = FileKind.Protection,
        ["patterns"] = FileKind.Patterns,
    };

    private static readonly Dictionary<string, FileKind> Files = new()
    {
        ["conventions.yaml"] = FileKind.Conventions,
        ["standing.yaml"] = FileKind.Standing,
        ["levels.yaml"] = FileKind.Levels,
        ["test-standards.yaml"] = FileKind.TestStandards,
        ["needs.yaml"] = FileKind.Needs,
        ["instruction-words.yaml"] = FileKind.InstructionWords,
        ["occasions.yaml"] = FileKind.Occasions,
        ["version.yaml"] = FileKind.Version,
    };

    private static readonly Dictionary<FileKind, RecordKind> Records = new()
    {
        [FileKind.Materials] = RecordKind.Material,
        [FileKind.Parts] = RecordKind.Part,
        [FileKind.Agents] = RecordKind.Agent,
        [FileKind.Sources] = RecordKind.Source,
        [FileKind.Rules] = RecordKind.Rule,
        [FileKind.Conventions] = RecordKind.Convention,
        [FileKind.Standing] = RecordKind.StandingRule,
        [FileKind.Organisms] = RecordKind.Organism,
        [FileKind.Levels] = RecordKind.Level,
        [FileKind.Needs] = RecordKind.Need,
        [FileKind.Efficacy] = RecordKind.Claim,
        [FileKind.Mixing] = RecordKind.Mixing,
        [FileKind.Persons] = RecordKind.PersonRule,
        [FileKind.Protection] = RecordKind.Protection,
        [FileKind.InstructionWords] = RecordKind.InstructionWord,
        [FileKind.Occasions] = RecordKind.Occasion,
    };

    /// <summary>The kinds of record in a data folder.</summary>
    public static IReadOnlyCollection<RecordKind> RecordKinds => Records.Values;

    /// <summary>The kinds of record in a kind of file: one, or none.</summary>
    public static IEnumerable<RecordKind> RecordsOf(FileKind kind) => Records.TryGetValue(kind, out var records) ? [records] : [];

    /// <summary>The kinds of record that a file would hold by the folder it is in, whatever its name.</summary>
    public static IEnumerable<RecordKind> RecordsIn(string path) =>
        Folders.TryGetValue(path.Split('/')[0], out var kind) || Files.TryGetValue(path, out kind) ? RecordsOf(kind) : [];

    /// <summary>The kind of a file by its path in the folder, parts joined by <c>/</c>; null where it is not read.</summary>
    /// <remarks>Names have one form, so that none can hide, be taken for another on some machine, or be a command in a log; a stray copy is no second
    /// file.</remarks>
    public static FileKind? KindOf(string path, string shownAs, List<Diagnostic> faults)
    {
        var parts = path.Split('/');
        if (Beside.Contains(parts[^1])) return null;
        if (!path.EndsWith(Extension, StringComparison.Ordinal) || !parts[..^1].Append(parts[^1][..^Extension.Length]).All(IsFormed))
        {
            faults.Add(path.Contains('\uFFFD', StringComparison.Ordinal)
                ? new("file-name", "the name of this file is no UTF-8", $"rename it: {Form}", shownAs, null)
                : new("file-name", $"no file in a data folder is called `{path}`",
                    $"{Form}: `{string.Join('/', parts[..^1].Select(Formed).Append(Formed(Bare(parts[^1])) + Extension))}`, or move it out of the folder",
                    shownAs, null));
            return null;
        }

        if (parts.Length > 1 && parts[0] == "demo") return null;
        if (parts.Length == 1 ? Files.TryGetValue(path, out var kind) : Folders.TryGetValue(parts[0], out kind)) return kind;
        var help = parts.Length == 1
            ? NearestNames.Help(path, Files.Keys) ?? "known files: " + string.Join(", ", Files.Keys.Select(name => $"`{name}`"))
            : NearestNames.Help(parts[0], Folders.Keys) ?? "known folders: " + string.Join(", ", Folders.Keys.Select(name => $"`{name}`"));
        faults.Add(new("file-name", "nothing reads this file", help, shownAs, null));
        return null;
    }

    private static bool IsFormed(string name) => name.Length > 0 && name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-');

    private static string Bare(string name) => name.IndexOf('.', 1) is var dot and > 0 ? name[..dot] : name;

    /// <summary>A name brought to the form: words of lower-case letters and digits, joined by hyphens.</summary>
    private static string Formed(string name)
    {
        var words = string.Concat(name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? "name" : string.Join('-', words);
    }
}
