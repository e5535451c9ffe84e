namespace Compat.Deciding;

/// <summary>Decides one component on one variant where the set of applicable rules is known: steps 4 to 9 of a point question.</summary>
internal sealed class Decider(CompiledBase kb, Scene scene)
{
    private readonly Dictionary<(VariantVoices, CompiledRule), Reason> _forbids = [];

    /// <summary>The worst decision over the variants. Where all allow, their rules and duties join: it is not known which is there.</summary>
    public Decision Worst(bool[] applies)
    {
        var decisions = new Decision[scene.Variants.Count];
        var worst = decisions[0] = Decide(scene.Variants[0], applies);
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

    private Decision Decide(VariantVoices voices, bool[] applies)
    {
        var setAside = new List<CompiledRule>();
        var live = new List<CompiledRule>[voices.Voices.Length];
        for (var v = 0; v < live.Length; v++) live[v] = Live(voices.Voices[v], voices.Voices[v], voices.Voices[0], applies, setAside);

        var forbidding = live.SelectMany(rules => rules).Where(rule => !rule.Allows).Distinct().ToArray();
        if (forbidding.Length > 0)
            return Make(Verdict.NotAllowed, voices, setAside, forbidding, Array.ConvertAll(forbidding, rule => Forbids(voices, rule)));
        if (scene.Component.OnlyForbids)
            return Make(Verdict.Allowed, voices, setAside, [], [Because(voices, ReasonCode.MaterialsAllow)]) with { WellFounded = true };

        foreach (var edition in voices.Variant.Editions.Where(e => e.OnlyListed))
        {
            if (!Allows(edition, voices, applies))
                return Make(Verdict.NotAllowed, voices, setAside, [], [Because(voices, ReasonCode.NotListed, edition.Id.Value)]);
        }

        var variant = voices.Variant;
        var unmet = scene.Component.Duties.Concat(variant.Duties).FirstOrDefault(duty => !variant.CanMeet(duty));
        if (unmet is not null)
            return Make(Verdict.NotAllowed, voices, setAside, [], [Because(voices, ReasonCode.ResidueStays, Words.Of(unmet.Kind))]);
        return Permission(voices, live, setAside, applies);
    }

    /// <summary>One reason a rule and variant, however many pieces it holds in.</summary>
    private Reason Forbids(VariantVoices voices, CompiledRule rule)
    {
        if (!_forbids.TryGetValue((voices, rule), out var reason))
            _forbids[(voices, rule)] = reason = Because(voices, ReasonCode.RuleForbids, rule.Rule.Id.Value, Name(rule), rule.Rule.Target.ToString());
        return reason;
    }

    private Decision Permission(VariantVoices voices, List<CompiledRule>[] live, List<CompiledRule> setAside, bool[] applies)
    {
        var variant = voices.Variant;
        var reasons = new List<Reason>();
        var silent = variant.Editions.FirstOrDefault(edition => !Allows(edition, voices, applies));
        var byPart = live[0].Where(rule => silent is null || !rule.OfInstructions).ToArray();
        if (silent is not null && byPart.Length < live[0].Count) reasons.Add(Because(voices, ReasonCode.EditionSilent, silent.Id.Value));

        CompiledRule[] deciding;
        IReadOnlyList<IEnumerable<CompiledRule>> decidingVoices;
        if (byPart.Length > 0)
        {
            deciding = byPart;
            decidingVoices = [byPart];
            reasons.Insert(0, Because(voices, ReasonCode.PartAllows, byPart[0].Rule.Id.Value));
        }
        else
        {
            if (!variant.MaterialsKnown || variant.Materials.Length == 0) reasons.Add(Because(voices, ReasonCode.MaterialsNotKnown));
            for (var m = 0; m < variant.Materials.Length; m++)
                if (live[m + 1].Count == 0) reasons.Add(Because(voices, ReasonCode.NoEvidenceOnMaterial, kb.Data.Materials[variant.Materials[m]].Id.Value));
            if (reasons.Any(reason => reason.Code != ReasonCode.EditionSilent))
            {
                if (scene.Component.Unknown) reasons.Insert(0, Because(voices, ReasonCode.UnknownIngredient, scene.Component.Name ?? ""));
                if (scene.StaysForGood(variant)) reasons.Insert(0, Because(voices, ReasonCode.ExposureTimeWithoutEnd));
                return Make(Verdict.NotEstablished, voices, setAside, [], reasons);
            }

            deciding = live.Skip(1).SelectMany(rules => rules).Distinct().ToArray();
            decidingVoices = live.Skip(1).ToArray();
            reasons.Insert(0, Because(voices, ReasonCode.MaterialsAllow));
        }

        var accompanying = live[0].Concat(Live(voices.DutiesOnly, [], voices.Voices[0], applies, setAside)).Where(rule => rule.Rule.Duties.Count > 0).Except(deciding).ToArray();
        var unmet = deciding.Concat(accompanying).SelectMany(rule => rule.Rule.Duties).FirstOrDefault(duty => !variant.CanMeet(duty));
        if (unmet is not null)
            return Make(Verdict.NotEstablished, voices, setAside, [.. deciding, .. accompanying], [Because(voices, ReasonCode.DutyCannotBeMet, Words.Of(unmet.Kind))]);
        if (!CompositionSuffices(variant, live, byPart))
            return Make(Verdict.NotEstablished, voices, setAside, deciding, [Because(voices, ReasonCode.CompositionNotKnown, Words.Of(scene.Substance.Product!.Composition))]);
        return Make(Verdict.Allowed, voices, setAside, deciding, reasons) with
        {
            Accompanying = accompanying,
            ByPart = byPart.Length > 0,
            WellFounded = decidingVoices.All(voice => voice.Any(IsWellFounded)),
        };
    }

    /// <summary>A product that is not fully declared needs evidence on itself, except where what is left out does not matter.</summary>
    private bool CompositionSuffices(PartVariant variant, List<CompiledRule>[] live, CompiledRule[] byPart)
    {
        if (scene.Substance.Product is not { } product || product.Composition == Model.Composition.Full) return true;
        if (byPart.Any(rule => rule.Agent < 0)) return true;
        if (!variant.MaterialsKnown || variant.Materials.Length == 0) return false;
        for (var m = 0; m < variant.Materials.Length; m++)
        {
            if (product.Composition == Model.Composition.DeclaredHazardousOnly && kb.DeclaredOnlySuffices(variant.Materials[m])) continue;
            if (!live[m + 1].Any(rule => rule.Agent < 0)) return false;
        }

        return true;
    }

    private List<CompiledRule> Live(int[] rules, int[] own, int[] of0, bool[] applies, List<CompiledRule> setAside)
    {
        var result = new List<CompiledRule>();
        foreach (var i in rules)
        {
            if (!applies[i]) continue;
            var rule = scene.Candidates[i].Rule;
            if (IsSetAside(i, own, of0, applies))
            {
                if (!setAside.Contains(rule)) setAside.Add(rule);
                continue;
            }

            result.Add(rule);
        }

        return result;
    }

    /// <summary>Whether an acting rule of the voice, or of the part and device, overrides a candidate.</summary>
    internal bool IsSetAside(int candidate, int[] own, int[] of0, bool[] applies)
    {
        if (scene.Candidates[candidate].Rule.OfInstructions) return false;
        foreach (var by in scene.Overriders[candidate])
            if (applies[by] && ((Holds(own, by) && Acts(by, own, of0, applies)) || (Holds(of0, by) && Acts(by, of0, of0, applies)))) return true;
        return false;
    }

    private bool Acts(int candidate, int[] own, int[] of0, bool[] applies)
    {
        if (scene.Candidates[candidate].Rule.OfInstructions) return true;
        foreach (var by in scene.Overriders[candidate])
            if (applies[by] && !scene.Candidates[by].Rule.Allows && (Holds(own, by) || Holds(of0, by))) return false;
        return true;
    }

    private static bool Holds(int[] voice, int candidate) => Array.IndexOf(voice, candidate) >= 0;

    /// <summary>Whether an applicable 'allowed' of the edition speaks.</summary>
    private bool Allows(Model.InstructionsEdition edition, VariantVoices voices, bool[] applies)
    {
        foreach (var i in voices.Voices[0])
            if (applies[i] && scene.Candidates[i].Rule.Allows && scene.Candidates[i].Rule.Rule.Edition == edition.Id) return true;
        return false;
    }

    private bool IsWellFounded(CompiledRule rule) => IsWellFounded(kb, rule);

    /// <summary>Whether a rule is known by instructions, a test or a publication, and a source of standing was read.</summary>
    internal static bool IsWellFounded(CompiledBase kb, CompiledRule rule) =>
        rule.Rule.KnownBy is KnownBy.Test or KnownBy.Instructions or KnownBy.Published
        && rule.Rule.Sources.Any(id => kb.SourcesById.TryGetValue(id, out var source) && source.IsWellFounded);

    /// <summary>Of what a rule speaks.</summary>
    internal static string Name(CompiledRule rule) => rule.Rule.Agent?.Value ?? rule.Rule.Product!.Value;

    private Reason Because(VariantVoices voices, ReasonCode code, params string[] arguments) =>
        new(code, arguments, scene.Component.Name, voices.Variant.Member);

    private static Decision Make(Verdict verdict, VariantVoices voices, List<CompiledRule> setAside, IReadOnlyList<CompiledRule> deciding, IReadOnlyList<Reason> reasons) =>
        new() { Verdict = verdict, Variant = voices.Variant, SetAside = setAside, Deciding = deciding, Reasons = reasons };
}
