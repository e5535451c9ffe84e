using System.Text;
using Compat.Planning;

namespace Compat.Tests.Sharing;

/// <summary>One knowledge base serves many threads: what they are told is what one is told. Long calls can be given up.</summary>
public class ParallelAskTests
{
    private static readonly Question[] Questions = MakeQuestions();

    [Fact]
    public void Answers_of_many_threads_equal_those_of_one()
    {
        var alone = Questions.Select(question => Said(Fresh(), question)).ToArray();
        var shared = Fresh();
        var together = new string[Questions.Length * 4];
        Parallel.For(0, together.Length, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i => together[i] = Said(shared, Questions[i % Questions.Length]));
        for (var i = 0; i < together.Length; i++) Assert.Equal(alone[i % Questions.Length], together[i]);
    }

    [Fact]
    public void Long_calls_are_given_up_where_that_is_asked()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => KnowledgeBase.Shipped.Map(Questions[0], source.Token));
        Assert.Throws<OperationCanceledException>(() => KnowledgeBase.Shipped.Alternatives(Questions[0], source.Token));
        Assert.NotEmpty(KnowledgeBase.Shipped.Map(Questions[0]).Cells);
        var planned = Plans.RandomSites.Over(Plans.RandomSites.Make(1));
        var plan = new PlanQuestion { Device = Plans.RandomSites.Device };
        Assert.Throws<OperationCanceledException>(() => planned.PlanOf(plan, source.Token));
        Assert.NotEmpty(planned.PlanOf(plan, CancellationToken.None).Parts);
    }

    [Fact]
    public void No_type_of_the_library_has_a_static_that_changes()
    {
        var found = typeof(KnowledgeBase).Assembly.GetTypes()
            .Where(type => !type.Name.Contains('<', StringComparison.Ordinal))
            .SelectMany(
                type => type.GetFields(
                    System.Reflection.BindingFlags.Static | System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.NonPublic
                    | System.Reflection.BindingFlags.DeclaredOnly))
            .Where(field => field is { IsInitOnly: false, IsLiteral: false })
            .Select(field => $"{field.DeclaringType}.{field.Name}").ToArray();
        Assert.True(found.Length == 0, string.Join("\n", found));
    }

    private static KnowledgeBase Fresh()
    {
        using var stream = new MemoryStream();
        KnowledgeBase.Shipped.Save(stream);
        stream.Position = 0;
        return KnowledgeBase.Load(stream);
    }

    private static Question[] MakeQuestions()
    {
        var data = KnowledgeBase.Shipped.Data;
        var random = new Random(20261125);
        return Enumerable.Range(0, 40).Select(i => new Question
        {
            Part = data.Parts[random.Next(data.Parts.Count)].Id,
            Agent = data.Agents[random.Next(data.Agents.Count)].Id,
            Method = i % 2 == 0 ? ApplicationMethod.DampWipe : null,
            OnlyPart = i % 3 == 0,
        }).ToArray();
    }

    private static string Said(KnowledgeBase kb, Question question)
    {
        var answer = kb.Ask(question);
        var text = new StringBuilder($"{answer.Verdict} {answer.Decisive.Code} {answer.BoxCount} {answer.MayUse}");
        foreach (var reason in answer.Reasons) text.Append($"; {reason.Code} {string.Join(' ', reason.Arguments)}");
        foreach (var box in answer.Boxes) text.Append($"; {box.Method} {box.Strength} {box.ExposureTime} {box.Temperature} {box.Ph} {box.Uses}");
        foreach (var rule in answer.DecidedBy) text.Append($"; {rule.Id}");
        foreach (var identity in answer.Identity) text.Append($"; {identity.Hash}");
        return text.ToString();
    }
}
