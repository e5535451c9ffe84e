using System.Text;
using Compat.Curation.Reading;

namespace Compat.Curation.Editing;

/// <summary>Writes files whole or not at all: a run stopped at any moment leaves the old one.</summary>
internal static class WholeFile
{
    private const int Tries = 40;
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    /// <summary>Makes a file that is not there yet.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">Its text.</param>
    /// <exception cref="IOException">It is there already, or cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Create(string path, string text) =>
        Write(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)), null, beside => File.Move(beside, path, overwrite: false));

    /// <summary>Puts a text in place of a file, or makes the file.</summary>
    /// <param name="path">The file; a link stays, what it leads to is replaced.</param>
    /// <param name="text">Its new text.</param>
    /// <param name="read">What was read of the file: where it holds anything else by now, it is left as it is. Null: whatever it holds is replaced.</param>
    /// <exception cref="IOException">It cannot be written, is no file of bytes (a pipe, a device, a folder), or was changed since it was read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Replace(string path, string text, ReadOnlyMemory<byte>? read = null) =>
        Replace(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)), read);

    /// <summary>Puts bytes in place of a file, or makes the file.</summary>
    /// <param name="path">The file; a link stays, what it leads to is replaced.</param>
    /// <param name="write">Writes the bytes.</param>
    /// <param name="read">What was read of the file: where it holds anything else by now, it is left as it is. Null: whatever it holds is replaced.</param>
    /// <exception cref="IOException">It cannot be written, is no file of bytes (a pipe, a device, a folder), or was changed since it was read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Replace(string path, Action<Stream> write, ReadOnlyMemory<byte>? read = null)
    {
        var target = TargetOf(path);
        var isThere = File.Exists(target);
        Write(target, write, isThere && !OperatingSystem.IsWindows() ? File.GetUnixFileMode(target) : null, beside =>
        {
            using var held = read is { } bytes ? Held(target, bytes.Span) : null;
            if (OperatingSystem.IsWindows()) held?.Dispose();
            File.Move(beside, target, overwrite: true);
        });
    }

    /// <summary>The file a path leads to, which is a file of bytes or not there yet.</summary>
    private static string TargetOf(string path)
    {
        var target = new FileInfo(path).LinkTarget is null ? path : File.ResolveLinkTarget(path, returnFinalTarget: true)!.FullName;
        if (File.Exists(target) || Directory.Exists(target)) return RegularFile.Is(target) ? target : throw new IOException("it is no file of bytes");
        return target == path ? path : throw new IOException("it is a link that leads nowhere");
    }

    /// <summary>Writes a file of a fresh name beside the target, then lets it take its place.</summary>
    private static void Write(string target, Action<Stream> write, UnixFileMode? mode, Action<string> take)
    {
        var beside = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(target))!, "." + Path.GetRandomFileName());
        using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None))
        {
            try
            {
                write(stream);
                stream.Flush(flushToDisk: true);
                if (mode is { } bits && !OperatingSystem.IsWindows()) File.SetUnixFileMode(stream.SafeFileHandle, bits);
            }
            catch
            {
                stream.Dispose();
                File.Delete(beside);
                throw;
            }
        }

        try
        {
            take(beside);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }

    /// <summary>Keeps other runs off a file while it is replaced. What was read of it stands in it still, and the path leads to it.</summary>
    private static FileStream Held(string target, ReadOnlySpan<byte> read)
    {
        for (var tried = 1; ; tried++)
        {
            try
            {
                var held = new FileStream(target, FileMode.Open, FileAccess.Read, FileShare.None);
                if (IsStill(held, target, read)) return held;
                held.Dispose();
                break;
            }
            catch (IOException fault) when (fault is not (FileNotFoundException or DirectoryNotFoundException) && tried < Tries)
            {
                Thread.Sleep(Pause);
            }
        }

        throw new IOException("it was changed since it was read, by another run or an editor; nothing is written, run this again");
    }

    private static bool IsStill(FileStream held, string target, ReadOnlySpan<byte> read)
    {
        if (held.Length != read.Length || File.GetLastWriteTimeUtc(held.SafeFileHandle) != File.GetLastWriteTimeUtc(target)) return false;
        var now = new byte[read.Length];
        held.ReadExactly(now);
        return read.SequenceEqual(now);
    }
}
