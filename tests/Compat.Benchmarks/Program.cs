using System.Diagnostics;
using System.Globalization;
using Compat.Benchmarks;
using Compat.Benchmarks.Asking;
using Compat.Curation.Checking;

// Prints times; holds nothing against a limit, for a machine may be busy. The first run of each kind warms up and is not printed.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var options = new CheckOptions { Today = new CalendarDate(2026, 11, 25) };
Console.WriteLine($"{Environment.ProcessorCount} cores, {RuntimeVersion()}");

if (args is ["ask", ..]) return AskBenchmark.Run(isShort: args.Contains("--short"));
if (args is ["review"])
{
    ReviewTimes.Print();
    return 0;
}

if (args is ["shelf"])
{
    ShelfBenchmark.Print();
    return 0;
}

if (args is ["schemas", ..])
{
    SchemaFigures.Print(args.Length > 1 ? args[1] : "schemas");
    return 0;
}

foreach (var rules in new[] { 500, 500, 5_000, 50_000 })
{
    var data = SyntheticData.Of(rules);
    GC.Collect();
    var whole = Stopwatch.StartNew();
    var steps = new StepTimes(whole);
    var report = DataCheck.Run(data, [], options with { Progress = steps.Begin }, out var problems)!;
    steps.End();
    if (problems.Count > 0) throw new InvalidOperationException(problems[0].ToString());
    var ground = new Ground(data, []);
    var search = Stopwatch.StartNew();
    var pairs = new Contradictions(ground).Pairs();
    search.Stop();
    Console.WriteLine($"{rules,6} rules on {report.Subjects,6} subjects: check {steps.Whole.TotalMilliseconds,8:0} ms, of which the search for "
        + $"contradictions {search.Elapsed.TotalMilliseconds,6:0.0} ms ({pairs.Count} found, {report.Faults.Count()} faults); peak "
        + $"{Process.GetCurrentProcess().PeakWorkingSet64 / 1048576} MiB");
    Console.WriteLine($"       {steps.Sum()}");
}

foreach (var run in Enumerable.Range(0, 6))
{
    var boxes = DecisionTable.Make(1_500, seed: 20261125);
    var all = Enumerable.Range(0, boxes.Length).ToArray();
    var found = 0;
    var sweep = Stopwatch.StartNew();
    BoxSweep.Pairs(boxes, all, all, (one, other) => found += one < other ? 1 : 0);
    sweep.Stop();
    if (run == 5) Console.WriteLine($"1500 rules x 7 interval columns: all {found} overlaps in {sweep.Elapsed.TotalMilliseconds:0.0} ms");
}

ReviewTimes.Print();
ShelfBenchmark.Print();
return AskBenchmark.Run(isShort: false);

static string RuntimeVersion() => System.Runtime.InteropServices.RuntimeInformation.FrameworkDescription;
