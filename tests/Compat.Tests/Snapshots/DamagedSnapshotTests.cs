using System.Globalization;
using Compat.Snapshots;
using Compat.Tests.Validation;

namespace Compat.Tests.Snapshots;

/// <summary>A damaged snapshot is a typed error, never an answer. Of the shipped one 10,000 damages are tried, or all with COMPAT_EVERY_DAMAGE=1.</summary>
public class DamagedSnapshotTests
{
    private static readonly byte[] Small = Snapshot.Write(EveryKind.Data);
    private static readonly byte[] Shipped = Snapshot.Write(KnowledgeBase.Shipped.Data);

    [Fact]
    public void The_small_one_is_small_and_holds_every_kind_of_record()
    {
        Assert.InRange(Small.Length, 1000, 16 * 1024);
        var data = KnowledgeBase.Load(new MemoryStream(Small)).Data;
        foreach (var property in typeof(KnowledgeData).GetProperties())
            if (property.GetValue(data) is IEnumerable<object> records) Assert.True(records.Any(), property.Name);
    }

    [Fact]
    public void Every_bit_that_flips_in_the_small_one_is_noticed()
    {
        for (var bit = 0; bit < Small.Length * 8; bit++) Refuses(Flipped(Small, bit), bit);
    }

    [Fact]
    public void Every_cut_of_the_small_one_is_noticed()
    {
        for (var length = 0; length < Small.Length; length++) Refuses(Small[..length], length);
        Refuses([.. Small, 0], Small.Length + 1);
        Refuses([.. Small, .. Small], 2 * Small.Length);
    }

    [Fact]
    public void Damages_of_the_shipped_one_are_noticed()
    {
        var all = Environment.GetEnvironmentVariable("COMPAT_EVERY_DAMAGE") == "1";
        var random = new Random(20261125);
        var count = all ? Shipped.Length * 9 : 10_000;
        for (var i = 0; i < count; i++)
        {
            var at = all ? i : random.Next(Shipped.Length * 9);
            Refuses(at < Shipped.Length ? Shipped[..at] : Flipped(Shipped, at - Shipped.Length), at);
        }
    }

    [Fact]
    public void A_stream_without_end_is_given_up()
    {
        var error = Assert.Throws<SnapshotException>(() => KnowledgeBase.Load(new EndlessStream(Small)));
        Assert.Contains("too large", error.Message, StringComparison.Ordinal);
        Assert.Throws<SnapshotException>(() => KnowledgeBase.Load(new EndlessStream([])));
    }

    private static byte[] Flipped(byte[] bytes, int bit)
    {
        var damaged = (byte[])bytes.Clone();
        damaged[bit / 8] ^= (byte)(1 << (bit % 8));
        return damaged;
    }

    private static void Refuses(byte[] bytes, int at)
    {
        var error = Record.Exception(() => KnowledgeBase.Load(new MemoryStream(bytes)));
        Assert.True(error is SnapshotException, string.Create(CultureInfo.InvariantCulture, $"damage {at}: {error}"));
    }

    /// <summary>What it was given, then zeros for ever; a few bytes at a time.</summary>
    private sealed class EndlessStream(byte[] start) : Stream
    {
        private int _at;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            count = Math.Min(count, 70_001);
            for (var i = 0; i < count; i++) buffer[offset + i] = _at < start.Length ? start[_at++] : (byte)0;
            return count;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
