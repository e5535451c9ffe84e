namespace Compat.Tests.Reference;

/// <summary>A claim that speaks of what is asked, with what its source leaves open filled in. Of an ingredient, or of the product itself.</summary>
internal sealed record Told(Component? Of, ClaimBox When, Interval Strength, Interval Dilution, Interval Temperature, Interval Ph, MethodSet Methods,
    Level? Reaches, IReadOnlyList<OrganismTarget> Kills, IReadOnlyList<OrganismTarget> DoesNotKill, bool Instructed, bool MayBeHigh, bool NamesPart)
{
    public IReadOnlyList<ClaimPartner> With { get; init; } = [];
    public TestStandard[]? Tests { get; init; }
}
internal sealed partial class ReferenceWhole
{
    private static bool IsWiping(ApplicationMethod method) => method is ApplicationMethod.DampWipe or ApplicationMethod.WetWipe;
    /// <summary>All contact times at which something can change, and those between and beyond.</summary>
    public decimal[] ContactTimes()
    {
        var ends = _variants.SelectMany(v => Sources(v).SelectMany(s => s))
            .SelectMany(c => new[] { c.When.ContactTime.Range.Lower, c.When.ContactTime.Range.Upper })
            .Append(_question.ExposureTime?.Lower).OfType<decimal>().Where(w => w != Interval.WithoutEnd).Append(1).Distinct().Order().ToArray();
        return [.. ends.Concat(ends.Zip(ends.Skip(1), (a, b) => (a + b) / 2)).Append(ends[^1] + 1).Where(w => w > 0).Order()];
    }
    /// <summary>Clauses K1, K2 and K16. Every target is met by claims on one ingredient, beside those of the instructions, whatever is
    /// uncertain.</summary>
    private bool Kills(WholePoint at) => Need.Targets.Length == 0
        || Enumerable.Range(0, _ingredients.Length).Any(i => _variants.All(v => Need.Targets.All(t => IsMet(v, Sources(v)[i], t, at))));
    private Verdict KillVerdict(WholePoint at, WholePoint[] contactTimes)
    {
        if (Need.Prions || Need.Soiled) return Verdict.NotAllowed;
        if (!Need.Known) return Verdict.NotEstablished;
        var shown = contactTimes.Where(Kills).ToArray();
        if (shown.Length > 0) return _question.ExposureTime is { } asked
            && !shown.Any(w => asked.LiesIn(Interval.AtLeast(w.ContactTime))) ? Verdict.NotAllowed : Verdict.Allowed;
        if (!MayBeUsed(at.Method)) return Verdict.NotEstablished;
        var heard = Enumerable.Range(0, _ingredients.Length).Where(i => _variants.Any(v => Sources(v)[i].Length > 0)).ToArray();
        bool Refuses(int i, Variant v, KillTarget t) => !contactTimes.Any(w => IsMet(v, Sources(v)[i], t, w)) && SaysNo(v, i, t, at);
        bool Refused(Func<Variant, KillTarget, bool> refuses) => _variants.Any(v => Need.Targets.Any(t => refuses(v, t)));
        return (heard.Length > 0 ? heard.All(i => Refused((v, t) => Refuses(i, v, t)))
            : Refused((v, t) => Enumerable.Range(0, _ingredients.Length).All(i => Refuses(i, v, t)))) ? Verdict.NotAllowed : Verdict.NotEstablished;
    }
    /// <summary>What claims and person rules say of an axis: where kill and people can change.</summary>
    private IEnumerable<Interval> BoxesOf(Axis axis)
    {
        var standing = _data.StandingRules.Select(s => s.When.On(axis).Range);
        var claims = _variants.SelectMany(v => Sources(v).SelectMany(s => s)).Select(c => axis switch
        {
            Axis.Strength => c.Strength,
            Axis.Dilution => c.Dilution,
            Axis.Temperature => c.Temperature,
            Axis.Ph => c.Ph,
            _ => Interval.Whole,
        });
        var partners = axis != Axis.Strength ? [] : _data.Claims.SelectMany(c => c.With).Select(w => w.Strength.Range);
        return [.. claims, .. partners, .. standing, .. _data.PersonRules.Select(r => r.When.On(axis).Range)];
    }
    private Told[][] Sources(Variant v)
    {
        var instructed = v.Speaking.SelectMany(e => e.Reaches).Where(r => r.Parts.Count == 0
            || r.Parts.Contains(_question.DevicePart!)).SelectMany(r =>
            r.Product is not null ? _product is not null
                && r.Product == _product.Id ? [Said(null, r)] : [] : _ingredients.Where(i => Is(i, r.Agent!)).Select(i => Said(i, r)));
        var own = _product?.LabelClaims.Count > 0 ? Label(v) : [];
        return [.. _ingredients.Select(i => (Told[])[.. own, .. instructed.Where(c => c.Of is null || c.Of == i),
            .. _product?.LabelClaims.Count > 0 || !MayBePublished(i) ? [] : Published(v, i).Where(h =>
                h.With.All(partner => _ingredients.Any(x => x != i && Is(x, partner.Agent)))
                && !_ingredients.Any(x => Destroys(x, i) && !h.With.Any(partner => Is(x, partner.Agent))))])];
        Told Said(Component? of, InstructedLevel r) => Fill(of, r.When, r.Agent, r.Reaches, r.Kills, [], true, true, true);
    }
    private bool MayBeUsed(ApplicationMethod method) => _product is null || _product.Methods.IsEmpty || _product.Methods.Contains(method);
    private bool Is(Component ingredient, AgentId agent) => !ingredient.Unknown && _trees.Below(ingredient.Agent, agent);
    private bool MayBePublished(Component c) => !c.Unknown && (_product is null || (_product.Composition == Composition.Full
        && !_ingredients.Any(i => i.Unknown)));
    private bool Destroys(Component i, Component c) => i != c && (_trees.Line(c.Agent).SelectMany(a => a.InactivatedBy).Any(binds => Is(i, binds))
        || _data.MixingHazards.Any(h => h.Effects.Contains(MixingEffect.Inactivation) && h.WithAgent is { } with
            && ((Is(c, h.Agent) && Is(i, with)) || (Is(i, h.Agent) && Is(c, with)))));
    private IEnumerable<Told> Published(Variant v, Component c) =>
        from claim in _data.Claims
        where claim.Refuted is null && claim.Where is null && Is(c, claim.Agent) && Names(claim.For, v)
        let named = claim.For.Count > 0
        select Fill(c, claim.When, claim.Agent, claim.Reaches, claim.Kills, claim.DoesNotKill, false,
            named && claim.Kind is ClaimKind.Guideline or ClaimKind.Standard, named) with
        { With = claim.With };
    private bool Names(IReadOnlyList<PartId> parts, Variant v) => parts.Count == 0 || (v.Type is not null && parts.Any(p => _trees.Below(v.Type, p)));
    private Told Fill(Component? of, ClaimBox when, AgentId? agent, Level? reaches, IReadOnlyList<OrganismTarget> kills,
        IReadOnlyList<OrganismTarget> not, bool instructed, bool mayBeHigh, bool namesPart)
    {
        Interval Or(AxisLimit limit, Interval named, Interval silent) =>
            limit.Statement == AxisStatement.Within ? limit.Range : limit.Statement == AxisStatement.Any ? Interval.Whole
            : limit.Statement == AxisStatement.NotNamed ? named : silent;
        var temperature = _trees.Convention(ConventionKey.ClaimTemperature).Range;
        var line = agent is null ? [] : _trees.Line(agent);
        var ph = ReferenceTrees.Nearest(line, a => a.Usual.Ph) ?? _trees.Convention(ConventionKey.UnstatedPh).Range;
        var strength = ReferenceTrees.Nearest(line, a => a.Usual.Strength) ?? Interval.Whole;
        var methods = _trees.Convention(ConventionKey.ClaimMethods).Methods;
        var named = _product is null || _product.Methods.IsEmpty ? methods : _product.Methods;
        return new(of, when, agent is null ? Interval.Whole : Or(when.Strength, Interval.Whole, strength),
            agent is not null ? Interval.Whole : Or(when.Dilution, _product!.Dilution ?? Interval.Exactly(1),
                _product.Dilution ?? Interval.Exactly(1)),
            Or(when.Temperature, agent is null ? _product!.Temperature ?? temperature : temperature, temperature),
            Or(when.Ph, agent is null ? Interval.Whole : ph, ph),
            when.Methods.Statement == AxisStatement.Within ? when.Methods.Methods : when.Methods.Statement == AxisStatement.Any ? MethodSet.All
            : when.Methods.Statement == AxisStatement.NotNamed && agent is null ? named : methods,
            reaches, kills, not, instructed, mayBeHigh, namesPart);
    }
    private bool IsMet(Variant v, Told[] claims, KillTarget target, WholePoint at)
    {
        var able = claims.Where(c => Meets(c, target, at.Method) && IsReached(c, v, at.Method) && c.Methods.Contains(at.Method)
            && c.Dilution.Contains(at.Dilution) && c.When.ContactTime.Range.Contains(at.ContactTime) && HasPartners(c, at.Dilution)).ToArray();
        if (able.Length == 0 || !MayBeUsed(at.Method) || (IsWiping(at.Method) && ClothBinds())) return false;
        var spoken = able.Select(c => c.Of).OfType<Component>().Distinct().ToArray();
        return ReferenceEvaluator.Cross<decimal>([Phs(at), Temperatures(at), .. spoken.Select(c => Strengths(c, at))]).All(x => able.Any(c =>
            c.Ph.Contains(x[0]) && c.Temperature.Contains(x[1]) && (c.Of is null || c.Strength.Contains(x[2 + Array.IndexOf(spoken, c.Of)]))));
    }
    private List<decimal> Phs(WholePoint at) => Samples.On(Axis.Ph, at.Ph ?? _question.Ph ?? _part.PhAt(_product!, at.Dilution));
    private List<decimal> Temperatures(WholePoint at) => Samples.On(Axis.Temperature, at.Temperature);
    private List<decimal> Strengths(Component c, WholePoint at) => Samples.On(Axis.Strength, c.Strength.Scale(at.Dilution));
    private bool HasPartners(Told claim, decimal dilution) => claim.With.All(partner => _ingredients.Any(i => i != claim.Of && Is(i, partner.Agent)
        && (partner.Strength.Statement != AxisStatement.Within || i.Strength.Scale(dilution).LiesIn(partner.Strength.Range))));
    private bool Meets(Told claim, KillTarget target) => claim.Methods.Methods.Any(method => Meets(claim, target, method));
    private bool Meets(Told claim, KillTarget target, ApplicationMethod method)
    {
        if (!IsTested(claim, target, method)) return false;
        bool Includes(OrganismGroup group) => claim.Kills.Contains(OrganismTarget.Of(group))
            || (claim.Reaches is { } reached && _data.Levels.Any(l => l.Level == reached && l.Includes.Contains(group)));
        if (target.Level is { } level)
            return claim.Reaches >= level && (level < Level.Sterile || claim.Instructed) && (level < Level.High || claim.MayBeHigh);
        var against = target.Against!;
        if (against.Group is { } group) return Includes(group) && !claim.DoesNotKill.Contains(against);
        return !claim.DoesNotKill.Contains(against) && (claim.Kills.Contains(against) || (!Record(against).OwnClaim
            && Includes(GroupOf(against)) && !claim.DoesNotKill.Contains(OrganismTarget.Of(GroupOf(against)))));
    }
    private static bool IsReached(Told c, Variant v, ApplicationMethod method) => c.Instructed || c.NamesPart
        || v.Geometry is not (Geometry.Lumen or Geometry.Porous) || !(IsWiping(method) || method == ApplicationMethod.Spray);
    private bool ClothBinds() => _question.Cloth is { } cloth && (_product?.BoundByCloths ?? []).Concat(_part.Components.Where(i => !i.Unknown)
        .SelectMany(i => _trees.Line(i.Agent)).SelectMany(a => a.BoundBy)).Any(bound => bound.Contains(cloth, StringComparison.OrdinalIgnoreCase));
    /// <summary>Clause K19. Whether something on record says that a target is not killed, so that it is more than silence.</summary>
    private bool SaysNo(Variant v, int source, KillTarget target, WholePoint at)
    {
        var claims = Sources(v)[source];
        var meeting = claims.Where(c => Meets(c, target)).ToArray();
        if (IsWiping(at.Method) && ClothBinds()) return true;
        if (meeting.Length > 0 && !meeting.Any(c => IsReached(c, v, at.Method))) return true;
        if (_product?.LabelClaims.Count > 0) return meeting.Length == 0 && !(WaterTooHard && _product.LabelClaims.Any(RestsOnSomething));
        if (_ingredients[source] is not { Unknown: false } c) return false;
        if (claims.Length == 0 && _product is { Composition: not Composition.Full }) return false;
        var keptBelow = _data.StandingRules.Any(s => s.NeverAbove is { } most && Is(c, s.Agent) && s.When.Strength.Range is var range
            && (target.Level > most || (most == Level.Cleaned && target.Level is null)) && Strengths(c, at).All(range.Contains));
        return keptBelow || _data.Claims.Any(claim => Is(c, claim.Agent) && Names(claim.For, v) && Denies(claim, target) && BindsAt(claim, c, at));
    }
    /// <summary>Clause K21. Whether a claim says that a target is not killed, or was refuted of it.</summary>
    private bool Denies(Claim claim, KillTarget target) => target.Against is { } t
        ? claim.DoesNotKill.Contains(t) || claim.DoesNotKill.Contains(OrganismTarget.Of(GroupOf(t)))
            || (claim.Refuted is not null && claim.Kills.Contains(t))
        : claim.Refuted is not null && claim.Reaches <= target.Level;
    /// <summary>Clauses K21 and K22. Whether an exposure lies in the box of a claim or is weaker, at some strength, temperature and pH of those
    /// asked.</summary>
    /// <remarks>Every shorter contact time is weaker, so the longest that may be chosen stands for all.</remarks>
    private bool BindsAt(Claim claim, Component c, WholePoint at)
    {
        var box = Fill(c, claim.When, claim.Agent, null, [], [], false, false, false);
        Interval AtMost(Interval range) => new(null, false, range.Upper, range.UpperIncluded);
        bool Meet(Interval one, Interval other) => !one.Intersect(other).IsEmpty;
        bool Drier(ApplicationMethod own) => own != ApplicationMethod.Chamber && at.Method < own;
        return (box.Methods.Contains(at.Method) || box.Methods.Methods.Any(Drier))
            && AtMost(box.When.ContactTime.Range).Contains(at.ExposureTime.Upper!.Value)
            && Meet(AtMost(box.Strength), c.Strength.Scale(at.Dilution)) && Meet(AtMost(box.Temperature), at.Temperature)
            && Meet(box.Ph, at.Ph ?? _question.Ph ?? _part.PhAt(_product!, at.Dilution));
    }
    /// <summary>Clauses H1 to H3. Whether a person rule forbids, whatever is uncertain and for each type the part may be.</summary>
    private bool Harms(WholePoint at) => _variants.Any(v => _data.PersonRules.Any(rule => Names(rule.For, v) && (!rule.Occupied || _question.Occupied)
        && (rule.Patients.Any(Need.Patients.Contains) || (rule.Occupied && rule.Patients.Count == 0))
        && (rule.Verdict == PersonVerdict.NotAllowed || !rule.Duties.All(d => _part.CanBeMet(d, v)))
        && (rule.When.Methods.Statement != AxisStatement.Within || rule.When.Methods.Methods.Contains(at.Method))
            && Temperatures(at).Any(rule.When.Temperature.Range.Contains)
        && Samples.On(Axis.Uses, Interval.Closed(1, at.Uses)).Any(rule.When.Uses.Range.Contains) && Phs(at).Any(rule.When.Ph.Range.Contains)
        && Samples.On(Axis.ExposureTime, at.ExposureTime).Any(r => rule.When.ExposureTime.Range.Contains(_part.EffectiveExposureTime(v, r)))
        && _part.Components.Any(c => (c.Unknown ? rule.Agent == c.Agent : _trees.Below(c.Agent, rule.Agent))
            && Strengths(c, at).Any(rule.When.Strength.Range.Contains))));
}
