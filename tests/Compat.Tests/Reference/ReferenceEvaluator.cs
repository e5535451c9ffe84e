using Compat.Exposures;
using Compat.Knowledge;
using Compat.Sites;

namespace Compat.Tests.Reference;

/// <summary>What one point answers: the verdict, the step that decided and, of an 'allowed', the rules that allow, voice by voice.</summary>
internal sealed record PointTruth(Verdict Verdict, string Step, IReadOnlyList<IReadOnlyList<Rule>> Allowing);

/// <summary>One way the person can choose; an axis that the question states is the same in all of them.</summary>
internal sealed record Choice(ApplicationMethod Method, decimal? Residence, decimal? Dilution);

/// <summary>The verdict of a region and of each choice in it.</summary>
internal sealed record RegionTruth(Verdict Verdict, IReadOnlyList<(Choice Choice, Verdict Verdict)> Choices);

/// <summary>A direct reading of what an answer means: slow, obvious, and sharing nothing with the engine but the records.</summary>
internal sealed partial class ReferenceEvaluator
{
    private readonly ReferenceTrees _trees;
    private readonly ReferenceMixture _mixture;
    private readonly Question _question;
    private readonly Product? _product;
    private readonly Device? _device;
    private readonly List<Component> _components;
    private readonly List<Variant> _variants;
    private readonly Dictionary<(Variant, Component), Applicable[]> _reaching = [];
    private readonly Dictionary<Axis, List<decimal>> _boundaries = [];

    public ReferenceEvaluator(KnowledgeData data, IReadOnlyList<Site> sites, Question question)
    {
        _trees = new(data, sites);
        _mixture = new(_trees);
        _question = question;
        _product = sites.SelectMany(s => s.Products).SingleOrDefault(p => p.Id == question.Product);
        _device = sites.SelectMany(s => s.Devices).SingleOrDefault(d => d.Id == question.Device);
        _components = _product is null ? [new(question.Agent!, _ => AgentStrength())] : _mixture.Components(_product);
        _variants = Variants().ToList();
        foreach (var v in _variants)
            foreach (var c in _components)
                _reaching[(v, c)] = Reaching(v, c).ToArray();
    }

    /// <summary>A fully stated point; of the uses, this one alone.</summary>
    public static PointTruth Point(KnowledgeData data, IReadOnlyList<Site> sites, Question question)
    {
        var asked = new ReferenceEvaluator(data, sites, question);
        return asked.AllAt(asked.Choices().Single(), Interval.Exactly(question.Uses ?? 1)).MinBy(p => p.Verdict)!;
    }

    /// <summary>A region: free axes exist, uncertain ones are for all; uses left out are judged at 1.</summary>
    public static RegionTruth Region(KnowledgeData data, IReadOnlyList<Site> sites, Question question)
    {
        var asked = new ReferenceEvaluator(data, sites, question);
        var choices = asked.Choices().Select(c => (c, asked.Of(c, Interval.Closed(1, question.Uses ?? 1)))).ToArray();
        var best = choices.Max(c => c.Item2);
        if (best != Verdict.Allowed) return new(best, choices);
        return new(asked.IsPlain(choices.Select(c => c.c)) ? Verdict.Allowed : Verdict.AllowedWithinLimits, choices);
    }

    /// <summary>The worst answer over all uncertain values of a choice, for every number of uses in a range.</summary>
    public Verdict Of(Choice choice, Interval uses)
    {
        var worst = Verdict.Allowed;
        foreach (var point in AllAt(choice, uses))
        {
            if (point.Verdict < worst) worst = point.Verdict;
            if (worst == Verdict.NotAllowed) break;
        }

        return worst;
    }

    // ---- The grid -------------------------------------------------------------------------------------------------

    private IEnumerable<Choice> Choices() =>
        from method in _question.Method is { } stated ? [stated]
            : _question.Agent is { } agent && _trees.Chamber(agent) ? [ApplicationMethod.Chamber] : MethodSet.Ladder.Methods
        from residence in _question.Residence is null ? Grid(Axis.Residence, Interval.Above(0)).Select(r => (decimal?)r) : [null]
        from dilution in DilutionIsFree ? Grid(Axis.Dilution, _product!.Dilution ?? new(0, false, 1, true)).Select(d => (decimal?)d) : [null]
        select new Choice(method, residence, dilution);

    private bool DilutionIsFree => _product?.StrengthOf == StrengthOf.Concentrate && _question.Dilution is null;

    /// <summary>All boundaries, the midpoints between neighbours and one value beyond each end, as far as the range asked holds them.</summary>
    public List<decimal> Grid(Axis axis, Interval range)
    {
        if (range.IsPoint) return [range.Lower!.Value];
        var (low, high) = axis switch { Axis.Temperature => (-40m, (decimal?)200m), Axis.Ph => (-1m, 15m), Axis.Uses => (1m, null), Axis.Dilution => (0m, 1m), _ => (0m, null) };
        var sorted = Boundaries(axis).Concat(Ends(range)).Append(low).Append(high ?? low).Where(v => v != Interval.WithoutEnd).Distinct().Order().ToList();
        var all = sorted.Concat(axis == Axis.Uses ? sorted.SelectMany(v => new[] { v - 1, v + 1 }) : sorted.Zip(sorted.Skip(1), (a, b) => (a + b) / 2)).Append(sorted[^1] + 1);
        if (axis == Axis.Residence) all = all.Append(Interval.WithoutEnd);
        var above = axis is Axis.Residence or Axis.Dilution;
        return all.Where(v => range.Contains(v) && (above ? v > low : v >= low) && !(v > high)).Distinct().Order().ToList();
    }

