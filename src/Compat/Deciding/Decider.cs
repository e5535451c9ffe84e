namespace Compat.Deciding;

/// <summary>Tells which candidates of a scene apply where it is decided.</summary>
internal interface IApplying
{
    bool Applies(int candidate);
}

/// <summary>Hears why it is decided as it is. What asks for the verdict alone listens to nothing, and costs nothing.</summary>
internal interface IDecisionListener
{
    /// <summary>Whether all that decides is to be told, not only the first.</summary>
    bool ListensToAll { get; }

    /// <summary>A live 'not allowed'.</summary>
    void Forbids(int candidate);

    /// <summary>A live 'allowed' of a voice that permits.</summary>
    void Permits(int candidate);

    /// <summary>A live 'allowed' that permits nothing here, whose duties join.</summary>
    void Accompanies(int candidate);

    /// <summary>It is allowed: by the part or device, or by its materials; by a test, instructions or a publication in every voice that permits.</summary>
    void IsAllowed(bool byPart, bool wellFounded);

    void Because(ReasonCode code, string argument);
}

/// <summary>
/// Decides one component on one variant of a part at a point: the one place where it is done, for a verdict alone as for an explanation.
/// The steps are the clauses P3 to P8 of the specification, in their order. P1 (barrier) and P2 (exposure time) are done before, by
/// <see cref="Pieces.BarrierOf"/> and <see cref="Reach.ExposureTimes"/>.
/// </summary>
internal static class PointDecision
{
    public static Verdict Of<TApplying, TListener>(Scene scene, VariantVoices on, ref TApplying at, ref TListener to)
        where TApplying : struct, IApplying
        where TListener : IDecisionListener
    {
        // P4 Prohibition: a live 'not allowed' in any voice.
        var isForbidden = false;
        for (var voice = 0; voice < on.Voices.Length; voice++)
        {
            var own = on.Voices[voice];
            for (var i = 0; i < on.Forbidding[voice]; i++)
            {
                if (!IsLive(scene, own[i], own, on, ref at)) continue;
                if (!to.ListensToAll) return Verdict.NotAllowed;
                to.Forbids(own[i]);
                isForbidden = true;
            }
        }

        if (isForbidden) return Verdict.NotAllowed;

        // M2: of water and of sums no more is asked.
        if (scene.Component.OnlyForbids)
        {
            to.IsAllowed(byPart: false, wellFounded: true);
            return Verdict.Allowed;
        }

        // P5 Only what is listed.
        InstructionsEdition? silent = null;
        var editions = on.Variant.Editions;
        for (var i = 0; i < editions.Count; i++)
        {
            if (Lists(scene, editions[i], on, ref at)) continue;
            if (editions[i].OnlyListed)
            {
                to.Because(ReasonCode.NotListed, editions[i].Id.Value);
                return Verdict.NotAllowed;
            }

            silent ??= editions[i];
        }

        // P6 Own duties: one of the agent or the part that can be met in no way.
        if (on.UnmetOwn is { } unmet)
        {
            if (to.ListensToAll) to.Because(ReasonCode.ResidueStays, Words.Of(unmet.Kind));
            return Verdict.NotAllowed;
        }

        return Permission(scene, on, silent, ref at, ref to);
    }

    /// <summary>P3 Voices: whether an acting rule of its voice, or of the part and device, sets a candidate aside.</summary>
    public static bool IsSetAside<TApplying>(Scene scene, int candidate, int[] own, int[] ofPart, ref TApplying at) where TApplying : struct, IApplying
    {
        var overriders = scene.Overriders[candidate];
        if (overriders.Length == 0 || scene.Candidates[candidate].Rule.OfInstructions) return false;
        foreach (var by in overriders)
            if (at.Applies(by) && ((Holds(own, by) && Acts(scene, by, own, ofPart, ref at))
                || (Holds(ofPart, by) && Acts(scene, by, ofPart, ofPart, ref at)))) return true;
        return false;
    }

    /// <summary>Whether no 'not allowed' that applies overrides a rule that does; what speaks for instructions always acts.</summary>
    private static bool Acts<TApplying>(Scene scene, int candidate, int[] own, int[] ofPart, ref TApplying at) where TApplying : struct, IApplying
    {
        if (scene.Candidates[candidate].Rule.OfInstructions) return true;
        foreach (var by in scene.Overriders[candidate])
            if (!scene.Candidates[by].Rule.Allows && at.Applies(by) && (Holds(own, by) || Holds(ofPart, by))) return false;
        return true;
    }

    private static Verdict Permission<TApplying, TListener>(Scene scene, VariantVoices on, InstructionsEdition? silent, ref TApplying at, ref TListener to)
        where TApplying : struct, IApplying
        where TListener : IDecisionListener
    {
        // P7 Permission: a live 'allowed' of the part or device, else of each of its materials.
        var byPart = default(Permit);
        byPart.Hear(scene, on, 0, silent, ref at, ref to);
        var deciding = byPart;
        if (!byPart.Any)
        {
            deciding = new Permit { Any = on.MaterialsAreKnown, WellFounded = true };
            if (!on.MaterialsAreKnown) to.Because(ReasonCode.MaterialsNotKnown, "");
            for (var voice = 1; voice < on.Voices.Length && (deciding.Any || to.ListensToAll); voice++)
            {
                var ofMaterial = default(Permit);
                ofMaterial.Hear(scene, on, voice, null, ref at, ref to);
                if (!ofMaterial.Any && to.ListensToAll) to.Because(ReasonCode.NoEvidenceOnMaterial, scene.NameOf(on.Variant.Materials[voice - 1]));
                deciding.Join(ofMaterial);
            }

            if (!deciding.Any) return Verdict.NotEstablished;
        }

        // P8 Duties of permissions: one that can be met in no way.
        var beside = default(Permit);
        foreach (var i in on.DutiesOnly)
            if (IsLive(scene, i, [], on, ref at)) beside.Accompany(scene, on, i, ref to);
        if ((deciding.Unmet ?? byPart.UnmetBeside ?? beside.UnmetBeside) is { } unmet)
        {
            if (to.ListensToAll) to.Because(ReasonCode.DutyCannotBeMet, Words.Of(unmet.Kind));
            return Verdict.NotEstablished;
        }

        // M4: a product that is not fully declared needs evidence on itself, except where what is left out does not matter.
        if (scene.Product is { Composition: not Composition.Full } product && !byPart.OfProduct && !MaterialsBearOut(scene, on, product, ref at))
        {
            if (to.ListensToAll) to.Because(ReasonCode.CompositionNotKnown, Words.Of(product.Composition));
            return Verdict.NotEstablished;
        }

        to.IsAllowed(byPart.Any, deciding.WellFounded);
        return Verdict.Allowed;
    }

