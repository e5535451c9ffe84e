using System.Security.Cryptography;
using Compat.Knowledge;

namespace Compat.Snapshots;

/// <summary>The file form of a knowledge base: a mark, the format version, the content hash, the body.</summary>
internal static class Snapshot
{
    private const int FormatVersion = 3;
    private const int HashLength = 32;
    private const string Digits = "0123456789abcdef";
    private const int MostBytes = 256 * 1024 * 1024;

    private static readonly byte[] Mark = [0x43, 0x4F, 0x4D, 0x50, 0x41, 0x54, 0x0A, FormatVersion];

    public static byte[] Write(KnowledgeData data)
    {
        var body = SnapshotWriter.Body(data);
        return [.. Mark, .. Hash(body), .. body];
    }

    /// <summary>Reads a snapshot.</summary>
    /// <param name="stream">The snapshot, from where it stands to its end.</param>
    /// <param name="ownResource">Whether it is the one inside this library: its content is not hashed again then, a test has done so for all.</param>
    /// <param name="hash">The content hash.</param>
    /// <exception cref="SnapshotException">The bytes are no whole snapshot of this format version.</exception>
    public static KnowledgeData Read(Stream stream, bool ownResource, out string hash)
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
        if (!ownResource && !HashOfBody(bytes, start).SequenceEqual(stated)) throw new SnapshotException("its content does not match its hash");
        hash = Text(stated);
        return SnapshotReader.Read(bytes, start);
    }

    public static string HashOf(byte[] body) => Text(Hash(body));

    private static byte[] HashOfBody(byte[] bytes, int start)
    {
        var body = new byte[bytes.Length - start];
        Array.Copy(bytes, start, body, 0, body.Length);
        return Hash(body);
    }

    private static byte[] Hash(byte[] body) => SHA256.HashData(body);

    private static string Text(byte[] hash)
    {
        var text = new System.Text.StringBuilder(2 * hash.Length);
        foreach (var b in hash) text.Append(Digits[b >> 4]).Append(Digits[b & 15]);
        return text.ToString();
    }
}