    private List<decimal> Boundaries(Axis axis)
    {
        if (_boundaries.TryGetValue(axis, out var known)) return known;
        var all = _reaching.Values.SelectMany(r => r).Where(a => a.Box.ContainsKey(axis)).SelectMany(a => Ends(a.Box[axis]));
        if (axis == Axis.Residence) all = all.Concat(Ends(_trees.Convention(ConventionKey.DryingTime).Range));
        if (axis == Axis.Dilution)
        {
            // Where an ingredient's strength meets a boundary (below 100 % also where a sum is cut off at 100 % undiluted), and where the pH on record changes.
            var perDilution = _components.SelectMany(c => new[] { 1m, 0.001m }.SelectMany(d => Ends(c.StrengthAt(d)).Select(s => s / d)));
            var meets = perDilution.Where(s => s > 0).Distinct().SelectMany(s => Boundaries(Axis.Strength).Select(b => b / s));
            all = all.Concat(meets).Append(0.01m).Concat(_product?.Dilution is { } label ? Ends(label) : []).Where(d => d is > 0 and <= 1);
        }

        return _boundaries[axis] = all.Distinct().ToList();
    }

    private static IEnumerable<decimal> Ends(Interval i) => new[] { i.Lower, i.Upper }.OfType<decimal>();

    private Interval AgentStrength() => _question.Strength?.Percent ?? _trees.Usual(_question.Agent!, u => u.Strength)
        ?? (_trees.Basis(_question.Agent!) is { } b && ReferenceMixture.IsFraction(b) ? Interval.Closed(0, 100) : Interval.AtLeast(0));

    /// <summary>Every uncertain value of a choice.</summary>
    private IEnumerable<PointTruth> AllAt(Choice choice, Interval uses)
    {
        var residences = choice.Residence is { } chosen ? [chosen] : Grid(Axis.Residence, _question.Residence!.Value);
        var dilutions = choice.Dilution is { } diluted ? [diluted] : _product is null || _question.Dilution is null ? [1m] : Grid(Axis.Dilution, _question.Dilution.Value);
        var temperatures = Grid(Axis.Temperature, _question.Temperature
            ?? (_product is null ? _trees.Usual(_question.Agent!, u => u.Temperature) : _product.Temperature) ?? _trees.Convention(ConventionKey.AssumedTemperature).Range);
        var numbers = Grid(Axis.Uses, uses);
        foreach (var d in dilutions)
        {
            var phs = Grid(Axis.Ph, _question.Ph ?? (_product is null ? _trees.Usual(_question.Agent!, u => u.Ph) ?? Interval.Whole : _mixture.PhAt(_product, d)));
            foreach (var component in _components)
            {
                var strengths = Grid(Axis.Strength, component.StrengthAt(d));
                foreach (var variant in _variants)
                    foreach (var (residence, temperature, ph, use, strength) in
                        from r in residences from t in temperatures from p in phs from n in numbers from s in strengths select (r, t, p, n, s))
                        yield return Judge(variant, component, new(choice.Method, residence, d, temperature, ph, use, strength));
            }
        }
    }

    /// <summary>Plain 'allowed': every axis stated, or `any` in every deciding rule; nothing filled in; all of it allowed; well founded.</summary>
    private bool IsPlain(IEnumerable<Choice> choices)
    {
        if ((_question.Part is null && _question.Device is null) || (_device is not null && _variants.Any(v => v.Speaking.Count == 0))) return false;
        var leftOut = new List<Func<ExposureBox, AxisStatement>>();
        if (_question.Method is null) leftOut.Add(b => b.Methods.Statement);
        if (_question.Residence is null) leftOut.Add(b => b.Residence.Statement);
        if (_question.Temperature is null) leftOut.Add(b => b.Temperature.Statement);
        if (_question.Ph is null) leftOut.Add(b => b.Ph.Statement);
        if (_question.Uses is null) leftOut.Add(b => b.Uses.Statement);
        if (DilutionIsFree) leftOut.Add(b => b.Dilution.Statement);
        if (_question.Agent is { } agent && _question.Strength is null && _trees.Basis(agent) is not null) leftOut.Add(b => b.Strength.Statement);
        bool Says(Rule r) => leftOut.All(says => says(r.When) == AxisStatement.Any)
            && r.When.Methods.Statement != AxisStatement.Unstated && Enum.GetValues<Axis>().All(a => r.When.On(a).Statement != AxisStatement.Unstated);
        var uses = _question.Uses is { } n ? Interval.Closed(1, n) : Interval.AtLeast(1);
        return choices.SelectMany(c => AllAt(c, uses))
            .All(p => p.Verdict == Verdict.Allowed && p.Allowing.All(voice => voice.All(Says) && voice.Any(IsWellFounded)));
    }

    private bool IsWellFounded(Rule r) => r.KnownBy is KnownBy.Test or KnownBy.Instructions or KnownBy.Published
        && r.Sources.Select(id => _trees.Sources.First(s => s.Id == id)).Any(s => !s.Recalled && s.Kind != SourceKind.CommonPractice);
}
