using Compat.Curation.Writing;
using Compat.Tests.Reference;
using Google.OrTools.Sat;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>What one variant answers, as truth values over the ranks of an exposure; one rule may be taken away.</summary>
internal sealed class World
{
    private readonly Circuit _circuit;
    private readonly IReadOnlyList<StagedRule> _rules;
    private readonly ILiteral[] _live;
    private readonly ILiteral[] _deciding;
    private readonly Func<Rule, int> _evidence;
    private readonly int _materials;

    public World(Circuit circuit, Stage stage, ILiteral[] holds, Rule? without, Func<Rule, int> evidence)
    {
        _circuit = circuit;
        _rules = stage.Rules;
        _evidence = evidence;
        _materials = stage.Materials;
        var applies = holds.Select((one, i) => stage.Rules[i].Rule == without ? circuit.False : one).ToArray();
        var acts = stage.Rules.Select(
            (rule, i) => circuit.And(applies[i], circuit.Or(Overriders(i).Where(q => !_rules[q].Rule.Allows).Select(q => applies[q])).Not())).ToArray();
        _live = stage.Rules.Select((rule, i) => circuit.And(applies[i], circuit.Or(Overriders(i).Select(q => acts[q])).Not())).ToArray();
        Forbidden = circuit.Or(Where(i => !_rules[i].Rule.Allows));
        ByPart = circuit.Or(Where(i => _rules[i].Rule.Allows && _rules[i].Voice == 0));
        var byMaterials = !stage.MaterialsKnown || stage.Materials == 0 ? circuit.False
            : circuit.And(Enumerable.Range(1, stage.Materials).Select(m => circuit.Or(Where(i => _rules[i].Rule.Allows && _rules[i].Voice == m))));
        _deciding = stage.Rules.Select((rule, i) => !rule.Rule.Allows || rule.Voice < 0 ? circuit.False
            : circuit.And(_live[i], rule.Voice == 0 ? ByPart : circuit.And(ByPart.Not(), byMaterials))).ToArray();
        Accompanying = stage.Rules.Select(
            (rule, i) => rule.Rule.Allows && (rule.Voice == 0 || rule.Voice == ReferenceEvaluator.VoiceOfDuties) ? _live[i] : circuit.False).ToArray();
        var unmet = circuit.Or(stage.Rules.Select((rule, i) => rule.DutiesCanBeMet ? circuit.False : circuit.Or(_deciding[i], Accompanying[i])));
        NotAllowed = stage.OwnDutiesCanBeMet ? Forbidden : circuit.True;
        Allowed = circuit.And(NotAllowed.Not(), circuit.Or(ByPart, byMaterials), unmet.Not());
    }

    public ILiteral Forbidden { get; }

    public ILiteral NotAllowed { get; }

    public ILiteral Allowed { get; }

    private ILiteral ByPart { get; }

    private ILiteral[] Accompanying { get; }

    /// <summary>Whether a rule is live in a voice that permits or forbids.</summary>
    public ILiteral IsLive(Rule rule) => _circuit.Or(Where(i => _rules[i].Rule == rule && _rules[i].Voice != ReferenceEvaluator.VoiceOfDuties));

    /// <summary>Whether a rule is among those that decide.</summary>
    public ILiteral Decides(Rule rule) => rule.Allows
        ? _circuit.And(Allowed, _circuit.Or(Indices(i => _rules[i].Rule == rule).Select(i => _deciding[i])))
        : _circuit.And(Forbidden, IsLive(rule));

    /// <summary>Whether an 'allowed' and a 'not allowed' are live in voices that must not disagree.</summary>
    public ILiteral Meet(Rule allowed, Rule forbids) => _circuit.Or(
        from a in Indices(i => _rules[i].Rule == allowed && _rules[i].Voice != ReferenceEvaluator.VoiceOfDuties)
        from n in Indices(i => _rules[i].Rule == forbids)
        where _rules[a].Voice == _rules[n].Voice || _rules[a].Voice == 0
        select _circuit.And(_live[a], _live[n]));

