using Compat.Snapshots;
using Compat.Tests.Evaluation;

namespace Compat.Tests.Snapshots;

/// <summary>A snapshot gives back what it holds.</summary>
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
    public void Another_format_version_says_so()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        bytes[7] = 9;
        var error = Assert.Throws<SnapshotException>(() => Load(bytes));
        Assert.Contains("format version 9, expected 4", error.Message, StringComparison.Ordinal);
    }
}
