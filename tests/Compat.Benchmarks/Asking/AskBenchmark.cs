using System.Diagnostics;
using System.Globalization;

namespace Compat.Benchmarks.Asking;

/// <summary>
/// What a question costs beside other engines and beside the least that a program of any kind needs. Ends with exit code 1 where two engines disagree.
/// </summary>
internal static class AskBenchmark
{
    private static readonly string Head = $"  {"microseconds a question",-46} {"mean",12} {"median",12} {"p99",12} {"bytes",10}";
    private static readonly double[] AheadOfBent = [70, 190, 500];

    /// <param name="isShort">Whether fewer questions and no large sets are asked, as in the pipeline.</param>
    public static int Run(bool isShort)
    {
        int[] sizes = isShort ? [500, 5_000] : [500, 5_000, 50_000];
        var means = new List<double>();
        for (var i = 0; i < sizes.Length; i++)
        {
            var work = new Workload(sizes[i], isShort ? 2_000 : 10_000);
            if (!Table(work, isShort ? 4 : sizes[i] switch { 500 => 100, 5_000 => 10, _ => 2 }, AheadOfBent[i], isShort, out var mean)) return 1;
            means.Add(mean);
        }

        Print($"verdict only, growth from {sizes[0]} to {sizes[^1]} rules: {means[^1] / means[0]:0.0} times (reach: 8 to 50,000)");
        foreach (var size in sizes) RichBenchmark.Table(new Workload(size, size > 5_000 ? 20 : isShort ? 500 : 2_000));
        LoadTimes.PrintAll(isShort);
        return 0;
    }

    private static bool Table(Workload work, int peerQuestions, double aheadOfBent, bool isShort, out double mean)
    {
        var flat = new FlatTable(work);
        var problems = KnowledgeBase.TryBuild(WorkloadBase.Data(work, rich: false), out var data);
        if (problems.Count > 0) throw new InvalidOperationException(problems[0].ToString());
        var kb = data!.With(WorkloadBase.Site(work));
        var questions = work.Questions.Select((_, i) => WorkloadBase.Question(work, i)).ToArray();
        var prepared = questions.Select(kb.Prepare).ToArray();
        var count = prepared.Length;
        var truth = Enumerable.Range(0, count).Select(flat.Of).ToArray();
        mean = 0;
        var some = Math.Min(count, work.Rules.Length > 5_000 ? 20 : 500);
        for (var i = 0; i < count; i++)
            if (kb.VerdictOf(prepared[i]) != truth[i] || (i < some && kb.Ask(prepared[i]).Verdict != truth[i]))
                return Disagree($"question {i}: {kb.VerdictOf(prepared[i])}, the flat array says {truth[i]}");

        Print($"\n{work.Rules.Length} rules, {count} questions ({string.Join(", ", truth.GroupBy(v => v).OrderBy(g => g.Key).Select(g => $"{g.Count()} {g.Key}"))})");
        Console.WriteLine(Head);
        var limit = Figures.Of(count, i => flat.Of(i));
        var verdict = Figures.Of(count, i => kb.VerdictOf(prepared[i]));
        var unread = Figures.Of(some, i => kb.Ask(prepared[i]));
        var read = Figures.Of(some, i => AnswerReading.ReadAll(kb.Ask(prepared[i])));
        Console.WriteLine(limit.Row("the limit: a flat array by target and agent"));
        Console.WriteLine(verdict.Row("Compat, verdict only"));
        Console.WriteLine(unread.Row("Compat, the answer, unread"));
        Console.WriteLine(read.Row("Compat, the answer, read in full"));
        Console.WriteLine(Figures.Of(some, i => kb.Prepare(questions[i])).Row("Compat, preparing a question"));
        var best = double.MaxValue;
        foreach (var make in Peers(work))
        {
            var from = Stopwatch.GetTimestamp();
            var peer = make();
            for (var i = 0; i < peerQuestions; i++)
                if (Ask(peer, work, i) is var said && said != truth[i]) return Disagree($"question {i}: {peer.Name} says {said}, the flat array {truth[i]}");
            var ready = Stopwatch.GetElapsedTime(from);
            var cost = Figures.Of(peerQuestions, i => Ask(peer, work, i));
            Console.WriteLine(cost.Row($"{peer.Name} ({peerQuestions} asked; ready in {ready.TotalSeconds:0.0} s)"));
            best = Math.Min(best, cost.Mean);
        }

        if (work.Rules.Length > 500) Console.WriteLine("  NRules, as shipped: compiling grows with the square of the rules (a minute for 5,000); left out");
        Print($"  verdict only: {verdict.Mean / limit.Mean:0.0} times the limit (reach: 3), {verdict.Bytes:0} bytes (reach: 0)");
        Print($"  verdict only: p99 {verdict.P99 / verdict.Median:0.0} times the median (reach: 4)");
        Print($"  full answer: unread {unread.Mean / limit.Mean:0.0} times the limit, {unread.Bytes:0} bytes; read in full {read.Mean:0.0} microseconds (reach: 20), {read.Bytes:0} bytes");
        Print($"  ahead of the best peer: {best / verdict.Mean:0} times (reach: {aheadOfBent})");
        if (!isShort) Scaling(kb, prepared);
        mean = verdict.Mean;
        return true;
    }

    /// <summary>Compiling all rules into one session of NRules takes too long beyond the smallest set.</summary>
    private static IEnumerable<Func<IPeer>> Peers(Workload work)
    {
        yield return () => new RulesEnginePeer(work, atItsBest: false);
        yield return () => new RulesEnginePeer(work, atItsBest: true);
        if (work.Rules.Length <= 500) yield return () => new NRulesPeer(work, atItsBest: false);
        yield return () => new NRulesPeer(work, atItsBest: true);
    }

    private static Verdict Ask(IPeer peer, Workload work, int question)
    {
        var asked = work.Questions[question];
        var worst = Verdict.Allowed;
        for (var i = 0; i < asked.Ingredients.Length; i++)
        {
            var probe = new Probe(work, asked, i);
            peer.Run(probe, asked.Part);
            if (probe.Verdict < worst) worst = probe.Verdict;
        }

        return worst;
    }

    private static void Scaling(KnowledgeBase kb, PreparedQuestion[] prepared)
    {
        var one = Enumerable.Range(0, 3).Select(_ => Together(1)).Max();
        var two = Enumerable.Range(0, 3).Select(_ => Together(2)).Max();
        Print($"  two threads ask {two / one:0.00} times as many as one (reach: 1.8)");

        double Together(int threads)
        {
            var from = Stopwatch.GetTimestamp();
            var asking = Enumerable.Range(0, threads).Select(_ => new Thread(() =>
            {
                for (var pass = 0; pass < 40; pass++)
                    foreach (var question in prepared) kb.VerdictOf(question);
            })).ToArray();
            foreach (var thread in asking) thread.Start();
            foreach (var thread in asking) thread.Join();
            return threads / Stopwatch.GetElapsedTime(from).TotalSeconds;
        }
    }

    private static bool Disagree(string how)
    {
        Console.Error.WriteLine("the engines disagree: " + how);
        return false;
    }

    private static void Print(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
