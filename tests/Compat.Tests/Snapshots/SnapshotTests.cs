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
        Assert.Contains("format version 9, expected 6", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void By_its_hash_it_gives_the_same_answers_without_being_read_whole()
    {
        using var stream = new MemoryStream();
        KnowledgeBase.Shipped.Save(stream);
        stream.Position = 0;
        var whole = KnowledgeBase.Load(stream);
        stream.Position = 0;
        var known = KnowledgeBase.Load(stream, whole.Identity[0].Hash);
        Assert.Equal(whole.Identity, known.Identity);
        foreach (var part in whole.Data.Parts.Where((_, i) => i % 12 == 0))
        {
            foreach (var agent in whole.Data.Agents.Where((_, i) => i % 9 == 0))
            {
                var question = new Question { Part = part.Id, Agent = agent.Id };
                Assert.Equivalent(whole.Ask(question), known.Ask(question), strict: true);
            }
        }

        Assert.Equal(whole.Compiled.Rules.Select(rule => rule.Rule.Id), known.Compiled.Rules.Select(rule => rule.Rule.Id));
    }

    [Fact]
    public void A_rule_is_compiled_once_whichever_threads_ask()
    {
        using var stream = new MemoryStream();
        KnowledgeBase.Shipped.Save(stream);
        var compiled = Load(stream.ToArray(), KnowledgeBase.Shipped.Identity[0].Hash).Compiled;
        var seen = new Compat.Deciding.CompiledRule[4][];
        Parallel.For(0, seen.Length, i => seen[i] = Enumerable.Range(0, compiled.Heads.Count).Select(compiled.RuleAt).ToArray());
        foreach (var others in seen)
            Assert.All(others.Zip(seen[0]), pair => Assert.Same(pair.First, pair.Second));
    }

    [Fact]
    public void By_the_hash_of_another_it_is_refused()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        var other = Bytes(EyeWorkshop.Data with { Version = "another" });
        var error = Assert.Throws<SnapshotException>(() => Load(other, Load(bytes).Identity[0].Hash));
        Assert.Contains("expected " + Load(bytes).Identity[0].Hash, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void By_its_hash_a_damaged_one_is_refused()
    {
        var bytes = Bytes(EyeWorkshop.Data);
        var hash = Load(bytes).Identity[0].Hash;
        for (var at = 0; at < bytes.Length; at += 7)
        {
            var damaged = (byte[])bytes.Clone();
            damaged[at] ^= 4;
            Assert.Throws<SnapshotException>(() => Load(damaged, hash));
        }
    }

    [Fact]
    public void A_boundary_that_is_not_listed_is_refused()
    {
        var stored = (StoredRules)Snapshot.Read(new MemoryStream(Bytes(EyeWorkshop.Data)), ownResource: false, out _).Rules;
        for (var axis = 0; axis < stored.Cuts.Length; axis++) stored.Cuts[axis] = [];
        var compiled = new Compat.Deciding.CompiledBase(EyeWorkshop.Data with { Rules = stored }, []);
        Assert.Throws<SnapshotException>(() => compiled.Rules);
    }

    private static KnowledgeBase Load(byte[] bytes, string hash) => KnowledgeBase.Load(new MemoryStream(bytes), hash);
}
