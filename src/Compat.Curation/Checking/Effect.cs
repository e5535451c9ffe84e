using Compat.Curation.Writing;

namespace Compat.Curation.Checking;

/// <summary>What a set of rules says at a point: verdict, voice, duties, limits, and the weight of the evidence.</summary>
internal sealed class Effect(CompiledBase kb, Scene scene)
{
    private readonly Decider _decider = new(scene);

    /// <summary>How strong the sources of a rule are: 0 for none of standing, 3 for a source read at its publisher.</summary>
    public static int Evidence(CompiledBase kb, Rule rule)
    {
        var sources = rule.Sources.Select(id => kb.SourcesById.TryGetValue(id, out var source) ? Weight(source) : 0).DefaultIfEmpty(0).Max();
        return rule.Allows && rule.KnownBy == KnownBy.Practice ? 0 : sources;
    }

    /// <summary>What the rules that apply say.</summary>
    public Decision Of(bool[] applies) => _decider.Worst(applies);

    /// <summary>Whether a rule is live in some voice.</summary>
    public bool IsLive(CompiledRule rule, bool[] applies)
    {
        var voices = scene.Variants[0].Voices;
        return voices.Any(own => own.Any(i => applies[i] && scene.Candidates[i].Rule == rule && !_decider.IsSetAside(i, own, voices[0], applies)));
    }

    /// <summary>Whether the answer is the same for a reader.</summary>
    public bool AreSame(Decision one, Decision other) =>
        one.Verdict == other.Verdict && Key(one) == Key(other);

    /// <summary>How strong a source is: 0 for none of standing, 3 for one read at its publisher.</summary>
    public static int Weight(Source source) => source.Kind == SourceKind.CommonPractice || source.Trust == Trust.Weak ? 0
        : source.Recalled ? 1
        : source.Trust == Trust.NamedPublication ? 2 : 3;

    private string Key(Decision decision)
    {
        if (decision.Verdict == Verdict.NotAllowed)
            return "not " + (decision.Deciding.Count == 0 ? "-" : decision.Deciding.Max(rule => Evidence(kb, rule.Rule)));
        if (decision.Verdict == Verdict.NotEstablished) return "silent";
        var duties = decision.Deciding.Concat(decision.Accompanying).SelectMany(rule => rule.Rule.Duties).Select(ExposureYaml.DutyText).Distinct()
            .Order(StringComparer.Ordinal);
        var unstated = decision.Deciding.SelectMany(Unstated).Distinct().Order(StringComparer.Ordinal);
        return $"{decision.ByPart} {decision.WellFounded} {Weakest(decision)} | {string.Join("; ", duties)} | {string.Join("; ", unstated)}";
    }

    /// <summary>Of each voice that decides the best evidence, and of these the least.</summary>
    private int Weakest(Decision decision)
    {
        var voices = scene.Variants[0].Voices;
        return (decision.ByPart ? voices.Take(1) : voices.Skip(1))
            .Select(voice => decision.Deciding.Where(rule => voice.Any(i => scene.Candidates[i].Rule == rule)).Select(rule => Evidence(kb, rule.Rule))
                .DefaultIfEmpty(0).Max())
            .DefaultIfEmpty(0).Min();
    }

    private static IEnumerable<string> Unstated(CompiledRule rule)
    {
        foreach (var axis in rule.Rule.When.SilentOn) yield return $"{axis} {rule.Box[axis]}";
        if (rule.Rule.When.Methods.Statement == AxisStatement.Unstated) yield return $"methods {rule.Methods}";
    }
}
