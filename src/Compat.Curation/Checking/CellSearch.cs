namespace Compat.Curation.Checking;

/// <summary>Cuts a box of cells along the rules of a scene that cross it until something is found; stops at the first.</summary>
internal sealed class CellSearch(Scene scene, ApplicationMethod method)
{
    private readonly CellBox?[] _boxes = scene.Candidates.Select(one => !one.Rule.Methods.Contains(method) ? null
        : CellBox.Of(one.Cells)).ToArray();

    private int _visited;

    /// <summary>The first box of cells in which one set of rules applies and of which the test says yes; null where there is none.</summary>
    /// <param name="within">The box searched.</param>
    /// <param name="mayHold">Whether a box can hold what is looked for: the rules that apply in all of it, and those that apply in some.</param>
    /// <param name="isIt">The test, on the rules that apply.</param>
    /// <exception cref="TooManyBoxesException">There are too many boxes to look at.</exception>
    public CellBox? Find(CellBox within, Func<bool[], bool[], bool>? mayHold, Func<bool[], CellBox, bool> isIt)
    {
        var all = Enumerable.Range(0, _boxes.Length).Where(i => _boxes[i] is not null).ToList();
        _visited = 0;
        return Find(within, all, new bool[_boxes.Length], mayHold, isIt);
    }

    private CellBox? Find(CellBox box, List<int> open, bool[] covering, Func<bool[], bool[], bool>? mayHold, Func<bool[], CellBox, bool> isIt)
    {
        if (++_visited > Subtraction.MostBoxes) throw new TooManyBoxesException();
        var covers = (bool[])covering.Clone();
        var crossing = new List<int>();
        foreach (var i in open)
        {
            var rule = _boxes[i]!;
            if (box.LiesIn(rule)) covers[i] = true;
            else if (Meet(rule, box)) crossing.Add(i);
        }

        if (crossing.Count == 0) return isIt(covers, box) ? box : null;
        if (mayHold is not null)
        {
            var some = (bool[])covers.Clone();
            foreach (var i in crossing) some[i] = true;
            if (!mayHold(covers, some)) return null;
        }

        var (axis, lastOfLower) = box.Edge(_boxes[crossing[0]]!);
        return Find(box.With(axis, box.Low[axis], lastOfLower), crossing, covers, mayHold, isIt)
            ?? Find(box.With(axis, lastOfLower + 1, box.High[axis]), crossing, covers, mayHold, isIt);
    }

    private static bool Meet(CellBox a, CellBox b)
    {
        for (var axis = 0; axis < a.Low.Length; axis++)
            if (a.Low[axis] > b.High[axis] || a.High[axis] < b.Low[axis]) return false;
        return true;
    }
}
