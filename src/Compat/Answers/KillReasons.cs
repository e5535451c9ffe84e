namespace Compat.Answers;

/// <summary>Says why no exposure is shown to kill what is needed: clauses K19 and K20. Asked only where that is so.</summary>
internal sealed class KillReasons(WindowGround ground)
{
    private readonly ClaimAxes _axes = new(ground.Gathering.Base);

    private CompiledBase Kb => ground.Gathering.Base;

    /// <summary>The reasons of the set of claims that comes nearest: one that says nothing comes nearer than one that says no. Then the claims that hold in a
    /// machine only.</summary>
    public (Verdict Verdict, IReadOnlyList<KillReason> Reasons) Of()
    {
        var (verdict, reasons) = ByHand();
        return (verdict, [.. reasons, .. InMachine()]);
    }

    /// <summary>The claims that would serve at what is asked, but hold in a machine only: one reason, or none.</summary>
    public IEnumerable<KillReason> InMachine()
    {
        var claims = ground.Gathering.InMachine().Where(claim => ground.Methods.Any(claim.Methods.Contains)
            && ground.Variants.Any(variant => claim.SpeaksOf(Kb, variant)) && ground.Cover.Targets.Any(target => ground.Cover.Meets(claim, target))
            && claim.Box.Temperature.Meets(Stretch.Of(ground.Substance.Temperature))).ToArray();
        if (claims.Length > 0) yield return new KillReason(KillReasonCode.MachineOnly, claims.Select(claim => claim.Claim.Id).ToArray());
    }

    private (Verdict Verdict, IReadOnlyList<KillReason> Reasons) ByHand()
    {
        if (ground.Methods.Count == 0) return (Verdict.NotEstablished, OutsideAll());
        if (ground.ClothBinds && ground.Methods.All(method => method <= ApplicationMethod.WetWipe))
            return (Verdict.NotAllowed, [new KillReason(KillReasonCode.ClothBinds, [])]);
        var best = (Verdict: Verdict.NotAllowed, Reasons: (IReadOnlyList<KillReason>)[]);
        var none = true;
        foreach (var set in ground.Sets)
        {
            var reasons = ground.Cover.Targets.Select(target => Of(set, target)).OfType<KillReason>().Distinct(ByContent.Instance).ToArray();
            var verdict = reasons.Any(reason => SaysNo(reason.Code)) ? Verdict.NotAllowed : Verdict.NotEstablished;
            if (none || verdict > best.Verdict) best = (verdict, reasons);
            none = false;
        }

        // Each target is met somewhere, but not all of them at once.
        return best.Reasons.Count > 0 ? best : (best.Verdict, OutsideAll());
    }

    private KillReason[] OutsideAll() => ground.Cover.Targets.Select(target => new KillReason(KillReasonCode.OutsideClaims, [target.ToString()])).ToArray();

    private static bool SaysNo(KillReasonCode code) =>
        code is KillReasonCode.LabelClaimsLess or KillReasonCode.TestsShowLess or KillReasonCode.NeverAbove
            or KillReasonCode.DoesNotKill or KillReasonCode.Refuted or KillReasonCode.NotReached;

    /// <summary>Why a target is not met, of the variant of which something says no; null where it is met.</summary>
    private KillReason? Of(ClaimSet set, KillTarget target) =>
        ground.Variants.Select(variant => Of(set, target, variant)).OfType<KillReason>().OrderByDescending(reason => SaysNo(reason.Code)).FirstOrDefault();

