namespace Compat.Deciding;

/// <summary>One component of a question with all rules that can speak of it.</summary>
/// <param name="Component">The component.</param>
/// <param name="Scene">The rules, in full.</param>
/// <param name="StrengthLow">The first cell of its strength.</param>
/// <param name="StrengthHigh">The last cell of its strength.</param>
internal sealed record PointComponent(Component Component, VerdictScene Scene, int StrengthLow, int StrengthHigh)
{
    private readonly Reason?[] _ofRows = new Reason?[Scene.Rows.Length];
    private readonly Reason?[] _ofMaterials = new Reason?[Scene.Variant.Materials.Length];

    /// <summary>What a row says where it decides.</summary>
    /// <remarks>Made when first asked for; whichever thread makes it makes the same. So with the other reasons.</remarks>
    public Reason OfRow(int row)
    {
        if (_ofRows[row] is { } known) return known;
        var rule = Scene.Rows[row].Rule;
        return _ofRows[row] = rule.Allows ? Because(ReasonCode.PartAllows, rule.Rule.Id.Value) : Because(ReasonCode.RuleForbids, rule.Rule.Id.Value, Decider.Name(rule), rule.Rule.Target.ToString());
    }

    /// <summary>What is said where no rule speaks for a material.</summary>
    public Reason NoEvidenceOn(CompiledBase kb, int material) =>
        _ofMaterials[material] ??= Because(ReasonCode.NoEvidenceOnMaterial, kb.Data.Materials[Scene.Variant.Materials[material]].Id.Value);

    public Reason Because(ReasonCode code, params string[] arguments) => new(code, arguments, Component.Name, Scene.Variant.Member);
}

/// <summary>Works out what the answer to a prepared question holds beside its verdict, where every rule applies in all of what is asked or nowhere in it: the steps of a point question with all their reasons.</summary>
internal sealed class PointGround
{
    private readonly VerdictIndex _index;
    private readonly Substance _substance;
    private readonly PartVariant _variant;
    private readonly PointComponent[] _components;
    private readonly ApplicationMethod _method;
    private readonly CellRange _exposure;
    private readonly IReadOnlyList<Assumption> _assumptions;
    private readonly AllowedBox _box;
    private readonly Limits _limits;
    private readonly IReadOnlyList<Duty> _boxDuties;
    private readonly IReadOnlyList<Duty> _duties;

    private PointGround(VerdictIndex index, PreparedQuestion prepared, Substance substance, PartVariant variant, PointComponent[] components)
    {
        (_index, _substance, _variant, _components) = (index, substance, variant, components);
        (_method, _exposure) = (prepared.Method, prepared.Exposure);
        var region = new RegionAnswer(index.Base, prepared.Question, []);
        _assumptions = region.Assumptions();
        _box = region.WholeBox(prepared.Method);
        _limits = new Limits(prepared.Question, substance, [variant]);
        _boxDuties = BoxDuties.Of(substance, variant, _box.ExposureTime, OwnDuties(components.Length));
        _duties = DutyJoin.Join(_boxDuties, variant);
    }

    private CompiledBase Base => _index.Base;

    /// <summary>The ground of a prepared question; null where its answer is made the long way: it is not looked up, its part has several variants, editions or a product that is not fully declared speak, or a rule crosses what is asked.</summary>
    public static PointGround? Of(VerdictIndex index, PreparedQuestion prepared)
    {
        if (!prepared.IsLookedUp || prepared.Barred) return null;
        var subject = index.SubjectOf(prepared.Question);
        var substance = SubstanceResolver.Resolve(index.Base, prepared.Question);
        if (subject.Variants.Count != 1 || subject.Variants[0].Editions.Count > 0 || substance.Product is { Composition: not Composition.Full }) return null;
        if (substance.Components.Select(component => component.Name).Distinct().Count() != substance.Components.Count) return null;
        var components = QuestionPreparer.PointsOf(index, subject, substance, prepared.Question.ExposureTime!.Value).ToArray();
        return Array.Exists(components, component => IsCrossed(component, prepared)) ? null : new PointGround(index, prepared, substance, subject.Variants[0], components);
    }

