namespace Compat.Benchmarks.Asking;

/// <summary>What peers cannot be asked: overrides and duties, two ingredients of one class, axes left out.</summary>
internal static class RichBenchmark
{
    public static void Table(Workload work)
    {
        var problems = KnowledgeBase.TryBuild(WorkloadBase.Data(work, rich: true), out var data);
        if (problems.Count > 0) throw new InvalidOperationException(problems[0].ToString());
        Console.WriteLine($"\n{work.Rules.Length} rules with overrides and duties, Compat alone");
        Console.WriteLine($"  {"microseconds a question",-46} {"mean",12} {"median",12} {"p99",12} {"bytes",10}");
        var plain = data!.With(WorkloadBase.Site(work));
        Print("points", plain, work, question => question);
        Print("exposure time left out", plain, work, question => question with { ExposureTime = null });
        Print("temperature, pH and uses left out", plain, work, question => question with { Temperature = null, Ph = null, Uses = null });
        Print("two ingredients of one class", data.With(WorkloadBase.Site(work, Doubled)), work, question => question);
    }

    /// <summary>Half of the first ingredient is a sibling of the same class.</summary>
    private static (int Agent, int Strength)[] Doubled(Asked asked)
    {
        var first = asked.Ingredients[0];
        var sibling = Enumerable.Range(0, Workload.Agents)
            .First(agent => agent != first.Agent
            && Workload.Up(agent, Workload.ParentOfAgent).Last() == Workload.Up(first.Agent, Workload.ParentOfAgent).Last());
        return [(first.Agent, first.Strength / 2), (sibling, first.Strength / 2), .. asked.Ingredients.Skip(1)];
    }

    private static void Print(string what, KnowledgeBase kb, Workload work, Func<Question, Question> change)
    {
        var prepared = work.Questions.Select((_, i) => kb.Prepare(change(WorkloadBase.Question(work, i)))).ToArray();
        Console.WriteLine(Figures.Of(prepared.Length, i => kb.VerdictOf(prepared[i])).Row(what + ", verdict only"));
        Console.WriteLine(Figures.Of(Math.Min(200, prepared.Length), i => AnswerReading.ReadAll(kb.Ask(prepared[i]))).Row(what + ", the answer"));
    }
}
