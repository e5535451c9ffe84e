using Compat.Tests.RandomCases;

namespace Compat.Tests.Evaluation;

/// <summary>A verdict that is looked up is that of the whole answer, and costs no memory.</summary>
public class PreparedTests
{
    [Fact]
    public void The_verdict_of_a_point_is_that_of_the_answer()
    {
        int asked = 0, lookedUp = 0;
        RandomRun.ForAll(Shape.Point, random =>
        {
            var kb = random.Build();
            var prepared = kb.Prepare(random.Question);
            Assert.Equal(kb.Ask(random.Question).Verdict, kb.VerdictOf(prepared));
            asked++;
            if (prepared.IsLookedUp) lookedUp++;
        });
        Assert.Equal(asked, lookedUp);
    }

    [Fact]
    public void The_verdict_of_a_region_is_that_of_the_answer()
    {
        var lookedUp = 0;
        RandomRun.ForAll(Shape.Region, random =>
        {
            var kb = random.Build();
            var prepared = kb.Prepare(random.Question);
            Assert.Equal(kb.Ask(random.Question).Verdict, kb.VerdictOf(prepared));
            if (prepared.IsLookedUp) lookedUp++;
        }, share: 4);
        Assert.True(lookedUp > 0);
    }

    [Fact]
    public void Where_kill_and_people_are_judged_the_verdict_is_that_of_the_answer() => RandomRun.ForAll(Shape.WholePoint, random =>
    {
        var kb = random.Build();
        var prepared = kb.Prepare(random.Question);
        Assert.Equal(kb.Ask(random.Question).Verdict, kb.VerdictOf(prepared));
        Assert.Equal(!random.Question.JudgesKillAndPeople, prepared.IsLookedUp);
    }, share: 20);

    [Fact]
    public void A_verdict_that_is_looked_up_allocates_nothing()
    {
        var all = new List<(KnowledgeBase Kb, PreparedQuestion Question)>();
        RandomRun.ForAll(Shape.Point, random => all.Add((random.Build(), random.Build().Prepare(random.Question))), share: 20);
        foreach (var (kb, question) in all) kb.VerdictOf(question);
        var before = GC.GetAllocatedBytesForCurrentThread();
        foreach (var (kb, question) in all) kb.VerdictOf(question);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    public void A_question_that_cannot_be_asked_is_not_prepared()
    {
        var kb = KnowledgeBase.Shipped;
        Assert.False(kb.TryPrepare(new Question { Part = new PartId("no-such-part"), Agent = AgentClass.Root }, out var prepared, out var problems));
        Assert.Null(prepared);
        Assert.Equal("unknown-part", Assert.Single(problems).Code);
        Assert.Throws<QuestionException>(() => kb.Prepare(new Question { Agent = AgentClass.Root }));
    }

    [Fact]
    public void A_question_is_asked_of_the_base_that_prepared_it()
    {
        var kb = KnowledgeBase.Shipped;
        var other = kb.With(new Site { Id = new SiteId("clinic"), Name = "clinic" });
        var prepared = kb.Prepare(new Question { Part = PartType.Root, Agent = AgentClass.Root });
        Assert.Throws<ArgumentException>(() => other.VerdictOf(prepared));
        Assert.Throws<ArgumentException>(() => other.Ask(prepared));
        Assert.Equal(kb.Ask(prepared.Question).Verdict, kb.Ask(prepared).Verdict);
    }
}
