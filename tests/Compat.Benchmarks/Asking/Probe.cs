namespace Compat.Benchmarks.Asking;

/// <summary>One ingredient of a question as the peers are given it: they test it, and note the rules that hold.</summary>
public sealed class Probe
{
    private readonly Workload _work;
    private readonly HashSet<int> _targets, _agents;
    private readonly int _part;
    private bool _forbidden, _allowedByPart;
    private int _allowedMaterials;

    internal Probe(Workload work, Asked asked, int ingredient)
    {
        _work = work;
        _part = asked.Part;
        (var agent, Strength) = asked.Ingredients[ingredient];
        ExposureTime = asked.ExposureTime;
        Method = asked.Method;
        _targets = [.. work.TargetsOf(asked.Part)];
        _agents = [.. Workload.Up(agent, Workload.ParentOfAgent)];
    }

    public int Strength { get; }

    public int ExposureTime { get; }

    public int Method { get; }

    public bool Reaches(int target) => _targets.Contains(target);

    public bool IsOf(int agent) => _agents.Contains(agent);

    public bool Uses(int methods) => (methods & (1 << Method)) != 0;

    public bool In(int rule) => _work.Rules[rule].Holds(Strength, ExposureTime, Method);

    /// <summary>Notes that a rule holds.</summary>
    public void Note(int rule)
    {
        var box = _work.Rules[rule];
        if (!box.Allows) _forbidden = true;
        else if (box.Target < Workload.Parts) _allowedByPart = true;
        else
        {
            var materials = _work.MaterialsOf[_part];
            for (var m = 0; m < materials.Length; m++)
                if (Workload.Up(Workload.Parts + materials[m], Workload.ParentOfTarget).Contains(box.Target)) _allowedMaterials |= 1 << m;
        }
    }

    internal Verdict Verdict =>
        _forbidden ? Verdict.NotAllowed
        : _allowedByPart || _allowedMaterials == (1 << _work.MaterialsOf[_part].Length) - 1 ? Verdict.Allowed : Verdict.NotEstablished;
}
