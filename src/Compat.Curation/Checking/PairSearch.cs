namespace Compat.Curation.Checking;

/// <summary>An 'allowed' and a 'not allowed' whose boxes meet on a subject, each in its voice. Whether both are live there is not yet known.</summary>
internal readonly record struct Pair(CompiledRule Allowed, CompiledRule Forbids, Subject Subject, int VoiceOfAllowed, int VoiceOfForbids);

/// <summary>
/// Finds the pairs of rules that could contradict each other: subject by subject, the agents' subtrees and the axes as runs of numbers,
/// compared by a sweep.
/// </summary>
internal sealed class PairSearch
{
    private const int FewPairs = 4096;
    private readonly Ground _ground;
    private readonly SweepBox[] _boxes;
    private readonly HashSet<int> _silencedByPart;

    public PairSearch(Ground ground)
    {
        _ground = ground;
        _boxes = Array.ConvertAll(ground.Kb.Rules, rule => new SweepBox(rule.Cells, AgentsOf(rule)));

        // Material rules that override, and that a rule of a part or device may silence: only there a part adds to what its material alone shows.
        _silencedByPart = [.. ground.Kb.Rules
            .Where(rule => rule.Rule.Target.Material is not null && rule.Overridden.Length > 0
                && ground.Overriders[rule.Index].Any(over => !over.Allows && over.Rule.Target.Material is null))
            .SelectMany(rule => rule.Overridden)];
    }

    /// <summary>Calls back with every pair on every subject; a pair is left out where <paramref name="isDone"/> says so.</summary>
    public void Search(Func<int, int, bool> isDone, Action<Pair> found)
    {
        foreach (var subject in _ground.Materials)
        {
            var material = subject.Variant.Materials[0];
            var split = Split(_ground.OfMaterial(material));
            Of(subject, split.Allowed, 1, split.Forbids, 1, pair => OnItself(pair, material) || IsOverridden(pair));
        }

        foreach (var subject in _ground.Parts.Concat(_ground.DeviceParts))
        {
            var own = Split(subject.Voice);
            Of(subject, own.Allowed, 0, own.Forbids, 0, _ => true);
            for (var m = 0; m < subject.Variant.Materials.Length; m++)
            {
                var material = Split(_ground.OfMaterial(subject.Variant.Materials[m]));
                Of(subject, own.Allowed, 0, material.Forbids, m + 1, _ => true);
                if (_silencedByPart.Count > 0)
                    Of(subject, material.Allowed, m + 1, material.Forbids, m + 1, pair => _silencedByPart.Contains(pair.Allowed.Index)
                        || _silencedByPart.Contains(pair.Forbids.Index));
            }
        }

        void Of(Subject subject, int[] allowed, int voiceOfAllowed, int[] forbids, int voiceOfForbids, Func<Pair, bool> matters)
        {
            if ((long)allowed.Length * forbids.Length > FewPairs)
            {
                BoxSweep.Pairs(_boxes, allowed, forbids, Take);
                return;
            }

            foreach (var a in allowed)
                foreach (var n in forbids)
                    if (_boxes[a].Meets(_boxes[n])) Take(a, n);

            void Take(int a, int n)
            {
                var (one, other) = (_ground.Kb.Rules[a], _ground.Kb.Rules[n]);
                if (one.Methods.Intersect(other.Methods).Intersect(subject.Stood).IsEmpty || !SpeakOfOne(one, other) || isDone(a, n)) return;
                if (other.Rule.Target.Device is not null && one.Rule.Target.Device is null) return;
                var pair = new Pair(one, other, subject, voiceOfAllowed, voiceOfForbids);
                if (matters(pair)) found(pair);
            }
        }
    }

    private static (int[] Allowed, int[] Forbids) Split(CompiledRule[] rules) =>
        (rules.Where(rule => rule.Allows).Select(rule => rule.Index).ToArray(), rules.Where(rule => !rule.Allows).Select(rule => rule.Index).ToArray());

    private bool OnItself(Pair pair, int material)
    {
        var id = _ground.Kb.Data.Materials[material].Id;
        return pair.Allowed.Rule.Target.Material == id || pair.Forbids.Rule.Target.Material == id;
    }

    private bool IsOverridden(Pair pair) => _ground.Overriders[pair.Allowed.Index].Length + _ground.Overriders[pair.Forbids.Index].Length > 0;

    /// <summary>The agents of which a rule can speak, as one run in the order of their tree; a product's rule of any.</summary>
    private Run AgentsOf(CompiledRule rule)
    {
        var tops = Reach.Tops(rule);
        if (tops.Length == 0) return Run.Whole;
        var single = rule.Allows && !rule.Rule.WholeClass && rule.SeenWith.Length == 0;
        return Run.Of(tops.Min(_ground.Agents.Enter), single ? _ground.Agents.Enter(rule.Agent) : tops.Max(_ground.Agents.Exit));
    }

    /// <summary>Whether some agent is spoken of by both; what speaks of a product is judged later.</summary>
    private bool SpeakOfOne(CompiledRule allowed, CompiledRule forbids)
    {
        if (allowed.Agent < 0 || forbids.Agent < 0) return _ground.ProductSpeakers.Count > 0;
        foreach (var top in Reach.Tops(allowed))
        {
            if (_ground.Agents.IsAtOrBelow(top, forbids.Agent)) return true;
            if ((allowed.Rule.WholeClass || allowed.SeenWith.Length > 0) && _ground.Agents.IsAtOrBelow(forbids.Agent, top)) return true;
        }

        return false;
    }
}

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
