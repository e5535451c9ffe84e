using System.Diagnostics;
using System.Globalization;
using System.Text;
using Compat.Curation;
using Compat.Tests.RandomCases;
using YamlDotNet.RepresentationModel;

namespace Compat.Benchmarks.Asking;

/// <summary>How long a snapshot takes to load, and rules in YAML to be read and validated beside a bare parse of the same text.</summary>
internal static class LoadTimes
{
    public static void PrintAll(bool isShort)
    {
        Console.WriteLine();
        Snapshot("the shipped snapshot", KnowledgeBase.Shipped, "5 ms");
        if (!isShort) Snapshot("a snapshot of 50,000 rules", Built(50_000), "50 ms and 12 MB");
        Yaml(isShort ? 500 : 5_000);
    }

    private static KnowledgeBase Built(int rules)
    {
        KnowledgeBase.TryBuild(WorkloadBase.Data(new Workload(rules, 1), rich: false), out var kb);
        return kb!;
    }

    private static void Snapshot(string what, KnowledgeBase kb, string reach)
    {
        using var stream = new MemoryStream();
        kb.Save(stream);
        var hash = kb.Identity[0].Hash;
        var (known, memory) = Loaded(stream, () => KnowledgeBase.Load(stream, hash));
        var (unknown, all) = Loaded(stream, () => KnowledgeBase.Load(stream));
        Print($"{what} ({stream.Length / 1_000} kB): by its hash loaded in {known:0.00} ms, {memory:0.0} MB kept (reach: {reach}); without, all records checked, in {unknown:0.0} ms, {all:0.0} MB");
    }

    private static (double Milliseconds, double Megabytes) Loaded(MemoryStream stream, Func<KnowledgeBase> load)
    {
        var best = double.MaxValue;
        KnowledgeBase? loaded = null;
        long before = 0;
        for (var i = 0; i < 12; i++)
        {
            loaded = null;
            before = GC.GetTotalMemory(forceFullCollection: true);
            stream.Position = 0;
            var from = Stopwatch.GetTimestamp();
            loaded = load();
            best = Math.Min(best, Stopwatch.GetElapsedTime(from).TotalMilliseconds);
        }

        var memory = (GC.GetTotalMemory(forceFullCollection: true) - before) / 1_000_000d;
        GC.KeepAlive(loaded);
        return (best, memory);
    }

    private static void Yaml(int rules)
    {
        var data = WorkloadBase.Data(new Workload(rules, 1), rich: true);
        var texts = KnowledgeText.WriteFiles(data);
        var folder = Directory.CreateTempSubdirectory("compat-yaml-").FullName;
        foreach (var (path, text) in texts)
        {
            var file = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text, new UTF8Encoding(false));
        }

        var bare = Best(() =>
        {
            foreach (var path in texts.Keys)
            {
                using var reader = File.OpenText(Path.Combine(folder, path));
                new YamlStream().Load(reader);
            }
        });
        var whole = Best(() =>
        {
            var read = DataFolder.Load(folder);
            if (!read.IsClean) throw new InvalidOperationException(read.Diagnostics[0].Message);
        });
        Directory.Delete(folder, recursive: true);
        Print($"{rules} rules in YAML: read and validated in {whole:0} ms, a bare parse to nodes {bare:0} ms: {whole / bare:0.0} times (reach: 3)");
    }

    private static double Best(Action act) => Enumerable.Range(0, 5).Select(_ =>
    {
        var from = Stopwatch.GetTimestamp();
        act();
        return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
    }).Min();

    private static void Print(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
