namespace Compat.Deciding;

/// <summary>Joins boxes of cells that touch along an axis, one axis after the other, until nothing joins.</summary>
internal static class CellJoin
{
    /// <summary>The boxes, joined where they say the same and share their runs on every other axis.</summary>
    /// <param name="boxes">Boxes that do not overlap where they say the same.</param>
    /// <param name="says">What a box says: only boxes that say the same are joined.</param>
    /// <param name="low">Its first cell on each axis.</param>
    /// <param name="high">Its last cell on each axis.</param>
    /// <param name="join">Joins a box and the next along an axis.</param>
    public static List<T> Of<T>(List<T> boxes, Func<T, string> says, Func<T, int[]> low, Func<T, int[]> high, Func<T, T, int, T> join)
    {
        for (var before = int.MaxValue; boxes.Count < before;)
        {
            before = boxes.Count;
            for (var axis = 0; axis < CompiledRule.AxisCount; axis++)
            {
                var along = axis;
                boxes = boxes.GroupBy(box => says(box) + "|" + string.Join(",", Enumerable.Range(0, CompiledRule.AxisCount).Where(a => a != along).Select(a => low(box)[a] + "-" + high(box)[a])))
                    .SelectMany(line => Along(along, line.OrderBy(box => low(box)[along]), low, high, join)).ToList();
            }
        }

        return boxes;
    }

    private static List<T> Along<T>(int axis, IEnumerable<T> line, Func<T, int[]> low, Func<T, int[]> high, Func<T, T, int, T> join)
    {
        var joined = new List<T>();
        foreach (var box in line)
        {
            if (joined.Count > 0 && joined[joined.Count - 1] is var last && high(last)[axis] + 1 == low(box)[axis]) joined[joined.Count - 1] = join(last, box, axis);
            else joined.Add(box);
        }

        return joined;
    }
}
