namespace Compat.Curation.Checking;

/// <summary>A box of exposures as runs of cells, one run an axis. Every cell holds a value, so a box of cells is never empty.</summary>
internal sealed record CellBox(int[] Low, int[] High)
{
    /// <summary>The cells of a box of the engine.</summary>
    public static CellBox Of(Box<Run> cells) => new(EachAxis(axis => cells[axis].Low), EachAxis(axis => cells[axis].High));

    /// <summary>As a box of the engine.</summary>
    public Box<Run> ToCells() => Box<Run>.Of(MethodSet.All, axis => Run.Of(Low[(int)axis], High[(int)axis]));

    /// <summary>What two boxes share; null where they do not meet.</summary>
    public CellBox? Intersect(CellBox other)
    {
        var shared = new CellBox((int[])Low.Clone(), (int[])High.Clone());
        for (var axis = 0; axis < Low.Length; axis++)
        {
            shared.Low[axis] = Math.Max(Low[axis], other.Low[axis]);
            shared.High[axis] = Math.Min(High[axis], other.High[axis]);
            if (shared.Low[axis] > shared.High[axis]) return null;
        }

        return shared;
    }

    public bool LiesIn(CellBox other)
    {
        for (var axis = 0; axis < Low.Length; axis++)
            if (Low[axis] < other.Low[axis] || High[axis] > other.High[axis]) return false;
        return true;
    }

    /// <summary>The maximal boxes of what is left of this box when holes are taken out.</summary>
    /// <exception cref="TooManyBoxesException">There are too many.</exception>
    public List<CellBox> Without(IEnumerable<CellBox> holes)
    {
        List<CellBox> left = [this];
        foreach (var hole in holes)
        {
            var kept = left.Where(box => box.Intersect(hole) is null).ToList();
            foreach (var box in left.Where(box => box.Intersect(hole) is not null))
            {
                for (var axis = 0; axis < Low.Length; axis++)
                {
                    if (box.Low[axis] < hole.Low[axis]) Keep(kept, box.With(axis, box.Low[axis], hole.Low[axis] - 1));
                    if (box.High[axis] > hole.High[axis]) Keep(kept, box.With(axis, hole.High[axis] + 1, box.High[axis]));
                }
            }

            if (kept.Count > Subtraction.MostBoxes) throw new TooManyBoxesException();
            left = kept;
        }

        return left;
    }

    /// <summary>This box with another run on one axis.</summary>
    public CellBox With(int axis, int low, int high)
    {
        var box = new CellBox((int[])Low.Clone(), (int[])High.Clone());
        (box.Low[axis], box.High[axis]) = (low, high);
        return box;
    }

    /// <summary>Where a box that crosses this one ends in it first: the axis, and the last cell of the lower half.</summary>
    public (int Axis, int LastOfLower) Edge(CellBox crossing)
    {
        for (var axis = 0; axis < Low.Length; axis++)
        {
            if (crossing.Low[axis] > Low[axis]) return (axis, crossing.Low[axis] - 1);
            if (crossing.High[axis] < High[axis]) return (axis, crossing.High[axis]);
        }

        throw new InvalidOperationException("a box that crosses another ends inside it");
    }

    private static int[] EachAxis(Func<Axis, int> of) => Enumerable.Range((int)Axis.Strength, (int)Axis.Uses + 1).Select(axis => of((Axis)axis)).ToArray();

    private static void Keep(List<CellBox> kept, CellBox box)
    {
        if (kept.Any(box.LiesIn)) return;
        kept.RemoveAll(other => other.LiesIn(box));
        kept.Add(box);
    }
}
