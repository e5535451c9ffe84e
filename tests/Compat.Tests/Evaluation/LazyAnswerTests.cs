using System.Text.Json;
using Compat.Tests.RandomCases;

namespace Compat.Tests.Evaluation;

/// <summary>What an answer to a prepared question says when it is read is what the answer that is made at once says.</summary>
public class LazyAnswerTests
{
    [Fact]
    public void Of_random_points_every_member_is_that_of_the_answer_made_at_once() => Same(Shape.Point);

    [Fact]
    public void Of_random_regions_every_member_is_that_of_the_answer_made_at_once() => Same(Shape.Region);

    [Fact]
    public void Of_the_shipped_data_every_member_is_that_of_the_answer_made_at_once()
    {
        var kb = KnowledgeBase.Shipped;
        var random = new Random(20261126);
        var worst = new Dictionary<Verdict, int>();
        for (var i = 0; i < 2_000; i++)
        {
            var agent = kb.Data.Agents[random.Next(kb.Data.Agents.Count)];
            var question = new Question
            {
                Part = kb.Data.Parts[random.Next(kb.Data.Parts.Count)].Id,
                Agent = agent.Id,
                Method = (ApplicationMethod)random.Next((int)ApplicationMethod.DampWipe, (int)ApplicationMethod.Immerse + 1),
                ExposureTime = Interval.Exactly(random.Next(1, 900)),
                Temperature = random.Next(3) == 0 ? null : Interval.Exactly(20),
                Ph = random.Next(3) == 0 ? null : Interval.Exactly(7),
                Uses = random.Next(2) == 0 ? 1 : 200,
                OnlyPart = true,
            };
            if (!kb.TryPrepare(question, out var prepared, out _)) continue;
            var answer = kb.Ask(prepared!);
            Assert.Equal(Text(kb.Ask(question)), Text(answer));
            worst[answer.Verdict] = worst.GetValueOrDefault(answer.Verdict) + 1;
        }

        Assert.Contains(Verdict.NotAllowed, worst.Keys);
        Assert.Contains(Verdict.NotEstablished, worst.Keys);
        Assert.Contains(Verdict.AllowedWithinLimits, worst.Keys);
    }

    [Fact]
    public void A_copy_reads_the_same_and_what_is_changed_in_it_stays_changed()
    {
        var kb = KnowledgeBase.Shipped;
        var answer = kb.Ask(kb.Prepare(Point));
        var copy = answer with { };
        Assert.Equal(answer, copy);
        Assert.Equal(answer.GetHashCode(), copy.GetHashCode());
        Assert.Same(copy.Reasons, answer.Reasons);
        var changed = answer with { Duties = [], Verdict = Verdict.NotEstablished };
        Assert.Empty(changed.Duties);
        Assert.Same(answer.Reasons, changed.Reasons);
        Assert.NotEqual(answer, changed);
    }

    [Fact]
    public void Many_threads_that_read_one_answer_read_the_same_lists()
    {
        var kb = KnowledgeBase.Shipped;
        var prepared = kb.Prepare(Point);
        for (var round = 0; round < 200; round++)
        {
            var answer = kb.Ask(prepared);
            var read = new object[8];
            Parallel.For(0, read.Length, i => read[i] = answer.Reasons);
            Assert.All(read, one => Assert.Same(read[0], one));
        }
    }

    [Fact]
    public void An_answer_that_is_not_read_costs_little_memory()
    {
        var kb = KnowledgeBase.Shipped;
        var prepared = kb.Prepare(Point);
        kb.Ask(prepared);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var answer = kb.Ask(prepared);
        var allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.InRange(allocated, 1, 256);
        GC.KeepAlive(answer);
    }

    private static Question Point => new()
    {
        Part = new PartId("keypad-membrane"),
        Agent = new AgentId("isopropanol"),
        Strength = new Strength(Interval.Exactly(70m), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume)),
        Method = ApplicationMethod.DampWipe,
        ExposureTime = Interval.Exactly(60),
        Temperature = Interval.Exactly(20),
        Ph = Interval.Exactly(7),
        Uses = 1,
        OnlyPart = true,
    };

    private static void Same(Shape shape) => RandomRun.ForAll(shape, random =>
    {
        var kb = random.Build();
        Assert.Equal(Text(kb.Ask(random.Question)), Text(kb.Ask(kb.Prepare(random.Question))));
    }, share: 4);

    private static string Text(Answer answer) => JsonSerializer.Serialize(answer);
}
