using Compat.Curation.Checking;

namespace Compat.Benchmarks;

/// <summary>A random table of rules over seven interval columns, as ranks.</summary>
internal static class DecisionTable
{
    private const int Ranks = 1_000;

    public static SweepBox[] Make(int rules, int seed)
    {
        var random = new Random(seed);
        return Enumerable.Range(0, rules).Select(_ => new SweepBox(Box<Run>.Of(MethodSet.All, _ => Column()), Column())).ToArray();

        Run Column()
        {
            var low = random.Next(Ranks);
            return Run.Of(low, low + random.Next(Ranks / 3));
        }
    }
}
