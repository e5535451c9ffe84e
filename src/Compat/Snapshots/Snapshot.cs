using System.Security.Cryptography;

namespace Compat.Snapshots;

/// <summary>The file form of a knowledge base: a mark, the format version, the content hash, the body.</summary>
internal static class Snapshot
{
    private const int FormatVersion = 6;
    private const int HashLength = 32;
    private const string Digits = "0123456789abcdef";
    private const int FirstBytes = 1024 * 1024;
    private const int MostBytes = 64 * 1024 * 1024;

    private static readonly byte[] Mark = [0x43, 0x4F, 0x4D, 0x50, 0x41, 0x54, 0x0A, FormatVersion];

    public static byte[] Write(KnowledgeData data)
    {
        var body = SnapshotWriter.Body(data);
        return [.. Mark, .. Hash(body), .. body];
    }

    /// <summary>Reads a snapshot; each record when it is first asked for.</summary>
    /// <param name="stream">The snapshot, from where it stands to its end.</param>
    /// <param name="ownResource">Whether it is the one inside this library: its content is not hashed again then, a test has done so for all.</param>
    /// <param name="hash">The content hash.</param>
    /// <exception cref="SnapshotException">The bytes are no whole snapshot of this format version.</exception>
    public static KnowledgeData Read(Stream stream, bool ownResource, out string hash)
    {
        var head = new byte[Mark.Length + HashLength];
        var length = Fill(stream, head, 0);
        for (var i = 0; i < Math.Min(length, Mark.Length); i++)
            if (head[i] != Mark[i])
                throw new SnapshotException(i == Mark.Length - 1 ? $"format version {head[i]}, expected {FormatVersion}" : "it does not begin as one");
        if (length < head.Length) throw new SnapshotException("it ends too early");
        var body = Rest(stream);
        var stated = new byte[HashLength];
        Array.Copy(head, Mark.Length, stated, 0, HashLength);
        if (!ownResource && !Hash(body).SequenceEqual(stated)) throw new SnapshotException("its content does not match its hash");
        hash = Text(stated);
        return SnapshotReader.Read(body);
    }

    /// <summary>Reads all records, and refuses rules that are not in the order of their ids.</summary>
    /// <exception cref="SnapshotException">One is damaged, or they are not in order.</exception>
    public static void ReadWhole(KnowledgeData data)
    {
        IEnumerable<object>[] kinds =
        [
            data.Materials, data.Parts, data.Agents, data.Sources, data.Rules, data.Conventions, data.StandingRules, data.Organisms, data.Levels, data.Needs,
            data.Claims, data.MixingHazards, data.HarmlessMeetings, data.PersonRules, data.Protections, data.InstructionWords, data.Occasions,
                data.TestStandards,
        ];
        foreach (var _ in kinds.SelectMany(records => records)) { }
        for (var i = 1; i < data.Rules.Count; i++)
            if (data.Rules[i - 1].Id.CompareTo(data.Rules[i].Id) > 0) throw new SnapshotException("rules are not in order");
    }

    public static string HashOf(byte[] body) => Text(Hash(body));

    /// <summary>
    /// All that is left of a stream, read as it comes: what a stream says of its length is believed up to a megabyte, and an array of that length is not
    /// copied.
    /// </summary>
    private static byte[] Rest(Stream stream)
    {
        var bytes = new byte[stream.CanSeek ? (int)Math.Max(0, Math.Min(FirstBytes, stream.Length - stream.Position)) : FirstBytes];
        var length = Fill(stream, bytes, 0);
        while (length == bytes.Length && stream.ReadByte() is >= 0 and var next)
        {
            if (length >= MostBytes) throw new SnapshotException("it is too large");
            Array.Resize(ref bytes, Math.Max(FirstBytes, 2 * length));
            bytes[length] = (byte)next;
            length = Fill(stream, bytes, length + 1);
        }

        if (length < bytes.Length) Array.Resize(ref bytes, length);
        return bytes;
    }

    /// <summary>Fills an array from a place on, as far as the stream reaches.</summary>
    /// <returns>How many bytes the array holds then.</returns>
    private static int Fill(Stream stream, byte[] bytes, int length)
    {
        while (length < bytes.Length && stream.Read(bytes, length, bytes.Length - length) is > 0 and var read) length += read;
        return length;
    }

    private static byte[] Hash(byte[] body) => SHA256.HashData(body);

    private static string Text(byte[] hash)
    {
        var text = new System.Text.StringBuilder(2 * hash.Length);
        foreach (var b in hash) text.Append(Digits[b >> 4]).Append(Digits[b & 15]);
        return text.ToString();
    }
}
