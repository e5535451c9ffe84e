namespace Compat.Curation.Checking;

/// <summary>Finds all pairs of boxes that meet, by a sweep over one axis; the other axes are compared for boxes that are open at once.</summary>
/// <remarks>Boxes lie in one array, low and high end of each axis in turn: <c>[box * axes * 2 + axis * 2]</c>.</remarks>
internal static class BoxSweep
{
    /// <summary>Calls back with each pair of boxes, one of each group, that meet.</summary>
    /// <param name="ends">The ends of all boxes, as ranks.</param>
    /// <param name="axes">How many axes a box has.</param>
    /// <param name="first">The boxes of one group.</param>
    /// <param name="second">The boxes of the other group; the same list for all pairs of one group, each once.</param>
    /// <param name="found">Takes each pair.</param>
    public static void Pairs(int[] ends, int axes, ReadOnlySpan<int> first, ReadOnlySpan<int> second, Action<int, int> found)
    {
        if (first.Length == 0 || second.Length == 0) return;
        var same = first == second;
        var along = MostTelling(ends, axes, first, second);
        var count = same ? first.Length : first.Length + second.Length;
        var starts = new int[count];
        var boxes = new int[count];
        for (var i = 0; i < count; i++)
        {
            boxes[i] = i < first.Length ? first[i] : ~second[i - first.Length];
            starts[i] = Low(ends, axes, Plain(boxes[i]), along);
        }

        Array.Sort(starts, boxes);
        var openFirst = new int[count];
        var openSecond = new int[count];
        int firstCount = 0, secondCount = 0;
        foreach (var box in boxes)
        {
            var isFirst = box >= 0;
            var one = Plain(box);
            if (same || !isFirst) firstCount = Meet(ends, axes, along, one, openFirst, firstCount, isFirst, found);
            else secondCount = Meet(ends, axes, along, one, openSecond, secondCount, isFirst, found);
            if (isFirst) openFirst[firstCount++] = one;
            else openSecond[secondCount++] = one;
        }
    }

    private static int Plain(int box) => box >= 0 ? box : ~box;

    private static int Low(int[] ends, int axes, int box, int axis) => ends[(box * axes * 2) + (axis * 2)];

    /// <summary>Compares a box with the open ones and closes those that end before it starts.</summary>
    /// <returns>How many stay open.</returns>
    private static int Meet(int[] ends, int axes, int along, int box, int[] open, int count, bool boxIsFirst, Action<int, int> found)
    {
        var at = box * axes * 2;
        var start = ends[at + (along * 2)];
        var kept = 0;
        for (var i = 0; i < count; i++)
        {
            var other = open[i] * axes * 2;
            if (ends[other + (along * 2) + 1] < start) continue;
            open[kept++] = open[i];
            var meets = true;
            for (var axis = 0; axis < axes * 2 && meets; axis += 2)
                meets = ends[other + axis] <= ends[at + axis + 1] && ends[other + axis + 1] >= ends[at + axis];
            if (!meets) continue;
            if (boxIsFirst) found(box, open[i]);
            else found(open[i], box);
        }

        return kept;
    }

    /// <summary>The axis with the most distinct starts and the shortest runs among the boxes.</summary>
    private static int MostTelling(int[] ends, int axes, ReadOnlySpan<int> first, ReadOnlySpan<int> second)
    {
        var best = 0;
        var least = double.MaxValue;
        for (var axis = 0; axis < axes; axis++)
        {
            int low = int.MaxValue, high = int.MinValue;
            long covered = 0;
            Measure(first, ref low, ref high, ref covered);
            Measure(second, ref low, ref high, ref covered);
            var share = (double)covered / (high - low + 1);
            if (share >= least) continue;
            least = share;
            best = axis;

            void Measure(ReadOnlySpan<int> boxes, ref int lowest, ref int highest, ref long sum)
            {
                foreach (var box in boxes)
                {
                    var start = Low(ends, axes, box, axis);
                    var end = ends[(box * axes * 2) + (axis * 2) + 1];
                    lowest = Math.Min(lowest, start);
                    highest = Math.Max(highest, end);
                    sum += end - start + 1;
                }
            }
        }

        return best;
    }
}
