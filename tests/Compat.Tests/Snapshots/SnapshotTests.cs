using Compat.Snapshots;
using Compat.Tests.Evaluation;

namespace Compat.Tests.Snapshots;

/// <summary>A snapshot gives back what it holds, and a damaged one is a typed error, never a wrong answer.</summary>
public class SnapshotTests
{
    private static byte[] Bytes(KnowledgeData data)
    {
        using var stream = new MemoryStream();
        EyeWorkshop.Build(data).Save(stream);
        return stream.ToArray();
    }

    private static KnowledgeBase Load(byte[] bytes) => KnowledgeBase.Load(new MemoryStream(bytes));

    [Fact]
    public void What_is_read_back_writes_the_same_bytes_and_carries_the_same_hash()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        var back = Load(bytes);
        Assert.Equal(bytes, Bytes(back.Data));
        Assert.Equal(EyeWorkshop.Base.Identity[0].Hash, back.Identity[0].Hash);
        Assert.Empty(Compat.Validation.KnowledgeValidation.Check(back.Data));
    }

    [Fact]
    public void The_order_of_records_changes_no_byte()
    {
        var turned = EyeWorkshop.Data with
        {
            Materials = EyeWorkshop.Data.Materials.Reverse().ToArray(),
            Rules = EyeWorkshop.Data.Rules.Reverse().ToArray(),
            Agents = EyeWorkshop.Data.Agents.Reverse().ToArray(),
        };
        Assert.Equal(Bytes(EyeWorkshop.Data), Bytes(turned));
    }

    [Fact]
    public void Every_single_bit_that_flips_is_noticed()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        Assert.True(bytes.Length < 16 * 1024);
        for (var bit = 0; bit < bytes.Length * 8; bit++)
        {
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Throws<SnapshotException>(() => Load(bytes));
            bytes[bit / 8] ^= (byte)(1 << (bit % 8));
        }
    }

    [Fact]
    public void Every_cut_is_noticed()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        for (var length = 0; length < bytes.Length; length++) Assert.Throws<SnapshotException>(() => Load(bytes[..length]));
        Assert.Throws<SnapshotException>(() => Load([.. bytes, 0]));
    }

    [Fact]
    public void Another_format_version_says_so()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        bytes[7] = 9;
        var error = Assert.Throws<SnapshotException>(() => Load(bytes));
        Assert.Contains("format version 9, expected 3", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_body_that_lies_about_its_counts_is_refused_even_with_a_fitting_hash()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        for (var at = 40; at < bytes.Length; at++)
        {
            var forged = (byte[])bytes.Clone();
            forged[at] ^= 0x7F;
            System.Security.Cryptography.SHA256.HashData(forged.AsSpan(40)).CopyTo(forged, 8);
            try
            {
                SnapshotReader.Read(forged, 40);
            }
            catch (SnapshotException)
            {
                continue;
            }
        }
    }
}