    /// <summary>What the answer holds beside its verdict, which was looked up.</summary>
    public AnswerDetail Detail(Verdict verdict)
    {
        var deciding = new RuleNumbers(_index.TakeRoom());
        var detail = verdict switch
        {
            Verdict.NotAllowed => Forbidden(ref deciding),
            Verdict.NotEstablished => Unestablished(ref deciding),
            _ => Allowed(verdict, ref deciding),
        };
        _index.GiveRoom(deciding.Room!);
        return detail;
    }

    private static bool IsCrossed(PointComponent component, PreparedQuestion prepared)
    {
        var box = BoxOf(component, prepared.Exposure);
        return Array.Exists(component.Scene.Rows, row => row.Methods.Contains(prepared.Method) && row.In(box) == Fit.InPart);
    }

    private static CellRange BoxOf(PointComponent component, CellRange exposure)
    {
        (exposure.StrengthLow, exposure.StrengthHigh) = (component.StrengthLow, component.StrengthHigh);
        return exposure;
    }

    /// <summary>Every component that is forbidden: by rules first, then those of which a residue stays.</summary>
    private AnswerDetail Forbidden(ref RuleNumbers deciding)
    {
        var reasons = new List<Reason>();
        List<Reason>? residue = null;
        RuleNumbers setAside = default;
        foreach (var component in _components)
        {
            var box = BoxOf(component, _exposure);
            var from = deciding.Count;
            Forbidding(component, box, ref deciding, reasons);
            if (deciding.Count == from)
            {
                if (component.Component.OnlyForbids || !component.Scene.ResidueStays) continue;
                var unmet = component.Component.Duties.Concat(_variant.Duties).First(duty => !_variant.CanMeet(duty));
                (residue ??= []).Add(component.Because(ReasonCode.ResidueStays, Words.Of(unmet.Kind)));
            }

            SetAside(component, box, withDutiesOnly: false, ref setAside);
        }

        if (residue is not null) reasons.AddRange(residue);
        return Made(reasons, deciding.Sorted(), setAside);
    }

    private void Forbidding(PointComponent component, in CellRange box, ref RuleNumbers deciding, List<Reason> reasons)
    {
        var scene = component.Scene;
        var from = deciding.Count;
        for (var i = 0; i < scene.Forbidding; i++)
        {
            if (!IsLive(scene, i, box)) continue;
            var number = scene.Rows[i].Rule.Index;
            if (deciding.Holds(number, from)) continue;
            deciding.Add(number);
            reasons.Add(component.OfRow(i));
        }
    }

    private AnswerDetail Unestablished(ref RuleNumbers deciding)
    {
        var reasons = new List<Reason>();
        RuleNumbers setAside = default;
        List<Duty>? duties = null;
        for (var c = 0; c < _components.Length; c++)
        {
            if (_components[c].Component.OnlyForbids) continue;
            var box = BoxOf(_components[c], _exposure);
            int reasonsFrom = reasons.Count, decidingFrom = deciding.Count;
            var said = Permission(c, box, ref deciding, reasons, ref duties);
            if (said.Allows)
            {
                reasons.RemoveRange(reasonsFrom, reasons.Count - reasonsFrom);
                deciding.BackTo(decidingFrom);
            }
            else
            {
                SetAside(_components[c], box, said.Reached, ref setAside);
            }
        }

        return Made(reasons, deciding.Sorted(), setAside);
    }

    private AnswerDetail Allowed(Verdict verdict, ref RuleNumbers deciding)
    {
        var reasons = new List<Reason>();
        RuleNumbers setAside = default;
        List<Duty>? duties = null;
        bool byPart = true, wellFounded = true;
        for (var c = 0; c < _components.Length; c++)
        {
            if (_components[c].Component.OnlyForbids) continue;
            var box = BoxOf(_components[c], _exposure);
            var said = Permission(c, box, ref deciding, reasons, ref duties);
            byPart &= said.ByPart;
            wellFounded &= said.WellFounded;
            SetAside(_components[c], box, withDutiesOnly: true, ref setAside);
        }

        var numbers = deciding.Sorted();
        var boxDuties = duties is null ? _boxDuties : BoxDuties.Of(_substance, _variant, _box.ExposureTime, duties);
        return Made(reasons, numbers, setAside, new Grant(
            boxDuties,
            verdict == Verdict.Allowed ? [] : _limits.Of(Array.ConvertAll(numbers, number => Base.Rules[number]), wellFounded, []),
            duties is null ? _duties : DutyJoin.Join(boxDuties, _variant),
            byPart,
            wellFounded));
    }

