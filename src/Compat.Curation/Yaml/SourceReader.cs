using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Unicode;
using Compat.Curation.Diagnostics;

namespace Compat.Curation.Yaml;

/// <summary>Brings the bytes of a file to text: size limited, strictly UTF-8, without characters that cannot be seen.</summary>
internal static class SourceReader
{
    /// <summary>How many bytes a file may have.</summary>
    public const int MaximumBytes = 16 * 1024 * 1024;

    /// <summary>Reads a file; null where it could not be read, with the reason.</summary>
    public static byte[]? ReadBytes(string path, string shownAs, List<Diagnostic> faults, int most = MaximumBytes)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 64 * 1024);
            if (stream.CanSeek && stream.Length > most) return TooLarge(shownAs, most, faults);
            using var copy = new MemoryStream();
            var buffer = new byte[64 * 1024];
            int read;
            while ((read = stream.Read(buffer)) > 0)
            {
                copy.Write(buffer, 0, read);
                if (copy.Length > most) return TooLarge(shownAs, most, faults);
            }

            return copy.ToArray();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            faults.Add(fault is FileNotFoundException or DirectoryNotFoundException
                ? new("file-not-found", "there is no such file", null, shownAs, null)
                : new("file-not-readable", "the file cannot be read", null, shownAs, null));
            return null;
        }
    }

    /// <summary>Decodes bytes; null where they are too many or no UTF-8.</summary>
    public static SourceText? Decode(byte[] bytes, string shownAs, List<Diagnostic> faults)
    {
        if (bytes.Length > MaximumBytes)
        {
            TooLarge(shownAs, MaximumBytes, faults);
            return null;
        }

        var body = bytes.AsSpan();
        var mark = body.StartsWith("\uFEFF"u8) ? 3 : 0;
        body = body[mark..];
        var chars = new char[body.Length];
        var status = Utf8.ToUtf16(body, chars, out var read, out var written, replaceInvalidSequences: false);
        if (status == OperationStatus.Done) return new(shownAs, new string(chars, 0, written));
        var source = new SourceText(shownAs, Encoding.UTF8.GetString(body));
        faults.Add(Diagnostic.At(
            new(source, new(written, 1)),
            "not-utf8",
            string.Create(CultureInfo.InvariantCulture, $"byte {read + mark} of the file (0x{body[read]:X2}) is no UTF-8"),
            "save the file as UTF-8"));
        return null;
    }

    private static byte[]? TooLarge(string shownAs, int most, List<Diagnostic> faults)
    {
        faults.Add(new("file-too-large", $"the file has more than {most / 1024 / 1024} MB", "split it into several files", shownAs, null));
        return null;
    }
}
