namespace Compat.Benchmarks.Asking;

/// <summary>
/// The limit: boxes in one array, bucketed by target and agent with all that reaches them, prohibitions first. It explains nothing and knows no exception.
/// </summary>
internal sealed class FlatTable
{
    private readonly Box[] _boxes;
    private readonly int[] _start, _split;
    private readonly int[][] _materialsOf;
    private readonly Point[] _points;

    public FlatTable(Workload work)
    {
        _materialsOf = work.MaterialsOf;
        var byPair = work.Rules.ToLookup(rule => (rule.Target, rule.Agent));
        var boxes = new List<Box>();
        const int targets = Workload.Parts + Workload.Materials;
        _start = new int[(targets * Workload.Agents) + 1];
        _split = new int[targets * Workload.Agents];
        for (var bucket = 0; bucket < _split.Length; bucket++)
        {
            var reaching = (from target in Workload.Up(bucket / Workload.Agents, Workload.ParentOfTarget)
                            from agent in Workload.Up(bucket % Workload.Agents, Workload.ParentOfAgent)
                            from rule in byPair[(target, agent)]
                            select rule).OrderBy(rule => rule.Allows).ToArray();
            _start[bucket] = boxes.Count;
            _split[bucket] = boxes.Count + reaching.Count(rule => !rule.Allows);
            boxes.AddRange(
                reaching.Select(
                    rule => new Box(
                        rule.StrengthLow, rule.StrengthHigh, rule.Allows ? 0 : rule.ExposureTime, rule.Allows ? rule.ExposureTime
                        : int.MaxValue, rule.Methods)));
        }

        _start[^1] = boxes.Count;
        _boxes = [.. boxes];
        _points = work.Questions.Select(
            asked =>
                new Point(
                    asked.Part, asked.Ingredients.Select(one => one.Agent).ToArray(), asked.Ingredients.Select(one => one.Strength)
                    .ToArray(), asked.ExposureTime, 1 << asked.Method)).ToArray();
    }

    public Verdict Of(int question)
    {
        ref readonly var point = ref _points[question];
        var worst = Verdict.Allowed;
        for (var i = 0; i < point.Agents.Length; i++)
        {
            var verdict = Of(point, point.Agents[i], point.Strengths[i]);
            if (verdict == Verdict.NotAllowed) return verdict;
            if (verdict < worst) worst = verdict;
        }

        return worst;
    }

    private Verdict Of(in Point point, int agent, int strength)
    {
        var ofPart = (point.Part * Workload.Agents) + agent;
        var materials = _materialsOf[point.Part];
        if (Any(_start[ofPart], _split[ofPart], point, strength)) return Verdict.NotAllowed;
        foreach (var material in materials)
        {
            var bucket = ((Workload.Parts + material) * Workload.Agents) + agent;
            if (Any(_start[bucket], _split[bucket], point, strength)) return Verdict.NotAllowed;
        }

        if (Any(_split[ofPart], _start[ofPart + 1], point, strength)) return Verdict.Allowed;
        foreach (var material in materials)
        {
            var bucket = ((Workload.Parts + material) * Workload.Agents) + agent;
            if (!Any(_split[bucket], _start[bucket + 1], point, strength)) return Verdict.NotEstablished;
        }

        return Verdict.Allowed;
    }

    private bool Any(int from, int to, in Point point, int strength)
    {
        for (var i = from; i < to; i++)
        {
            ref readonly var box = ref _boxes[i];
            if (box.StrengthLow <= strength && box.StrengthHigh >= strength && box.ExposureTimeLow <= point.ExposureTime
                && box.ExposureTimeHigh >= point.ExposureTime && (box.Methods & point.Method) != 0) return true;
        }

        return false;
    }

    private readonly record struct Box(int StrengthLow, int StrengthHigh, int ExposureTimeLow, int ExposureTimeHigh, int Methods);

    private readonly record struct Point(int Part, int[] Agents, int[] Strengths, int ExposureTime, int Method);
}
