namespace Compat.Evaluation;

/// <summary>A run of cells on each axis in which the same rules apply.</summary>
internal sealed record Leaf(int[] Low, int[] High, Decision Decision);

/// <summary>Cuts a box of exposures along the rules that cross it, and only along these, until every piece is decided.</summary>
internal sealed class Leaves(CompiledBase kb, Scene scene)
{
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
        Cut(low, high, all, []);
        var leaves = _found.ToArray();
        _before.Add((all, low, high, leaves));
        return leaves;
    }

    private static int RuleLow(Candidate candidate, int axis) => axis == (int)Axis.Residence ? candidate.ResidenceLow : candidate.Rule.Low[axis];

    private static int RuleHigh(Candidate candidate, int axis) => axis == (int)Axis.Residence ? candidate.ResidenceHigh : candidate.Rule.High[axis];

    private void Cut(int[] low, int[] high, List<int> open, List<int> covering)
    {
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

        if (crossing.Count == 0)
        {
            var applies = new bool[scene.Candidates.Count];
            foreach (var i in covers) applies[i] = true;
            _found.Add(new Leaf(low, high, _decider.Worst(applies)));
            if (_found.Count > Subtraction.MostBoxes) throw new TooManyBoxesException();
            return;
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
            Cut(low, middleHigh, crossing, covers);
            Cut(middleLow, high, crossing, covers);
            return;
        }
    }
}
