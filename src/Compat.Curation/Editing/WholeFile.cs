using System.Text;

namespace Compat.Curation.Editing;

/// <summary>Writes files whole or not at all: a run stopped at any moment leaves the old one.</summary>
public static class WholeFile
{
    /// <summary>Puts a text in place of a file, or makes the file.</summary>
    /// <param name="path">The file; a link stays, what it leads to is replaced.</param>
    /// <param name="text">Its new text.</param>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Replace(string path, string text)
    {
        var target = (File.Exists(path) ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null) ?? path;
        var beside = target + ".new";
        try
        {
            using (var stream = new FileStream(beside, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                stream.Write(Encoding.UTF8.GetBytes(text));
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && File.Exists(target)) File.SetUnixFileMode(beside, File.GetUnixFileMode(target));
            File.Move(beside, target, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }
}
