namespace Compat.Benchmarks.Asking;

/// <summary>
/// One rule in figures: strengths in tenths of a percent, exposure times in seconds. A target below <see cref="Workload.Parts"/> is a part type, from there on
/// a material.
/// </summary>
internal sealed record BoxRule(int Target, int Agent, int StrengthLow, int StrengthHigh, int ExposureTime, int Methods, bool Allows)
{
    /// <summary>Whether a point lies in the box. An 'allowed' reaches up to its exposure time, a 'not allowed' from there on.</summary>
    public bool Holds(int strength, int exposureTime, int method) =>
        strength >= StrengthLow && strength <= StrengthHigh && (Allows ? exposureTime <= ExposureTime : exposureTime >= ExposureTime)
            && (Methods & (1 << method)) != 0;
}

/// <summary>One question: a part and one to four ingredients with their strengths, at one exposure time by one method.</summary>
internal sealed record Asked(int Part, (int Agent, int Strength)[] Ingredients, int ExposureTime, int Method);

/// <summary>Rules and questions of the shape that peers can answer too: points with all axes stated, no overrides. The same at every run.</summary>
internal sealed class Workload
{
    public const int Parts = 60, Materials = 50, Agents = 60, Tops = 4;

    private readonly Random _random = new(20261125);

    public Workload(int rules, int questions)
    {
        MaterialsOf = Enumerable.Range(0, Parts).Select(_ => Distinct(_random.Next(2, 5), Materials)).ToArray();
        Rules = Enumerable.Range(0, rules).Select(_ => MakeRule()).ToArray();
        Questions = Enumerable.Range(0, questions).Select(_ => MakeQuestion()).ToArray();
    }

    public int[][] MaterialsOf { get; }

    public BoxRule[] Rules { get; }

    public Asked[] Questions { get; }

    /// <summary>Ten families: the first ten part types have no parent, the others lie below one of them; so with materials.</summary>
    public static int ParentOfTarget(int target) => target < Parts ? (target < 10 ? -1 : target % 10) : target < Parts + 10 ? -1 : Parts + (target % 10);

    /// <summary>Three levels: 4, then 16, then 40.</summary>
    public static int ParentOfAgent(int agent) => agent < Tops ? -1 : agent < 20 ? agent % Tops : 4 + (agent % 16);

    /// <summary>Itself and what lies above it.</summary>
    public static IEnumerable<int> Up(int node, Func<int, int> parent)
    {
        for (; node >= 0; node = parent(node)) yield return node;
    }

    /// <summary>The targets whose rules reach a part: of the part and its materials with all above them.</summary>
    public IEnumerable<int> TargetsOf(int part) =>
        Up(part, ParentOfTarget).Concat(MaterialsOf[part].SelectMany(material => Up(Parts + material, ParentOfTarget))).Distinct();

    private BoxRule MakeRule()
    {
        var low = _random.Next(0, 180);
        var allows = _random.Next(100) < 90;
        return new BoxRule(
            Target(),
            _random.Next(3) switch { 0 => _random.Next(Tops), 1 => _random.Next(Tops, 20), _ => _random.Next(20, Agents) },
            low,
            low + _random.Next(10, allows ? 250 : 25),
            allows ? _random.Next(60, 1_000) : _random.Next(200, 1_200),
            allows ? _random.Next(1, 32) << 1 : 1 << _random.Next(1, 6),
            allows);
    }

    /// <summary>A part type or a material, every second one at the head of a family: a rule on it reaches the whole family.</summary>
    private int Target()
    {
        var ofPart = _random.Next(2) == 0;
        return (ofPart ? 0 : Parts) + (_random.Next(2) == 0 ? _random.Next(10) : _random.Next(ofPart ? Parts : Materials));
    }

    private Asked MakeQuestion()
    {
        var tops = Distinct(_random.Next(1, 5), Tops);
        return new Asked(
            _random.Next(Parts),
            tops.Select(top => (Below(top), _random.Next(1, 250))).ToArray(),
            _random.Next(1, 900),
            _random.Next(1, 6));
    }

    /// <summary>A class at or below a top one, so that no two ingredients share one.</summary>
    private int Below(int top)
    {
        for (; ; )
        {
            var agent = _random.Next(Agents);
            if (Up(agent, ParentOfAgent).Last() == top) return agent;
        }
    }

    private int[] Distinct(int count, int of) => Enumerable.Range(0, of).OrderBy(_ => _random.Next()).Take(count).ToArray();
}
