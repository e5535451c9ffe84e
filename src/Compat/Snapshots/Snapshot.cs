using System.Security.Cryptography;
using Compat.Knowledge;

namespace Compat.Snapshots;

/// <summary>The file form of a knowledge base: a mark, the format version, the content hash, the body.</summary>
internal static class Snapshot
{
    private const int FormatVersion = 2;
    private const int HashLength = 32;
    private const int MostBytes = 256 * 1024 * 1024;

    private static readonly byte[] Mark = [0x43, 0x4F, 0x4D, 0x50, 0x41, 0x54, 0x0A, FormatVersion];

    public static byte[] Write(KnowledgeData data)
    {
        var body = SnapshotWriter.Body(data);
        return [.. Mark, .. Hash(body), .. body];
    }

    /// <exception cref="SnapshotException">The bytes are no whole snapshot of this format version.</exception>
    public static KnowledgeData Read(Stream stream, out string hash)
    {
        using var copy = new MemoryStream();
        var buffer = new byte[81920];
        for (int read; (read = stream.Read(buffer, 0, buffer.Length)) > 0;)
        {
            copy.Write(buffer, 0, read);
            if (copy.Length > MostBytes) throw new SnapshotException("it is too large");
        }

        var bytes = copy.ToArray();
        if (bytes.Length < Mark.Length + HashLength) throw new SnapshotException("it ends too early");
        for (var i = 0; i < Mark.Length; i++)
            if (bytes[i] != Mark[i]) throw new SnapshotException(i == Mark.Length - 1 ? $"format version {bytes[i]}, expected {FormatVersion}" : "it does not begin as one");
        var start = Mark.Length + HashLength;
        var stated = new byte[HashLength];
        Array.Copy(bytes, Mark.Length, stated, 0, HashLength);
        var body = new byte[bytes.Length - start];
        Array.Copy(bytes, start, body, 0, body.Length);
        if (!Hash(body).SequenceEqual(stated)) throw new SnapshotException("its content does not match its hash");
        hash = Text(stated);
        return SnapshotReader.Read(bytes, start);
    }

    public static string HashOf(byte[] body) => Text(Hash(body));

    private static byte[] Hash(byte[] body)
    {
#if NET
        return SHA256.HashData(body);
#else
        using var sha = SHA256.Create();
        return sha.ComputeHash(body);
#endif
    }

    private static string Text(byte[] hash) => string.Concat(hash.Select(b => b.ToString("x2", System.Globalization.CultureInfo.InvariantCulture)));
}
