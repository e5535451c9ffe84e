using Compat.Efficacy;
using Compat.Evaluation;
using Compat.Windows;

namespace Compat.Kill;

/// <summary>Says why no exposure is shown to kill what is needed. Asked only where that is so.</summary>
internal sealed class KillReasons(WindowGround ground)
{
    private CompiledBase Kb => ground.Gathering.Base;

    /// <summary>The reasons of the set of claims that comes nearest: one that says nothing comes nearer than one that says no.</summary>
    public (Verdict Verdict, IReadOnlyList<KillReason> Reasons) Of()
    {
        if (ground.ClothBinds && ground.Methods.All(method => method <= ApplicationMethod.WetWipe)) return (Verdict.NotAllowed, [new KillReason(KillReasonCode.ClothBinds, [])]);
        var best = (Verdict: Verdict.NotAllowed, Reasons: (IReadOnlyList<KillReason>)[]);
        var none = true;
        foreach (var set in ground.Sets)
        {
            var reasons = ground.Cover.Targets.Select(target => Of(set, target)).OfType<KillReason>().Distinct(ByContent.Instance).ToArray();
            var verdict = reasons.Any(reason => SaysNo(reason.Code)) ? Verdict.NotAllowed : Verdict.NotEstablished;
            if (none || verdict > best.Verdict) best = (verdict, reasons);
            none = false;
        }

        return best;
    }

    private static bool SaysNo(KillReasonCode code) =>
        code is KillReasonCode.LabelClaimsLess or KillReasonCode.NeverAbove or KillReasonCode.DoesNotKill or KillReasonCode.Refuted or KillReasonCode.NotReached;

    /// <summary>Why a target is not met; null where it is.</summary>
    private KillReason? Of(ClaimSet set, KillTarget target)
    {
        var meeting = set.Claims.Where(claim => ground.Cover.Meets(claim, target)).ToArray();
        if (meeting.Length > 0)
        {
            var unreached = ground.Variants.FirstOrDefault(v => !ground.Methods.Any(method => meeting.Any(claim => KillCover.ReachesInto(claim, method, v))));
            return unreached is not null ? new KillReason(KillReasonCode.NotReached, [Words.Of(unreached.Geometry)])
                : Covers(set, target) ? null : new KillReason(KillReasonCode.OutsideClaims, [target.ToString(), MethodSet.Of(meeting.SelectMany(claim => claim.Methods.Methods).Distinct().ToArray()).ToString(), .. meeting.Select(claim => claim.Claim.Id)]);
        }

        if (ground.Substance.Product is { LabelClaims.Count: > 0 } product)
            return HardWater(product) ? new KillReason(KillReasonCode.WaterTooHard, [product.Id.Value]) : new KillReason(KillReasonCode.LabelClaimsLess, [product.Id.Value, target.ToString()]);
        if (Against(set, target) is { } against) return against;
        if (target.Level == Level.Sterile) return new KillReason(KillReasonCode.SterileNeedsInstructions, []);
        if (target.Level == Level.High && set.Claims.Any(claim => claim.Claim.Reaches >= Level.High)) return new KillReason(KillReasonCode.HighNeedsMore, []);
        return ground.Gathering.PublishedNotUsed ?? new KillReason(KillReasonCode.NoClaim, [target.ToString()]);
    }

    private bool Covers(ClaimSet set, KillTarget target) =>
        ground.Methods.Any(method => ground.Boxes(ground.Cover.HolesOf(set, target, method).Select(ground.Axes.Freed)).Count > 0);

    private bool HardWater(Sites.Product product) => product.LabelClaims.Any(claim => claim.ShownBy is not null) && ground.Sets.All(set => set.Claims.All(claim => claim.Claim.Origin != ClaimOrigin.Label));

    /// <summary>What is on record against the agent: a standing rule, a claim that says what it does not kill, a refuted claim.</summary>
    /// <remarks>Of a product that is judged by no one ingredient it must be on record against each of them: another one may kill, known or not.</remarks>
    private KillReason? Against(ClaimSet set, KillTarget target)
    {
        if (set.Component is { } one) return Against(one, target);
        if (ground.Substance.Product is not { Composition: Sites.Composition.Full }) return null;
        var each = ground.Substance.Components.Where(c => !c.OnlyForbids).Select(c => c.Unknown ? null : Against(c, target)).ToArray();
        return each.Contains(null) ? null : each.FirstOrDefault();
    }

    private KillReason? Against(Component component, KillTarget target)
    {
        var agent = Kb.Data.Agents[component.Agent].Id.Value;
        foreach (var standing in Kb.Data.StandingRules)
        {
            if (standing.NeverAbove is { } most && (target.Level > most || (target.Level is null && most == Level.Cleaned)) && At(component, standing.Agent) && !Bounds(standing.When))
                return new KillReason(KillReasonCode.NeverAbove, [agent, Words.Of(most), standing.Id.Value]);
        }

        foreach (var claim in Kb.Data.Claims.Where(claim => At(component, claim.Agent) && claim.For.Count == 0))
        {
            if (target.Against is { } against && claim.DoesNotKill.Contains(against)) return new KillReason(KillReasonCode.DoesNotKill, [agent, target.ToString(), claim.Id.Value]);
            if (claim.Refuted is not null && (target.Level is { } level ? claim.Reaches is { } reached && reached <= level : claim.Kills.Contains(target.Against!)))
                return new KillReason(KillReasonCode.Refuted, [agent, target.ToString(), claim.Id.Value]);
        }

        return null;
    }

    private bool At(Component component, AgentId agent) => Kb.Agents.IsAtOrBelow(component.Agent, Kb.Agents[agent.Value]);

    /// <summary>Whether a standing rule holds only at some strengths, temperatures or pH.</summary>
    private static bool Bounds(ExposureBox box) =>
        box.Strength.Statement == AxisStatement.Within || box.Temperature.Statement == AxisStatement.Within || box.Ph.Statement == AxisStatement.Within || box.Methods.Statement == AxisStatement.Within;

    private sealed class ByContent : IEqualityComparer<KillReason>
    {
        public static ByContent Instance { get; } = new();

        public bool Equals(KillReason? x, KillReason? y) => x!.Code == y!.Code && x.Arguments.SequenceEqual(y.Arguments);

        public int GetHashCode(KillReason reason) => (int)reason.Code;
    }
}
