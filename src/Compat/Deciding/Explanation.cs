namespace Compat.Deciding;

/// <summary>What is decided at every point of a leaf, for the worst variant.</summary>
internal sealed record Decision
{
    /// <summary>Not allowed, not established or allowed; never within limits.</summary>
    public required Verdict Verdict { get; init; }

    public required IReadOnlyList<Reason> Reasons { get; init; }

    public required PartVariant Variant { get; init; }

    /// <summary>Rules that decide: the live 'not allowed', or the live 'allowed' of the deciding voices.</summary>
    public IReadOnlyList<CompiledRule> Deciding { get; init; } = [];

    /// <summary>Other live 'allowed' rules of the part, which permit nothing here but whose duties join.</summary>
    public IReadOnlyList<CompiledRule> Accompanying { get; init; } = [];

    public IReadOnlyList<CompiledRule> SetAside { get; init; } = [];

    /// <summary>The variants that share an 'allowed'; their duties join.</summary>
    public IReadOnlyList<PartVariant> Variants { get; init; } = [];

    public bool ByPart { get; init; }

    public bool WellFounded { get; init; }
}

/// <summary>Decides a scene with all its reasons where the set of applicable rules is known.</summary>
internal sealed class Decider(Scene scene)
{
    private readonly Dictionary<(VariantVoices, CompiledRule), Reason> _forbids = [];

    /// <summary>The worst decision over the variants. Where all allow, their rules and duties join: it is not known which is there.</summary>
    public Decision Worst(bool[] applies)
    {
        var worst = Decide(scene.Variants[0], applies);
        if (scene.Variants.Count == 1) return worst.Verdict == Verdict.Allowed ? worst with { Variants = [worst.Variant] } : worst;
        var decisions = new Decision[scene.Variants.Count];
        decisions[0] = worst;
        for (var i = 1; i < decisions.Length; i++)
        {
            decisions[i] = Decide(scene.Variants[i], applies);
            if (decisions[i].Verdict < worst.Verdict) worst = decisions[i];
        }

        if (worst.Verdict != Verdict.Allowed) return worst;
        return worst with
        {
            Deciding = decisions.SelectMany(d => d.Deciding).Distinct().ToArray(),
            Accompanying = decisions.SelectMany(d => d.Accompanying).Distinct().ToArray(),
            SetAside = decisions.SelectMany(d => d.SetAside).Distinct().ToArray(),
            Variants = decisions.Select(d => d.Variant).ToArray(),
            ByPart = decisions.All(d => d.ByPart),
            WellFounded = decisions.All(d => d.WellFounded),
        };
    }

    /// <summary>Whether an acting rule of the voice, or of the part and device, overrides a candidate.</summary>
    public bool IsSetAside(int candidate, int[] own, int[] ofPart, bool[] applies)
    {
        var at = new Covering(applies);
        return PointDecision.IsSetAside(scene, candidate, own, ofPart, ref at);
    }

    private Decision Decide(VariantVoices on, bool[] applies)
    {
        var at = new Covering(applies);
        var heard = new Heard(this, scene, on);
        return heard.ToDecision(PointDecision.Of(scene, on, ref at, ref heard), applies);
    }

    /// <summary>One reason a rule and variant, however many pieces it holds in.</summary>
    private Reason Forbids(VariantVoices on, CompiledRule rule)
    {
        if (!_forbids.TryGetValue((on, rule), out var reason))
        {
            var speaksOf = rule.Rule.Agent?.Value ?? rule.Rule.Product!.Value;
            reason = new(ReasonCode.RuleForbids, [rule.Rule.Id.Value, speaksOf, rule.Rule.Target.ToString()], scene.Component.Name, on.Variant.Member);
            _forbids[(on, rule)] = reason;
        }

        return reason;
    }

    /// <summary>Where a set of candidates applies.</summary>
    private readonly struct Covering(bool[] applies) : IApplying
    {
        public bool Applies(int candidate) => applies[candidate];
    }

    /// <summary>Keeps all that decides, as reasons and rules.</summary>
    private sealed class Heard(Decider decider, Scene scene, VariantVoices on) : IDecisionListener
    {
        private readonly List<Reason> _reasons = [];
        private readonly List<CompiledRule> _deciding = [], _accompanying = [];
        private bool _isAllowed, _byPart, _wellFounded, _withDuties;

        public bool ListensToAll => true;

        public void Forbids(int candidate)
        {
            if (Add(_deciding, candidate) is { } rule) _reasons.Add(decider.Forbids(on, rule));
        }

        public void Permits(int candidate) => Add(_deciding, candidate);

        public void Accompanies(int candidate) => Add(_accompanying, candidate);

        public void IsAllowed(bool byPart, bool wellFounded) => (_isAllowed, _byPart, _wellFounded) = (true, byPart, wellFounded);

        public void Because(ReasonCode code, string argument)
        {
            if (code is ReasonCode.DutyCannotBeMet or ReasonCode.CompositionNotKnown) _reasons.Clear();
            _withDuties |= code == ReasonCode.DutyCannotBeMet;
            _reasons.Add(Reason(code, argument));
        }

        public Decision ToDecision(Verdict verdict, bool[] applies)
        {
            var isPermitted = _isAllowed || (_reasons.Count > 0 && _reasons[0].Code is ReasonCode.DutyCannotBeMet or ReasonCode.CompositionNotKnown);
            if (_isAllowed)
            {
                _reasons.Insert(0, _byPart ? Reason(ReasonCode.PartAllows, _deciding[0].Rule.Id.Value) : Reason(ReasonCode.MaterialsAllow, ""));
            }
            else if (verdict == Verdict.NotEstablished && !isPermitted)
            {
                _deciding.Clear();
                if (scene.Component.Unknown) _reasons.Insert(0, new(ReasonCode.UnknownIngredient, [scene.Component.Name ?? ""], scene.Component.Name, on.Variant.Member));
                if (!scene.LeavesNothing && on.EndsNowhere) _reasons.Insert(0, Reason(ReasonCode.ExposureTimeWithoutEnd, ""));
            }

            return new Decision
            {
                Verdict = verdict,
                Variant = on.Variant,
                Reasons = _reasons,
                Deciding = _withDuties ? [.. _deciding, .. _accompanying] : _deciding,
                Accompanying = _isAllowed ? _accompanying : [],
                SetAside = SetAside(applies, isPermitted && !scene.Component.OnlyForbids),
                ByPart = _byPart,
                WellFounded = _wellFounded,
            };
        }

        private Reason Reason(ReasonCode code, string argument) => new(code, argument.Length == 0 ? [] : [argument], scene.Component.Name, on.Variant.Member);

        private CompiledRule? Add(List<CompiledRule> to, int candidate)
        {
            var rule = scene.Candidates[candidate].Rule;
            if (to.Contains(rule)) return null;
            to.Add(rule);
            return rule;
        }

        private IReadOnlyList<CompiledRule> SetAside(bool[] applies, bool withDutiesOnly)
        {
            if (!scene.HasOverrides) return [];
            var found = new List<CompiledRule>();
            foreach (var own in on.Voices) Look(own, own);
            if (withDutiesOnly) Look(on.DutiesOnly, []);
            return found;

            void Look(int[] voice, int[] own)
            {
                foreach (var i in voice)
                    if (applies[i] && !found.Contains(scene.Candidates[i].Rule) && decider.IsSetAside(i, own, on.Voices[0], applies)) found.Add(scene.Candidates[i].Rule);
            }
        }
    }
}