    /// <summary>Whether the live 'allowed' rules of a component permit it; they and the reasons are added.</summary>
    private Permit Permission(int at, in CellRange box, ref RuleNumbers deciding, List<Reason> reasons, ref List<Duty>? duties)
    {
        var component = _components[at];
        var scene = component.Scene;
        int from = deciding.Count, reasonsFrom = reasons.Count, voices = scene.Suffices.Length + 1;
        bool withDuties = false, wellFounded = false;
        var first = Voice(scene, 0, box, from, ref deciding, ref wellFounded, ref withDuties);
        if (first >= 0)
        {
            reasons.Add(component.OfRow(first));
        }
        else
        {
            wellFounded = true;
            if (!_variant.MaterialsKnown || voices == 1) reasons.Add(component.Because(ReasonCode.MaterialsNotKnown));
            for (var voice = 1; voice < voices; voice++)
            {
                var founded = false;
                if (Voice(scene, voice, box, from, ref deciding, ref founded, ref withDuties) < 0) reasons.Add(component.NoEvidenceOn(Base, voice - 1));
                wellFounded &= founded;
            }

            if (reasons.Count > reasonsFrom)
            {
                if (component.Component.Unknown) reasons.Insert(reasonsFrom, component.Because(ReasonCode.UnknownIngredient, component.Component.Name ?? ""));
                if (!_substance.LeavesNothing && _variant.EndingWays(leavesNothing: false).Count == 0) reasons.Insert(reasonsFrom, component.Because(ReasonCode.ExposureTimeWithoutEnd));
                deciding.BackTo(from);
                return default;
            }

            reasons.Add(component.Because(ReasonCode.MaterialsAllow));
        }

        var unmet = withDuties || scene.DutiesOnly >= 0 ? Duties(at, first >= 0, box, ref duties) : null;
        if (unmet is null)
        {
            if (duties is not null && !(withDuties || scene.DutiesOnly >= 0)) AddOwn(at, duties);
            return new Permit(true, true, first >= 0, wellFounded);
        }

        reasons.RemoveRange(reasonsFrom, reasons.Count - reasonsFrom);
        reasons.Add(component.Because(ReasonCode.DutyCannotBeMet, Words.Of(unmet.Kind)));
        if (scene.DutiesOnly >= 0)
        {
            for (var i = scene.AllowFrom(scene.DutiesOnly); i < scene.AllowFrom(scene.DutiesOnly + 1); i++)
                if (scene.Rows[i].Is(RowTraits.HasDuties) && IsLive(scene, i, box)) deciding.Add(scene.Rows[i].Rule.Index);
        }

        return new Permit(false, true, first >= 0, wellFounded);
    }

    /// <summary>Adds the live 'allowed' rules of a voice; gives the row of the first, or -1.</summary>
    private int Voice(VerdictScene scene, int voice, in CellRange box, int from, ref RuleNumbers deciding, ref bool wellFounded, ref bool withDuties)
    {
        var first = -1;
        var end = scene.AllowFrom(voice + 1);
        for (var i = scene.AllowFrom(voice); i < end; i++)
        {
            if (!IsLive(scene, i, box)) continue;
            if (first < 0) first = i;
            ref readonly var row = ref scene.Rows[i];
            wellFounded |= row.Is(RowTraits.WellFounded);
            withDuties |= row.Is(RowTraits.HasDuties);
            deciding.Add(row.Rule.Index);
        }

        return first;
    }

