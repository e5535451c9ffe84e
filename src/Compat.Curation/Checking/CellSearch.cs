namespace Compat.Curation.Checking;

/// <summary>Cuts a box of cells along the rules of a scene that cross it until something is found; stops at the first.</summary>
internal sealed class CellSearch : ICutVisitor<Run, CellSearch.Known>
{
    private readonly Scene _scene;
    private readonly Func<bool[], bool[], bool>? _mayHold;
    private readonly Func<bool[], Box<Run>, bool> _isIt;
    private Box<Run>? _found;
    private int _visited;

    private CellSearch(Scene scene, Func<bool[], bool[], bool>? mayHold, Func<bool[], Box<Run>, bool> isIt) =>
        (_scene, _mayHold, _isIt) = (scene, mayHold, isIt);

    /// <summary>The first box of cells in which one set of rules applies and of which the test says yes; null where there is none.</summary>
    /// <param name="scene">The scene.</param>
    /// <param name="within">The box searched, by one method.</param>
    /// <param name="mayHold">Whether a box can hold what is looked for: the rules that apply in all of it, and those that apply in some.</param>
    /// <param name="isIt">The test, on the rules that apply.</param>
    /// <exception cref="TooManyBoxesException">There are too many boxes to look at.</exception>
    public static Box<Run>? Find(Scene scene, in Box<Run> within, Func<bool[], bool[], bool>? mayHold, Func<bool[], Box<Run>, bool> isIt)
    {
        var search = new CellSearch(scene, mayHold, isIt);
        Cutter.Cut(ref search, within, new Known(new bool[scene.Candidates.Length], Enumerable.Range(0, scene.Candidates.Length)));
        return search._found;
    }

    Next ICutVisitor<Run, Known>.Look(in Box<Run> box, Known known, out Known inside, out Box<Run> crossing)
    {
        if (++_visited > Subtraction.MostBoxes) throw new TooManyBoxesException();
        var covers = (bool[])known.Covers.Clone();
        var open = new List<int>();
        foreach (var i in known.Open)
        {
            ref readonly var cells = ref _scene.Candidates[i].Cells;
            if (!cells.Meets(box)) continue;
            if (box.LiesIn(cells)) covers[i] = true;
            else open.Add(i);
        }

        (inside, crossing) = (new(covers, open), open.Count > 0 ? _scene.Candidates[open[0]].Cells : default);
        if (open.Count == 0)
        {
            if (!_isIt(covers, box)) return Next.Done;
            _found = box;
            return Next.Stop;
        }

        if (_mayHold is null) return Next.Halve;
        var some = (bool[])covers.Clone();
        foreach (var i in open) some[i] = true;
        return _mayHold(covers, some) ? Next.Halve : Next.Done;
    }

    /// <summary>What is known of a box.</summary>
    /// <param name="Covers">The rules that apply in all of it.</param>
    /// <param name="Open">Those that may apply in some of it.</param>
    internal sealed record Known(bool[] Covers, IEnumerable<int> Open);
}
