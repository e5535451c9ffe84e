using Compat.Curation.Diagnostics;

namespace Compat.Curation.Reading;

/// <summary>The files below a folder. Links are not followed, and nothing but a file of bytes is given: anything else is a fault.</summary>
internal static class FolderFiles
{
    private const int MostDepth = 20;

    /// <summary>The files by their path in the folder, in the order of their names; null where the folder itself cannot be looked through.</summary>
    /// <param name="directory">The folder.</param>
    /// <param name="faults">Takes what cannot be read.</param>
    /// <param name="ending">How a name must end to be looked at.</param>
    public static List<(string Path, string Full)>? Find(string directory, List<Diagnostic> faults, string ending = "")
    {
        if (!Directory.Exists(directory))
        {
            faults.Add(new("folder-not-found", File.Exists(directory) ? "this is a file, not a folder" : "there is no such folder", null, directory, null));
            return null;
        }

        var found = new List<(string Path, string Full)>();
        if (!Gather(new DirectoryInfo(directory), "")) return null;
        found.Sort((one, other) => string.CompareOrdinal(one.Path, other.Path));
        return found;

        bool Gather(DirectoryInfo folder, string within)
        {
            try
            {
                foreach (var entry in folder.EnumerateFileSystemInfos()) Take(entry, within + entry.Name);
                return true;
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
            {
                faults.Add(new("folder-not-readable", "the folder cannot be read", null, DataFolder.Shown(directory, within.TrimEnd('/')), null));
                return false;
            }
        }

        void Take(FileSystemInfo entry, string path)
        {
            if (path.Contains('\uFFFD', StringComparison.Ordinal)) Refuse(path, "file-name", "the name of this file is no UTF-8", "give it another name");
            else if (entry.LinkTarget is not null)
                Refuse(path, "link-in-folder", "this is a link; links are not followed in a folder of files", "put the file itself there");
            else if (entry is DirectoryInfo folder && path.Count(c => c == '/') < MostDepth) Gather(folder, path + "/");
            else if (entry is DirectoryInfo) Refuse(path, "folder-too-deep", $"the folder lies more than {MostDepth} folders deep", null);
            else if (!path.EndsWith(ending, StringComparison.Ordinal)) return;
            else if (RegularFile.Is(entry.FullName)) found.Add((path, Path.Combine(directory, path)));
            else Refuse(path, "no-regular-file", "this is no file of bytes (a pipe or a device)", "take it out of the folder");
        }

        void Refuse(string path, string code, string message, string? help) => faults.Add(new(code, message, help, DataFolder.Shown(directory, path), null));
    }
}
