namespace Compat.Benchmarks;

/// <summary>A random table of rules over interval columns, as ranks.</summary>
internal static class DecisionTable
{
    private const int Ranks = 1_000;

    public static (int[] Ends, int[] Boxes) Make(int rules, int columns, int seed)
    {
        var random = new Random(seed);
        var ends = new int[rules * columns * 2];
        for (var i = 0; i < ends.Length; i += 2)
        {
            var low = random.Next(Ranks);
            ends[i] = low;
            ends[i + 1] = low + random.Next(Ranks / 3);
        }

        return (ends, Enumerable.Range(0, rules).ToArray());
    }
}
