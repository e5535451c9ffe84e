using System.Security.Cryptography;

namespace Compat.Tests.Snapshots;

/// <summary>Forges snapshots: whoever changes one can reckon its hash anew.</summary>
internal static class ForgedSnapshot
{
    private const int Body = 40;

    /// <summary>Puts the hash of the body into its head.</summary>
    public static byte[] Seal(byte[] bytes)
    {
        SHA256.HashData(bytes.AsSpan(Body)).CopyTo(bytes, 8);
        return bytes;
    }

    /// <summary>Every bit turned, every byte made 0 and the largest, every end cut off.</summary>
    public static IEnumerable<byte[]> Each(byte[] bytes)
    {
        for (var at = Body; at < bytes.Length; at++)
        {
            for (var bit = 0; bit < 8; bit++) yield return With(bytes, at, (byte)(bytes[at] ^ (1 << bit)));
            yield return With(bytes, at, 0);
            yield return With(bytes, at, 0x7F);
            yield return Seal(bytes[..at]);
        }
    }

    /// <summary>At random: numbers made huge, stretches doubled, dropped, moved, filled with chance.</summary>
    public static byte[] Random(byte[] bytes, Random random)
    {
        var forged = bytes.ToList();
        for (var times = random.Next(1, 5); times > 0; times--)
        {
            var at = random.Next(Body, forged.Count);
            var length = Math.Min(random.Next(1, 40), forged.Count - at);
            var stretch = forged.GetRange(at, length);
            switch (random.Next(5))
            {
                case 0:
                    forged.RemoveAt(at);
                    forged.InsertRange(at, Huge(random));
                    break;
                case 1:
                    forged.InsertRange(at, stretch);
                    break;
                case 2:
                    if (forged.Count - length > Body + 1) forged.RemoveRange(at, length);
                    break;
                case 3:
                    forged.RemoveRange(at, length);
                    forged.InsertRange(random.Next(Body, forged.Count + 1), stretch);
                    break;
                default:
                    for (var i = 0; i < length; i++) forged[at + i] = (byte)random.Next(256);
                    break;
            }
        }

        return Seal([.. forged]);
    }

    private static IEnumerable<byte> Huge(Random random)
    {
        for (var i = random.Next(1, 10); i > 0; i--) yield return (byte)random.Next(0x80, 0x100);
        yield return (byte)random.Next(0x80);
    }

    private static byte[] With(byte[] bytes, int at, byte value)
    {
        var forged = (byte[])bytes.Clone();
        forged[at] = value;
        return Seal(forged);
    }
}
