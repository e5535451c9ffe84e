using Compat.Snapshots;
using Compat.Tests.Validation;

namespace Compat.Tests.Snapshots;

/// <summary>A forged snapshot whose hash fits is a typed error, or a knowledge base that can be asked. Little memory is taken either way.</summary>
public class ForgedSnapshotTests
{
    private static readonly byte[] Small = Snapshot.Write(EveryKind.Data);

    [Fact]
    public void Every_change_of_one_byte_and_every_cut()
    {
        var accepted = 0;
        foreach (var forged in ForgedSnapshot.Each(Small)) accepted += IsAccepted(forged) ? 1 : 0;
        Assert.InRange(accepted, 1, Small.Length * 11);
    }

    [Fact]
    public void Random_changes_of_the_small_one()
    {
        var random = new Random(20261125);
        for (var i = 0; i < 5_000; i++) IsAccepted(ForgedSnapshot.Random(Small, random));
    }

    [Fact]
    public void Random_changes_of_the_shipped_one()
    {
        var shipped = Snapshot.Write(KnowledgeBase.Shipped.Data);
        var random = new Random(20261125);
        for (var i = 0; i < 200; i++) IsAccepted(ForgedSnapshot.Random(shipped, random));
    }

    [Fact]
    public void A_tree_as_deep_as_a_file_is_long()
    {
        var deep = EveryKind.Data with
        {
            Materials = [
                .. EveryKind.Data.Materials, .. Enumerable.Range(0, 20_000)
                .Select(i => new Material { Id = new($"m{i}"), Name = "m", Under = i == 0 ? Material.Root : new($"m{i - 1}") })],
        };
        var error = Assert.Throws<SnapshotException>(() => KnowledgeBase.Load(new MemoryStream(Snapshot.Write(deep))));
        Assert.Contains("levels below the root", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Very_many_references_to_nothing()
    {
        var lost = EveryKind.Data with
        {
            Materials =
                [.. EveryKind.Data.Materials, .. Enumerable.Range(0, 20_000).Select(i => new Material { Id = new($"m{i}"), Name = "m", Under = new($"n{i}") })],
        };
        var error = Assert.Throws<SnapshotException>(() => KnowledgeBase.Load(new MemoryStream(Snapshot.Write(lost))));
        Assert.Contains("20000 problems", error.Message, StringComparison.Ordinal);
    }

    private static bool IsAccepted(byte[] forged)
    {
        KnowledgeBase kb;
        var before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            kb = KnowledgeBase.Load(new MemoryStream(forged));
        }
        catch (SnapshotException)
        {
            return false;
        }
        finally
        {
            var taken = GC.GetAllocatedBytesForCurrentThread() - before;
            Assert.InRange(taken, 0, (1 << 22) + (100L * forged.Length));
        }

        for (var i = 0; i < 8; i++) Ask(kb, kb.Data.Parts[(forged[8] + i) % kb.Data.Parts.Count].Id, kb.Data.Agents[(forged[9] + i) % kb.Data.Agents.Count].Id);
        return true;
    }

    private static void Ask(KnowledgeBase kb, PartId part, AgentId agent)
    {
        var question = new Question
        {
            Part = part,
            Agent = agent,
            Method = ApplicationMethod.DampWipe,
            ExposureTime = Interval.Exactly(60),
            Temperature = Interval.Exactly(20),
            Ph = Interval.Exactly(7),
        };
        Assert.True(kb.TryAsk(question, out var answer, out var problems), string.Join("; ", problems));
        Assert.Equal(answer!.Verdict >= Verdict.AllowedWithinLimits, answer.BoxCount > 0);
    }
}
