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

/// <summary>How well what decides is known; each better than the one before.</summary>
public enum EvidenceWeight
{
    /// <summary>Common practice, a source of no standing, or nothing.</summary>
    Practice,

    /// <summary>A figure that was recalled and not read.</summary>
    Recalled,

    /// <summary>A publication of which a copy was read.</summary>
    Copy,

    /// <summary>A source that was read at its publisher.</summary>
    Read,
}

/// <summary>A rule that another sets aside.</summary>
/// <param name="Rule">The rule that does not count.</param>
/// <param name="By">The rule that overrides it.</param>
public sealed record SetAside(RuleId Rule, RuleId By);

/// <summary>What is answered at every point of a box where every axis is stated.</summary>
internal sealed record CellAnswer
{
    /// <summary>
    /// The verdict. Within limits: the part stands it, but something keeps the answer from a plain 'allowed' (weak evidence, a silent source).
    /// </summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The rules that decide; empty where none does: a barrier, or nothing on record.</summary>
    public IReadOnlyList<RuleId> DecidedBy { get; init; } = [];

    /// <summary>The duties that go with a use; empty where it is not allowed.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>What forbids without a rule: the part does not stand the method, or its instructions list other things only; null where rules decide.</summary>
    public Reason? Barrier { get; init; }

    /// <summary>The prohibitions that do not count because another rule sets them aside.</summary>
    public IReadOnlyList<SetAside> SetAside { get; init; } = [];

    /// <summary>
    /// How well it is known. Of a permission the weakest voice counts, of a prohibition the best rule; an exception is known no better than the rule that
    /// makes it.
    /// </summary>
    public EvidenceWeight Evidence { get; init; }

    /// <summary>The worst that a 'not allowed' prevents; null where no rule decides.</summary>
    public Consequence? Prevents { get; init; }

    /// <summary>Whether the use is permitted, with limits or without.</summary>
    public bool IsAllowed => Verdict >= Verdict.AllowedWithinLimits;
}

/// <summary>A box, by one method, in which two knowledge bases answer differently, the same throughout.</summary>
internal sealed record CellChange(Box<Stretch> Box, CellAnswer Before, CellAnswer After)
{
    /// <summary>The rules that hold here and tell the two sides apart.</summary>
    public IReadOnlyList<RuleId> Telling { get; init; } = [];

    /// <summary>The edits that each alone make a change here; empty where only several together do.</summary>
    public IReadOnlyList<RecordEdit> Causes { get; init; } = [];

    /// <summary>Whether two answers differ in anything that a change can be.</summary>
    public static bool Differ(CellAnswer one, CellAnswer other) =>
        one.Verdict != other.Verdict || EvidenceDiffers(one, other)
            || (one.Prevents is not null && other.Prevents is not null && one.Prevents != other.Prevents)
        || DutyComparison.NotMet(one.Duties, other.Duties).Any() || DutyComparison.NotMet(other.Duties, one.Duties).Any();

    /// <summary>What the change is, by its most dangerous side.</summary>
    public ChangeKind Kind
    {
        get
        {
            if (After.Verdict > Before.Verdict) return ChangeKind.Loosened;
            if (After.IsAllowed && DutyComparison.NotMet(Before.Duties, After.Duties).Any()) return ChangeKind.DutiesDropped;
            if (Before.IsAllowed && !After.IsAllowed) return ChangeKind.Tightened;
            if (After.Verdict < Before.Verdict) return After.IsAllowed ? ChangeKind.EvidenceWeakened : ChangeKind.Tightened;
            if (After.Prevents < Before.Prevents) return ChangeKind.PreventsLess;
            if (EvidenceDiffers(Before, After) && After.Evidence < Before.Evidence) return ChangeKind.EvidenceWeakened;
            if (DutyComparison.NotMet(After.Duties, Before.Duties).Any() || After.Prevents > Before.Prevents) return ChangeKind.Tightened;
            return ChangeKind.EvidenceStrengthened;
        }
    }

    /// <summary>Whether the same is known better or worse. What a part does not stand, or its instructions do not list, is known by no source.</summary>
    private static bool EvidenceDiffers(CellAnswer one, CellAnswer other) => one.Evidence != other.Evidence && one.Barrier is null && other.Barrier is null;
}

/// <summary>Tells whether duties ask at least as much as others.</summary>
internal static class DutyComparison
{
    /// <summary>The duties that nothing on the other side meets.</summary>
    public static IEnumerable<Duty> NotMet(IReadOnlyList<Duty> asked, IReadOnlyList<Duty> by) => asked.Where(duty => !by.Any(other => Meets(other, duty)));

    /// <summary>The duties that nothing on the other side meets; of one that speaks of several parts only what is left out there.</summary>
    public static IEnumerable<Duty> Lost(IReadOnlyList<Duty> asked, IReadOnlyList<Duty> by) => NotMet(asked, by).Select(duty =>
        by.FirstOrDefault(other => other.Kind == duty.Kind && other.Parts.Any(duty.Parts.Contains) && Meets(other, duty with { Parts = [] })) is { } still
            ? duty with { Parts = duty.Parts.Except(still.Parts).ToArray() } : duty);

    /// <summary>
    /// Whether doing one duty meets the other: of its kind, no way easier, no figure looser. Words of what to wear or look for are not weighed: others are no
    /// match.
    /// </summary>
    private static bool Meets(Duty duty, Duty asked) =>
        duty.Kind == asked.Kind
        && (asked.Within is not { } least || duty.Within <= least)
        && asked.Parts.All(duty.Parts.Contains)
        && (asked.AfterUses is not { } uses || duty.AfterUses <= uses)
        && (asked.Note is null || asked.Note == duty.Note || IsOfWays(asked.Kind))
        && (asked.Ways.Count == 0 || (duty.Ways.Count > 0 && duty.Ways.All(way => asked.Ways.Any(one => Serves(way, one)))));

    private static bool IsOfWays(DutyKind kind) => kind is DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry or DutyKind.KeepOff;

    private static bool Serves(DutyWay way, DutyWay asked) =>
        way.Act == asked.Act && (asked.Method is null ? way.Method is null : way.Method >= asked.Method && IsWipe(way.Method) == IsWipe(asked.Method))
        && !(asked.Water is { } water && !(way.Water >= water)) && (way.Times ?? 0) >= (asked.Times ?? 0)
        && (way.Seconds ?? 0) >= (asked.Seconds ?? 0) && (way.Litres ?? 0) >= (asked.Litres ?? 0);

    private static bool IsWipe(ApplicationMethod? method) => method is ApplicationMethod.DryWipe or ApplicationMethod.DampWipe or ApplicationMethod.WetWipe;
}