    private KillReason? Of(ClaimSet set, KillTarget target, PartVariant variant)
    {
        var meeting = set.Claims.Where(claim => claim.SpeaksOf(Kb, variant) && ground.Cover.Meets(claim, target)).ToArray();
        var methods = MethodSet.Of(meeting.SelectMany(claim => claim.Methods.Methods).Distinct().ToArray());
        var outside = meeting.Length == 0 ? null
            : new KillReason(KillReasonCode.OutsideClaims, [target.ToString(), methods.ToString(), .. meeting.Select(claim => claim.Claim.Id)]);
        if (outside is not null)
        {
            if (!ground.Methods.Any(method => meeting.Any(claim => KillCover.ReachesInto(claim, method, variant))))
                return new KillReason(KillReasonCode.NotReached, [Words.Of(variant.Geometry)]);
            if (Covers(set, target)) return null;
        }

        if (ground.Substance.Product is { LabelClaims.Count: > 0 } product)
        {
            return outside ?? (HardWater(product) ? new KillReason(KillReasonCode.WaterTooHard, [product.Id.Value])
                : LabelTests.Short(Kb, product, set, target) ?? new KillReason(KillReasonCode.LabelClaimsLess, [product.Id.Value, target.ToString()]));
        }

        if (Against(set, target, variant) is { } against) return against;
        if (outside is not null) return outside;
        if (target.Level == Level.Sterile) return new KillReason(KillReasonCode.SterileNeedsInstructions, []);
        if (target.Level == Level.High && set.Claims.Any(claim => claim.Claim.Reaches >= Level.High)) return new KillReason(KillReasonCode.HighNeedsMore, []);
        return ground.Gathering.PublishedNotUsed ?? new KillReason(KillReasonCode.NoClaim, [target.ToString()]);
    }

    /// <summary>Whether a set of claims meets a target somewhere. Where that target is all that is needed and no cloth binds, it is known not to: nothing kills
    /// what is needed.</summary>
    private bool Covers(ClaimSet set, KillTarget target) =>
        (ground.Cover.Targets.Count > 1 || ground.ClothBinds)
        && ground.Methods.Any(method => ground.Boxes(method, ground.Cover.HolesOf(set, target, method).Select(ground.Axes.Freed)).Count > 0);

    private bool HardWater(Model.Product product) => product.LabelClaims.Any(claim => claim.IsShown)
        && ground.Sets.All(set => set.Claims.All(claim => claim.Claim.Origin != ClaimOrigin.Label));

    /// <summary>What is on record against the agent: a standing rule, a claim that says what it does not kill, a refuted claim.</summary>
    /// <remarks>Of a product that is judged by no one ingredient it must be on record against each of them: another one may kill, known or not.</remarks>
    private KillReason? Against(ClaimSet set, KillTarget target, PartVariant variant)
    {
        if (set.Component is { } one) return Against(one, target, variant);
        if (ground.Substance.Product is not { Composition: Model.Composition.Full }) return null;
        var each = ground.Substance.Components.Where(c => !c.OnlyForbids).Select(c => c.Unknown ? null : Against(c, target, variant)).ToArray();
        return each.Contains(null) ? null : each.FirstOrDefault();
    }

    private KillReason? Against(Component component, KillTarget target, PartVariant variant)
    {
        var agent = Kb.Data.Agents[component.Agent].Id.Value;
        foreach (var standing in Kb.Data.StandingRules)
        {
            if (standing.NeverAbove is { } most && (target.Level > most || (target.Level is null && most == Level.Cleaned)) && At(component, standing.Agent)
                && HoldsAtAll(standing.When, component))
                return new KillReason(KillReasonCode.NeverAbove, [agent, Words.Of(most), standing.Id.Value]);
        }

        var speaking = Kb.Data.Claims.Where(claim => At(component, claim.Agent) && Reach.IsFor(Kb, claim.For, variant.Part))
            .Select(claim => (Claim: claim, Code: SaysNo(claim, target))).Where(one => one.Code is not null).ToArray();
        return speaking.FirstOrDefault(one => ground.Methods.Any(method => WeakerThan(one.Claim, component, method).Any())) is (var first, { } code)
            && ground.Methods.All(method => Subtraction.MaximalBoxes(
                Choices with { Methods = MethodSet.Of(method) }, speaking.SelectMany(one => WeakerThan(one.Claim, component, method))).Count == 0)
            ? new KillReason(code, [agent, target.ToString(), first.Id.Value]) : null;
    }