    /// <summary>Whether of every material there is evidence on the product itself, or what it leaves undeclared does not matter.</summary>
    private static bool MaterialsBearOut<TApplying>(Scene scene, VariantVoices on, Product product, ref TApplying at) where TApplying : struct, IApplying
    {
        if (!on.MaterialsAreKnown) return false;
        var to = default(NoListener);
        for (var voice = 1; voice < on.Voices.Length; voice++)
        {
            if (product.Composition == Composition.DeclaredHazardousOnly && on.DeclaredSuffices[voice - 1]) continue;
            var ofMaterial = default(Permit);
            ofMaterial.Hear(scene, on, voice, null, ref at, ref to);
            if (!ofMaterial.OfProduct) return false;
        }

        return true;
    }

    /// <summary>Whether an 'allowed' of an edition applies.</summary>
    private static bool Lists<TApplying>(Scene scene, InstructionsEdition edition, VariantVoices on, ref TApplying at) where TApplying : struct, IApplying
    {
        var ofPart = on.Voices[0];
        for (var i = on.Forbidding[0]; i < ofPart.Length; i++)
            if (scene.Candidates[ofPart[i]].Rule.Rule.Edition == edition.Id && at.Applies(ofPart[i])) return true;
        return false;
    }

    private static bool IsLive<TApplying>(Scene scene, int candidate, int[] own, VariantVoices on, ref TApplying at) where TApplying : struct, IApplying =>
        at.Applies(candidate) && !IsSetAside(scene, candidate, own, on.Voices[0], ref at);

    private static bool Holds(int[] voice, int candidate) => Array.IndexOf(voice, candidate) >= 0;

    /// <summary>What the live 'allowed' rules of a voice come to.</summary>
    private struct Permit
    {
        public bool Any, WellFounded, OfProduct;

        /// <summary>The first duty that cannot be met: of the rules that permit, and of those that do not.</summary>
        public Duty? Unmet, UnmetBeside;

        /// <summary>Hears a voice. Where an edition is silent, those of instructions permit nothing.</summary>
        public void Hear<TApplying, TListener>(Scene scene, VariantVoices on, int voice, InstructionsEdition? silent, ref TApplying at, ref TListener to)
            where TApplying : struct, IApplying
            where TListener : IDecisionListener
        {
            var own = on.Voices[voice];
            var isSilent = false;
            for (var i = on.Forbidding[voice]; i < own.Length; i++)
            {
                if (!IsLive(scene, own[i], own, on, ref at)) continue;
                var candidate = scene.Candidates[own[i]];
                if (silent is not null && candidate.Rule.OfInstructions)
                {
                    isSilent = true;
                    Accompany(scene, on, own[i], ref to);
                    continue;
                }

                to.Permits(own[i]);
                Any = true;
                WellFounded |= candidate.IsWellFounded;
                OfProduct |= candidate.Rule.Agent < 0;
                if (candidate.HasWays) Unmet ??= on.Variant.FirstUnmet(candidate.Rule.Rule.Duties);
            }

            if (isSilent) to.Because(ReasonCode.EditionSilent, silent!.Id.Value);
        }

        /// <summary>Hears a rule that permits nothing here.</summary>
        public void Accompany<TListener>(Scene scene, VariantVoices on, int candidate, ref TListener to) where TListener : IDecisionListener
        {
            var duties = scene.Candidates[candidate].Rule.Rule.Duties;
            if (duties.Count == 0) return;
            to.Accompanies(candidate);
            UnmetBeside ??= on.Variant.FirstUnmet(duties);
        }

        /// <summary>Adds another voice that must allow too.</summary>
        public void Join(in Permit voice)
        {
            Any &= voice.Any;
            WellFounded &= voice.WellFounded;
            Unmet ??= voice.Unmet;
        }
    }

    private readonly struct NoListener : IDecisionListener
    {
        public bool ListensToAll => false;

        public void Forbids(int candidate)
        {
        }

        public void Permits(int candidate)
        {
        }

        public void Accompanies(int candidate)
        {
        }

        public void IsAllowed(bool byPart, bool wellFounded)
        {
        }

        public void Because(ReasonCode code, string argument)
        {
        }
    }
}

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
                if (scene.Component.Unknown) _reasons.Insert(0,
                    new(ReasonCode.UnknownIngredient, [scene.Component.Name ?? ""], scene.Component.Name, on.Variant.Member));
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
                    if (applies[i] && !found.Contains(scene.Candidates[i].Rule)
                        && decider.IsSetAside(i, own, on.Voices[0], applies)) found.Add(scene.Candidates[i].Rule);
            }
        }
    }
}