    /// <summary>Whether a rule with a duty of a kind goes with an 'allowed'.</summary>
    public ILiteral Carries(DutyKind kind) => With(rule => rule.Duties.Any(duty => duty.Kind == kind));

    /// <summary>Whether a reader would see another answer in another world.</summary>
    public ILiteral Differs(World other)
    {
        var texts = _rules.SelectMany(rule => rule.Rule.Duties).Select(ExposureYaml.DutyText).Distinct().ToArray();
        var unstated = _rules.SelectMany(rule => Unstated(rule.Rule)).Distinct().ToArray();
        var levels = Enumerable.Range(1, 3).ToArray();
        var allowed = _circuit.And(Allowed, other.Allowed, _circuit.Or(
        [
            _circuit.Differ(ByPart, other.ByPart),
            .. texts.Select(text => _circuit.Differ(With(Has(text)), other.With(Has(text)))),
            .. unstated.Select(text => _circuit.Differ(Deciding(Says(text)), other.Deciding(Says(text)))),
            .. levels.Select(level => _circuit.Differ(EachVoice(rule => _evidence(rule) >= level), other.EachVoice(rule => _evidence(rule) >= level))),
            _circuit.Differ(EachVoice(IsFounded), other.EachVoice(IsFounded)),
        ]));
        var forbidden = _circuit.And(NotAllowed, other.NotAllowed, _circuit.Or(
            [_circuit.Differ(Forbidden, other.Forbidden), .. levels.Select(level => _circuit.Differ(Forbids(level), other.Forbids(level)))]));
        return _circuit.Or(_circuit.Differ(NotAllowed, other.NotAllowed), _circuit.Differ(Allowed, other.Allowed), allowed, forbidden);
    }

    private static Func<Rule, bool> Has(string text) => rule => rule.Duties.Any(duty => ExposureYaml.DutyText(duty) == text);

    private Func<Rule, bool> Says(string text) => rule => Unstated(rule).Contains(text);

    private bool IsFounded(Rule rule) => rule.KnownBy is KnownBy.Test or KnownBy.Instructions or KnownBy.Published && _evidence(rule) >= 2;

    private IEnumerable<string> Unstated(Rule rule)
    {
        var box = _rules.First(one => one.Rule == rule).Box;
        foreach (var axis in box.Keys.Where(axis => rule.When.On(axis).Statement == AxisStatement.Unstated)) yield return $"{axis} {box[axis]}";
        if (rule.When.Methods.Statement == AxisStatement.Unstated) yield return "methods";
    }

    private ILiteral With(Func<Rule, bool> isSuch) =>
        _circuit.Or(Indices(i => isSuch(_rules[i].Rule)).SelectMany(i => new[] { _deciding[i], Accompanying[i] }));

    private ILiteral Deciding(Func<Rule, bool> isSuch) => _circuit.Or(Indices(i => isSuch(_rules[i].Rule)).Select(i => _deciding[i]));

    private ILiteral Forbids(int level) => _circuit.Or(Where(i => !_rules[i].Rule.Allows && _evidence(_rules[i].Rule) >= level));

    /// <summary>Whether each voice that decides has such a rule.</summary>
    private ILiteral EachVoice(Func<Rule, bool> isSuch)
    {
        ILiteral Voice(int voice) => _circuit.Or(Indices(i => _rules[i].Voice == voice && isSuch(_rules[i].Rule)).Select(i => _deciding[i]));
        return _circuit.Or(_circuit.And(ByPart, Voice(0)), _circuit.And([ByPart.Not(), .. Enumerable.Range(1, _materials).Select(Voice)]));
    }

    private IEnumerable<int> Overriders(int i) => Indices(q =>
        ((_rules[q].Voice == _rules[i].Voice && _rules[q].Voice != ReferenceEvaluator.VoiceOfDuties) || _rules[q].Voice == 0)
            && _rules[q].Rule.Overrides.Contains(_rules[i].Rule.Id));

    private IEnumerable<ILiteral> Where(Func<int, bool> isSuch) => Indices(isSuch).Select(i => _live[i]);

    private IEnumerable<int> Indices(Func<int, bool> isSuch) => Enumerable.Range(0, _rules.Count).Where(isSuch);
}
