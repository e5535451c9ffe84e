using Compat.Curation.Checking;

namespace Compat.Curation.Reviewing;

/// <summary>Reads the answer of a cell off what the engine decides there.</summary>
internal sealed class CellReader
{
    private readonly CompiledBase _kb;
    private readonly Scene _scene;
    private readonly Decider _decider;
    private readonly PartVariant _driest;
    private readonly bool _isNeverPlain;

    public CellReader(CompiledBase kb, Scene scene)
    {
        (_kb, _scene, _decider) = (kb, scene, new Decider(scene));
        var variants = scene.Variants.Select(one => one.Variant).ToArray();
        _driest = variants.MinBy(variant => variant.Wettest)!;
        _isNeverPlain = Limits.OfPart(variants).Any();
    }

    /// <summary>The answer where a set of rules applies.</summary>
    public CellAnswer Of(bool[] applies)
    {
        var decision = _decider.Worst(applies);
        var answer = Of(decision);
        if (answer.Verdict == Verdict.NotAllowed) return answer;
        answer = answer with { SetAside = SetAside(decision, applies) };
        return answer.IsAllowed ? answer with { Evidence = (EvidenceWeight)Math.Min((int)answer.Evidence, Exception(decision, applies)) } : answer;
    }

    /// <summary>The answer that a decision gives.</summary>
    public CellAnswer Of(Decision decision)
    {
        var rules = decision.Deciding.Select(rule => rule.Rule.Id).Distinct().Order().ToArray();
        return decision.Verdict switch
        {
            Verdict.NotAllowed => new()
            {
                Verdict = Verdict.NotAllowed,
                DecidedBy = rules,
                Evidence = (EvidenceWeight)decision.Deciding.Select(rule => Effect.Evidence(_kb, rule.Rule)).DefaultIfEmpty((int)EvidenceWeight.Read).Max(),
                Barrier = rules.Length == 0 ? decision.Reasons.FirstOrDefault() : null,
                Prevents = decision.Deciding.Max(rule => rule.Rule.Damage?.Consequence),
            },
            Verdict.NotEstablished => new() { Verdict = Verdict.NotEstablished, DecidedBy = rules },
            _ => Allowed(decision, rules),
        };
    }

    private CellAnswer Allowed(Decision decision, RuleId[] rules) => new()
    {
        Verdict = _isNeverPlain || !decision.WellFounded || decision.Deciding.Any(rule => rule.IsSilent) ? Verdict.AllowedWithinLimits : Verdict.Allowed,
        DecidedBy = rules,
        Duties = DutyJoin.Join(_scene.Component.Duties.Concat(decision.Variants.SelectMany(one => one.Duties))
            .Concat(decision.Deciding.Concat(decision.Accompanying).SelectMany(rule => rule.Rule.Duties)), _driest),
        Evidence = (EvidenceWeight)_scene.Variants.Min(variant => Weakest(variant, decision)),
    };

    /// <summary>Of each voice that decides the best evidence, and of these the least.</summary>
    private int Weakest(VariantVoices variant, Decision decision)
    {
        var voices = decision.ByPart ? variant.Voices.Take(1) : variant.Voices.Where((voice, i) => i > 0 || Speaks(voice, decision));
        return voices.Select(voice => decision.Deciding.Where(rule => Holds(voice, rule)).Select(rule => Effect.Evidence(_kb, rule.Rule))
            .DefaultIfEmpty((int)EvidenceWeight.Read).Max())
            .DefaultIfEmpty(0).Min();
    }

    /// <summary>A permission that sets a prohibition aside is known no better than the exception.</summary>
    private int Exception(Decision decision, bool[] applies) => decision.SetAside.Where(rule => !rule.Allows)
        .Select(rule => _scene.Candidates.Where((one, i) => applies[i] && one.Rule.Overrides(rule)).Select(one => Effect.Evidence(_kb, one.Rule.Rule))
            .DefaultIfEmpty((int)EvidenceWeight.Read).Max())
        .DefaultIfEmpty((int)EvidenceWeight.Read).Min();

    private SetAside[] SetAside(Decision decision, bool[] applies) => decision.SetAside.Where(rule => !rule.Allows)
        .SelectMany(rule => _scene.Candidates.Where((one, i) => applies[i] && one.Rule.Overrides(rule))
            .Select(one => new SetAside(rule.Rule.Id, one.Rule.Rule.Id))).Distinct().ToArray();

    private bool Speaks(int[] voice, Decision decision) => decision.Deciding.Any(rule => Holds(voice, rule));

    private bool Holds(int[] voice, CompiledRule rule) => voice.Any(i => _scene.Candidates[i].Rule == rule);
}
