namespace Compat.Deciding;

/// <summary>A run of cells on each axis in which the same rules apply.</summary>
internal sealed record Leaf(int[] Low, int[] High, Decision Decision);

/// <summary>Cuts a box of exposures along the rules that cross it, and only along these, until every piece is decided.</summary>
/// <remarks>
/// Where that would take more than a set amount of work, what some prohibition forbids as a whole, whatever else holds there, is not cut further:
/// the verdicts are the same, and of the rules that forbid a place only those are named that forbid all around it.
/// </remarks>
internal sealed class Leaves(CompiledBase kb, Scene scene, int mostLooks = Leaves.MostLooks)
{
    /// <summary>At so many rules is looked before larger pieces are taken, and at ten times as many before it is given up.</summary>
    public const int MostLooks = 2_000_000;

    private const int MostDeep = 2_000;
    private bool _larger;
    private int _looks;
    private readonly Decider _decider = new(kb, scene);
    private readonly List<Leaf> _found = [];
    private readonly List<(List<int> Candidates, int[] Low, int[] High, IReadOnlyList<Leaf> Leaves)> _before = [];

    /// <summary>The pieces of a box for one method. Methods that the same rules speak of have the same pieces.</summary>
    /// <param name="method">The method.</param>
    /// <param name="low">First cell on each axis.</param>
    /// <param name="high">Last cell on each axis.</param>
    /// <exception cref="TooManyBoxesException">There are more than <see cref="Subtraction.MostBoxes"/>.</exception>
    public IReadOnlyList<Leaf> Of(ApplicationMethod method, int[] low, int[] high)
    {
        _found.Clear();
        var all = new List<int>();
        for (var i = 0; i < scene.Candidates.Count; i++)
            if (scene.Candidates[i].Rule.Methods.Contains(method)) all.Add(i);
        foreach (var before in _before)
            if (before.Low == low && before.High == high && before.Candidates.SequenceEqual(all)) return before.Leaves;
        Cut(low, high, all);
        var leaves = _found.ToArray();
        _before.Add((all, low, high, leaves));
        return leaves;
    }

    private static int RuleLow(Candidate candidate, int axis) => axis == (int)Axis.ExposureTime ? candidate.ExposureTimeLow : candidate.Rule.Low[axis];

    private static int RuleHigh(Candidate candidate, int axis) => axis == (int)Axis.ExposureTime ? candidate.ExposureTimeHigh : candidate.Rule.High[axis];

    private void Cut(int[] low, int[] high, List<int> all)
    {
        _looks = 0;
        if (!_larger && Cut(low, high, all, [], 0)) return;
        _found.Clear();
        (_larger, _looks) = (true, 0);
        if (!Cut(low, high, all, [], 0)) throw new TooManyBoxesException();
    }

    /// <summary>Whether a candidate forbids wherever it applies: nothing sets it aside.</summary>
    private bool ForbidsForSure(int candidate) =>
        !scene.Candidates[candidate].Rule.Allows && (scene.Overriders[candidate].Length == 0 || scene.Candidates[candidate].Rule.OfInstructions);

    /// <summary>Cuts a box; false where it was given up.</summary>
    private bool Cut(int[] low, int[] high, List<int> open, List<int> covering, int depth)
    {
        _looks += open.Count;
        if (_looks > (_larger ? 10L * MostLooks : mostLooks) || depth > MostDeep) return false;
        var covers = new List<int>(covering);
        var crossing = new List<int>();
        foreach (var i in open)
        {
            var candidate = scene.Candidates[i];
            bool meets = true, holds = true;
            for (var axis = 0; axis < low.Length; axis++)
            {
                int ruleLow = RuleLow(candidate, axis), ruleHigh = RuleHigh(candidate, axis);
                meets &= ruleLow <= high[axis] && ruleHigh >= low[axis];
                holds &= ruleLow <= low[axis] && ruleHigh >= high[axis];
            }

            if (meets) (holds ? covers : crossing).Add(i);
        }

        if (crossing.Count == 0 || (_larger && covers.Exists(ForbidsForSure)))
        {
            _looks += covers.Count;
            var applies = new bool[scene.Candidates.Count];
            foreach (var i in covers) applies[i] = true;
            _found.Add(new Leaf(low, high, _decider.Worst(applies)));
            return _found.Count <= Subtraction.MostBoxes;
        }

        var first = scene.Candidates[crossing[0]];
        for (var axis = 0; axis < low.Length; axis++)
        {
            int ruleLow = RuleLow(first, axis), ruleHigh = RuleHigh(first, axis);
            var lastOfLower = ruleLow > low[axis] ? ruleLow - 1 : ruleHigh < high[axis] ? ruleHigh : -1;
            if (lastOfLower < 0) continue;
            var middleHigh = (int[])high.Clone();
            middleHigh[axis] = lastOfLower;
            var middleLow = (int[])low.Clone();
            middleLow[axis] = lastOfLower + 1;
            return Cut(low, middleHigh, crossing, covers, depth + 1) && Cut(middleLow, high, crossing, covers, depth + 1);
        }

        return true;
    }
}