    /// <summary>Adds the duties of a component, the part and the rules that permit or accompany; gives the first that the part can meet in no way.</summary>
    private Duty? Duties(int at, bool byPart, in CellRange box, ref List<Duty>? duties)
    {
        var scene = _components[at].Scene;
        duties ??= OwnDuties(at);
        AddOwn(at, duties);
        var ofRules = duties.Count;
        var read = new RuleNumbers();
        var end = byPart ? scene.AllowFrom(1) : scene.AllowFrom(scene.Suffices.Length + 1);
        for (var i = scene.AllowFrom(0); i < end; i++) Read(i, box, duties);
        if (scene.DutiesOnly >= 0)
            for (var i = scene.AllowFrom(scene.DutiesOnly); i < scene.AllowFrom(scene.DutiesOnly + 1); i++) Read(i, box, duties);
        for (var i = ofRules; i < duties.Count; i++)
            if (!_variant.CanMeet(duties[i])) return duties[i];
        return null;

        void Read(int row, in CellRange at, List<Duty> into)
        {
            if (!scene.Rows[row].Is(RowTraits.HasDuties) || !IsLive(scene, row, at) || read.Holds(scene.Rows[row].Rule.Index, 0)) return;
            read.Add(scene.Rows[row].Rule.Index);
            into.AddRange(scene.Rows[row].Rule.Rule.Duties);
        }
    }

    /// <summary>The duties of the first components and of the part.</summary>
    private List<Duty> OwnDuties(int count)
    {
        var own = new List<Duty>();
        for (var c = 0; c < count; c++)
            if (!_components[c].Component.OnlyForbids) AddOwn(c, own);
        return own;
    }

    private void AddOwn(int component, List<Duty> duties)
    {
        duties.AddRange(_components[component].Component.Duties);
        duties.AddRange(_variant.Duties);
    }

    private void SetAside(PointComponent component, in CellRange box, bool withDutiesOnly, ref RuleNumbers setAside)
    {
        var scene = component.Scene;
        if (!scene.HasOverrides) return;
        var end = withDutiesOnly ? scene.Rows.Length : scene.AllowFrom(scene.Suffices.Length + 1);
        for (var i = 0; i < end; i++)
            if (scene.Applies(i, _method, box) && scene.IsSetAside(i, _method, box)) setAside.Add(scene.Rows[i].Rule.Index);
    }

    private bool IsLive(VerdictScene scene, int row, in CellRange box) => scene.Applies(row, _method, box) && !scene.IsSetAside(row, _method, box);

    private AnswerDetail Made(List<Reason> reasons, int[] deciding, RuleNumbers setAside, Grant? granted = null)
    {
        if (reasons.Count > RegionAnswer.MostListed) reasons.RemoveRange(RegionAnswer.MostListed, reasons.Count - RegionAnswer.MostListed);
        var rules = new NumberedRules(Base, deciding);
        return new AnswerDetail
        {
            Decisive = reasons.Count > 0 ? reasons[0] : new Reason(ReasonCode.MaterialsAllow, []),
            Reasons = reasons,
            Assumptions = _assumptions,
            DecidedBy = rules,
            SetAside = setAside.Count == 0 ? [] : new NumberedRules(Base, setAside.Sorted()),
            Sources = _index.SourcesOf(deciding),
            Boxes = granted is { } box ? [_box with { Duties = box.BoxDuties, DecidedBy = rules }] : [],
            BoxCount = granted is null ? 0 : 1,
            Limits = granted?.Limits ?? [],
            Duties = granted?.Duties ?? [],
            JudgedByPart = granted?.ByPart ?? false,
            WellFounded = granted?.WellFounded ?? false,
        };
    }

    /// <summary>What an answer that permits holds beside its reasons and rules.</summary>
    private readonly record struct Grant(IReadOnlyList<Duty> BoxDuties, IReadOnlyList<Limit> Limits, IReadOnlyList<Duty> Duties, bool ByPart, bool WellFounded);

    /// <summary>What the rules of a component come to.</summary>
    /// <param name="Allows">Whether it is allowed.</param>
    /// <param name="Reached">Whether some voice allows, so that duties were looked at.</param>
    /// <param name="ByPart">Whether the voice of the part decides.</param>
    /// <param name="WellFounded">Whether every deciding voice is well founded.</param>
    private readonly record struct Permit(bool Allows, bool Reached, bool ByPart, bool WellFounded);
}
