using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Which file of a data folder is of which kind. A YAML file that nobody would read is a fault, not a surprise.</summary>
internal static class FolderLayout
{
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

    /// <summary>The kind of a file by its path in the folder, parts joined by <c>/</c>; null where it is not read.</summary>
    public static FileKind? KindOf(string path, string shownAs, List<Diagnostic> faults)
    {
        var isYaml = path.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".yml", StringComparison.OrdinalIgnoreCase);
        var slash = path.IndexOf('/', StringComparison.Ordinal);
        var folder = slash < 0 ? "" : path[..slash];
        if (!isYaml || folder == "demo") return null;
        FileKind kind;
        if (slash < 0 ? Files.TryGetValue(path, out kind) : Folders.TryGetValue(folder, out kind))
        {
            if (path.EndsWith(".yaml", StringComparison.Ordinal)) return kind;
            faults.Add(new("file-name", "a data file's name ends in `.yaml`", "rename it", shownAs, null));
            return null;
        }

        var help = slash < 0
            ? NearestNames.Help(path, Files.Keys) ?? "known files: " + string.Join(", ", Files.Keys.Select(name => $"`{name}`"))
            : NearestNames.Help(folder, Folders.Keys) ?? "known folders: " + string.Join(", ", Folders.Keys.Select(name => $"`{name}`"));
        faults.Add(new("file-name", "nothing reads this file", help, shownAs, null));
        return null;
    }
}
