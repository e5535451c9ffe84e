namespace Compat.Curation.Checking;

/// <summary>A box of cells, and of agents as a run in the order of their tree: the agents are one more axis.</summary>
internal readonly record struct SweepBox(Box<Run> Cells, Run Agents)
{
    /// <summary>What it is on an axis; null stands for the agents.</summary>
    public Run On(Axis? axis) => axis is { } known ? Cells[known] : Agents;

    public bool Meets(in SweepBox other) => Agents.Meets(other.Agents) && Cells.Meets(other.Cells);
}

/// <summary>Finds all pairs of boxes that meet, by a sweep over one axis; the other axes are compared for boxes that are open at once.</summary>
internal static class BoxSweep
{
    private static readonly Axis?[] All = [null, Axis.Strength, Axis.Dilution, Axis.ExposureTime, Axis.Temperature, Axis.Ph, Axis.Uses];

    /// <summary>Calls back with each pair of boxes, one of each group, that meet.</summary>
    /// <param name="boxes">All boxes.</param>
    /// <param name="first">The boxes of one group.</param>
    /// <param name="second">The boxes of the other group.</param>
    /// <param name="found">Takes each pair.</param>
    public static void Pairs(SweepBox[] boxes, int[] first, int[] second, Action<int, int> found)
    {
        if (first.Length == 0 || second.Length == 0) return;
        var along = MostTelling(boxes, [.. first, .. second]);
        var all = first.Select(box => (Box: box, IsFirst: true)).Concat(second.Select(box => (Box: box, IsFirst: false))).ToArray();
        Array.Sort(Array.ConvertAll(all, one => boxes[one.Box].On(along).Low), all);
        var (open, others) = (new List<int>(), new List<int>());
        foreach (var (box, isFirst) in all)
        {
            var start = boxes[box].On(along).Low;
            var across = isFirst ? others : open;
            across.RemoveAll(other => boxes[other].On(along).High < start);
            foreach (var other in across)
            {
                if (!boxes[box].Meets(boxes[other])) continue;
                if (isFirst) found(box, other);
                else found(other, box);
            }

            (isFirst ? open : others).Add(box);
        }
    }

    /// <summary>The axis with the most distinct starts and the shortest runs among the boxes.</summary>
    private static Axis? MostTelling(SweepBox[] boxes, int[] some) => All.MinBy(axis =>
    {
        int low = int.MaxValue, high = int.MinValue;
        long covered = 0;
        foreach (var box in some)
        {
            var run = boxes[box].On(axis);
            (low, high) = (Math.Min(low, run.Low), Math.Max(high, run.High));
            covered += run.High - (long)run.Low + 1;
        }

        return (double)covered / ((long)high - low + 1);
    });
}