    /// <summary>What is chosen beside the method: a dilution, and a contact time no longer than the exposure time asked.</summary>
    private Box<Stretch> Choices => Box<Stretch>.Whole with
    {
        Dilution = ground.Axes.DilutionFree ? Stretch.Of(ground.Substance.Dilution) : Stretch.Whole,
        ContactTime = ground.LongestAsked is { } longest ? Stretch.Positive.Intersect(Stretch.Of(Interval.AtMost(longest))) : Stretch.Positive,
    };

    /// <summary>Whether a claim says that a target is not killed, or was refuted of it, at some exposure.</summary>
    private KillReasonCode? SaysNo(Claim claim, KillTarget target) =>
        target.Against is { } against && (claim.DoesNotKill.Contains(against) || claim.DoesNotKill.Contains(OrganismTarget.Of(GroupOf(against))))
            ? KillReasonCode.DoesNotKill
        : claim.Refuted is not null && (target.Level is { } level ? claim.Reaches <= level : claim.Kills.Contains(target.Against!)) ? KillReasonCode.Refuted
        : null;

    /// <summary>Clause K22. The choices at which a claim binds that says no, met at some strength, temperature and pH.</summary>
    private IEnumerable<Box<Stretch>> WeakerThan(Claim claim, Component component, ApplicationMethod method)
    {
        var box = WithWeaker(_axes.Of(claim.When, claim.Agent, Stretch.Whole));
        if (!box.Methods.Contains(method) || !box.Temperature.Meets(Stretch.Of(ground.Substance.Temperature))) yield break;
        foreach (var dilution in ground.Substance.DilutionsAt(component, box.Strength, box.Ph, Stretch.Whole))
            yield return Box<Stretch>.Whole with { Dilution = ground.Axes.DilutionFree ? dilution : Stretch.Whole, ContactTime = box.ContactTime };
    }

    /// <summary>Clause K21. The box of a claim that says no, with all exposures that are weaker: less, shorter, colder, drier. pH has no weaker end.</summary>
    internal static Box<Stretch> WithWeaker(in Box<Stretch> box) => box with
    {
        Methods = WithDrier(box.Methods),
        Strength = box.Strength.FromStart(),
        ContactTime = box.ContactTime.FromStart(),
        Temperature = box.Temperature.FromStart(),
    };

    /// <summary>Methods with all that are drier than the wettest of them on the ladder.</summary>
    private static MethodSet WithDrier(MethodSet methods) => MethodSet.Of(MethodSet.All.Methods.Where(method =>
        methods.Contains(method) || (method != ApplicationMethod.Chamber && methods.Intersect(MethodSet.Ladder).Methods.Any(own => own > method))).ToArray());

    private bool At(Component component, AgentId agent) => Kb.Agents.IsAtOrBelow(component.Agent, Kb.Agents[agent.Value]);

    private OrganismGroup GroupOf(OrganismTarget target) => target.Group ?? Kb.Data.Organisms.First(o => o.Id == target.Organism).Group;

    /// <summary>Whether a standing rule holds at every exposure asked.</summary>
    private bool HoldsAtAll(ExposureBox box, Component component)
    {
        var (substance, diluted) = (ground.Substance, ground.Substance.Dilution);
        var strength = component.Strength;
        if (substance.Product is not null) strength = new Interval(strength.Lower * (diluted.Lower ?? 0m), true, strength.Upper * (diluted.Upper ?? 1m), true);
        return Holds(box.Strength, strength) && Holds(box.Temperature, substance.Temperature) && Holds(box.Ph, substance.WholePh)
            && (box.Methods.Statement != AxisStatement.Within || ground.Methods.All(box.Methods.Methods.Contains));

        static bool Holds(AxisLimit limit, Interval asked) => limit.Statement != AxisStatement.Within || (!asked.IsEmpty && asked.LiesIn(limit.Range));
    }

    private sealed class ByContent : IEqualityComparer<KillReason>
    {
        public static ByContent Instance { get; } = new();

        public bool Equals(KillReason? x, KillReason? y) => x!.Code == y!.Code && x.Arguments.SequenceEqual(y.Arguments);

        public int GetHashCode(KillReason reason) => (int)reason.Code;
    }
}
