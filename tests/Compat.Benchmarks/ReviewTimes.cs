using System.Diagnostics;
using Compat.Curation.Reviewing;

namespace Compat.Benchmarks;

/// <summary>How long a review takes: of a large synthetic base with a hundred edited rules, and of the shipped data with the start of the process.</summary>
internal static class ReviewTimes
{
    private const int Edited = 100;

    public static void Print()
    {
        foreach (var rules in new[] { 500, 50_000 })
        {
            var before = SyntheticData.Of(rules);
            var after = Edit(before);
            GC.Collect();
            var used = Process.GetCurrentProcess().TotalProcessorTime;
            var watch = Stopwatch.StartNew();
            var steps = new StepTimes(watch);
            var report = DataReview.Run(before, [], after, [], steps.Begin);
            steps.End();
            Console.WriteLine($"{rules,6} rules, {report.Edits.Count} edited: review {steps.Whole.TotalMilliseconds:0} ms "
                + $"({(Process.GetCurrentProcess().TotalProcessorTime - used).TotalMilliseconds:0} ms of processor time), {report.Compared} pairs compared, "
                + $"{report.Groups.Sum(group => group.Answers.Count)} boxes by {report.Groups.Select(group => group.Cause?.Id).Distinct().Count()} edits");
            Console.WriteLine($"       {steps.Sum()}");
        }

        PrintShipped();
    }

    /// <summary>A hundred rules, spread evenly: of each the first axis that is bounded is moved by a tenth, or its duties are dropped.</summary>
    private static KnowledgeData Edit(KnowledgeData data)
    {
        var step = Math.Max(1, data.Rules.Count / Edited);
        return data with { Rules = data.Rules.Select((rule, i) => i % step == 0 && i / step < Edited ? Edit(rule) : rule).ToArray() };
    }

    private static Rule Edit(Rule rule)
    {
        static AxisLimit Moved(AxisLimit limit) => AxisLimit.Within(limit.Range.Scale(1.1m));
        if (rule.When.Strength.Statement == AxisStatement.Within) return rule with { When = rule.When with { Strength = Moved(rule.When.Strength) } };
        if (rule.When.ExposureTime.Statement == AxisStatement.Within) return rule with
        {
            When = rule.When with { ExposureTime = Moved(rule.When.ExposureTime) },
        };
        return rule.Duties.Count > 0 ? rule with { Duties = [] } : rule with { When = rule.When with { Temperature = AxisLimit.Within(Interval.AtMost(40m)) } };
    }

    /// <summary>The program in a process of its own, on the data of the repository beside a copy with one edited rule.</summary>
    private static void PrintShipped()
    {
        var root = AppContext.BaseDirectory;
        while (root is not null && !File.Exists(Path.Combine(root, "Compat.sln"))) root = Path.GetDirectoryName(root.TrimEnd(Path.DirectorySeparatorChar));
        var program = root is null ? null : Path.Combine(root, "src", "Compat.Cli", "bin", "Release", "net10.0", "Compat.Cli.dll");
        if (program is null || !File.Exists(program))
        {
            Console.WriteLine("shipped data: build src/Compat.Cli in Release first");
            return;
        }

        var data = Path.Combine(root!, "data");
        var copy = Directory.CreateTempSubdirectory("compat-review-").FullName;
        foreach (var file in Directory.EnumerateFiles(data, "*.yaml", SearchOption.AllDirectories))
        {
            var target = Path.Combine(copy, Path.GetRelativePath(data, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            var text = File.ReadAllText(file);
            var at = file.Contains(Path.Combine("rules", "parts"), StringComparison.Ordinal)
                ? text.IndexOf("strength: \"<= 70 % v/v\"", StringComparison.Ordinal) : -1;
            File.WriteAllText(target, at < 0 ? text : text.Remove(at + 11, 5).Insert(at + 11, "<= 75"));
        }

        for (var run = 0; run < 4; run++)
        {
            var watch = Stopwatch.StartNew();
            using var process = Process.Start(new ProcessStartInfo("dotnet", [program, "review", data, copy]) { RedirectStandardOutput = true })!;
            var last = process.StandardOutput.ReadToEnd().TrimEnd('\n').Split('\n')[^1];
            process.WaitForExit();
            if (run > 0) Console.WriteLine($"shipped data with the start of the process: {watch.ElapsedMilliseconds} ms ({last})");
        }

        Directory.Delete(copy, recursive: true);
    }
}
