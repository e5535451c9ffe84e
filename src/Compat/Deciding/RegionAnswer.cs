namespace Compat.Deciding;

/// <summary>Reads the answer to a question off its pieces: what can be chosen freely, the worst of what nobody controls.</summary>
internal sealed class RegionAnswer(CompiledBase kb, Question question, IReadOnlyList<DataIdentity> identity, Asked asked)
{
    /// <summary>So many boxes or reasons of an answer are listed.</summary>
    public const int MostListed = 32;

    private readonly Substance _substance = asked.Substance;
    private readonly IReadOnlyList<PartVariant> _variants = asked.Variants;
    private IReadOnlyList<Piece>? _pieces;

    private static Stretch FirstUse { get; } = Stretch.Of(new Interval(0m, false, 1m, true));

    private PartVariant Driest => BoxDuties.Driest(_variants);

    private bool ExposureTimeFree => question.ExposureTime is null;

    private bool DilutionFree => _substance.DilutionTreatment == AxisTreatment.Free;

    private bool UsesFree => question.Uses is null;

    public RegionAnswer(CompiledBase kb, Question question, IReadOnlyList<DataIdentity> identity)
        : this(kb, question, identity, Deciding.Asked.Of(kb, question))
    {
    }

    /// <summary>What was asked, with its pieces once the answer is made.</summary>
    public Asked Asked => asked with { Pieces = _pieces };

    public Answer Make()
    {
        var all = new Pieces(kb, question, _substance, _variants, asked.Scenes);
        var pieces = all.All();
        _pieces = pieces;
        if (all.IsNothing) return Base(Verdict.NotEstablished, [Pieces.NoValue], pieces, []);
        var boxes = new List<Box<Stretch>>();
        foreach (var method in _substance.Methods.ToArray())
        {
            var holes = pieces.Where(p => p.Method == method && p.Verdict != Verdict.Allowed).Select(Freed);
            boxes.AddRange(Subtraction.MaximalBoxes(Domain(method), holes, Axis.Uses));
        }

        return boxes.Count > 0 ? Allowed(pieces, boxes) : Refused(pieces);
    }

    private Answer Allowed(IReadOnlyList<Piece> pieces, List<Box<Stretch>> boxes)
    {
        var sorted = boxes.OrderBy(box => box, ChoiceOrder.Instance).ToArray();
        var meeting = sorted.Select(box => pieces.Where(p => !p.OnlyForbids && Freed(p).Meets(box)).ToArray()).ToArray();
        var used = meeting.SelectMany(p => p).Distinct().ToArray();
        var deciding = used.SelectMany(p => p.Decision.Deciding).Distinct().OrderBy(r => r.Rule.Id).ToArray();
        var wellFounded = used.All(p => p.Decision.WellFounded);
        var limits = new Limits(question, _substance, _variants).Of(deciding, wellFounded, Restricted(sorted));
        var listed = sorted.Take(MostListed).Select((box, i) => ToBox(box, meeting[i])).ToArray();
        var reasons = Once(used, mostTellingFirst: false);
        if (_substance.Product is { Composition: not Model.Composition.Full } product)
            reasons.Add(new Reason(ReasonCode.CompositionNotKnown, [Words.Of(product.Composition)]));
        return Base(limits.Count == 0 ? Verdict.Allowed : Verdict.AllowedWithinLimits, reasons, used, deciding) with
        {
            Boxes = listed,
            BoxCount = sorted.Length,
            Limits = limits,
            Duties = DutyJoin.Join(listed.SelectMany(box => box.Duties), Driest),
            JudgedByPart = used.All(p => p.Decision.ByPart),
            WellFounded = wellFounded,
        };
    }

    /// <summary>The free axes on which some choice is not a good one.</summary>
    private HashSet<string> Restricted(Box<Stretch>[] boxes)
    {
        var restricted = new HashSet<string>();
        foreach (var method in _substance.Methods.ToArray())
            if (boxes.All(box => !box.Methods.Contains(method))) restricted.Add("method");
        foreach (var box in boxes)
        {
            var domain = Domain(box.Methods.Driest);
            if (!domain.ExposureTime.LiesIn(box.ExposureTime)) restricted.Add("exposure-time");
            if (!domain.Dilution.LiesIn(box.Dilution)) restricted.Add("dilution");
            if (!domain.Uses.LiesIn(box.Uses)) restricted.Add("uses");
        }

        return restricted;
    }

    private Answer Refused(IReadOnlyList<Piece> pieces)
    {
        var escapes = new List<Box<Stretch>>();
        var forbidden = new List<AllowedBox>();
        foreach (var method in _substance.Methods.ToArray())
        {
            var forbidding = pieces.Where(p => p.Method == method && p.Verdict == Verdict.NotAllowed).ToArray();
            var left = Subtraction.MaximalBoxes(AtFirstUse(method), forbidding.Select(Freed), Axis.Uses);
            escapes.AddRange(left);
            forbidden.AddRange(Subtraction.MaximalBoxes(AtFirstUse(method), left).Select(box => ToBox(box, [])));
        }

        var notAllowed = escapes.Count == 0;
        var deciders = notAllowed
            ? pieces.Where(p => p.Verdict == Verdict.NotAllowed && AtFirstUse(p)).ToArray()
            : pieces.Where(p => p.Verdict == Verdict.NotEstablished && AtFirstUse(p) && escapes.Any(e => Freed(p).Meets(e))).ToArray();
        var ordered = notAllowed ? deciders.OrderBy(p => p, PieceOrder.Instance).ToArray() : deciders;
        var reasons = Once(ordered, mostTellingFirst: notAllowed);
        var rules = ordered.SelectMany(p => p.Decision.Deciding).Distinct().OrderBy(r => r.Rule.Id).ToArray();
        return Base(notAllowed ? Verdict.NotAllowed : Verdict.NotEstablished, reasons, ordered, rules) with
        {
            ForbiddenBoxes = notAllowed ? [] : forbidden.Take(MostListed).ToArray(),
            WouldBeAllowed = WouldBeAllowed(pieces),
        };
    }

    /// <summary>Each reason once. Of a 'not allowed' first the reason that forbids every choice by itself, then the one that holds in most pieces.</summary>
    private List<Reason> Once(IReadOnlyList<Piece> pieces, bool mostTellingFirst)
    {
        var groups = ReasonGroup.Of(pieces);
        if (mostTellingFirst)
        {
            foreach (var group in groups) group.ForbidsAll = ForbidsEveryChoice(pieces, group.Pieces);
            groups = groups.OrderBy(group => group, ReasonGroup.MostTellingFirst).ToList();
        }

        return groups.Select(group => group.Reason).Take(MostListed).ToList();
    }

    /// <summary>Whether some of the pieces leave no choice on any method that the part stands.</summary>
    private bool ForbidsEveryChoice(IReadOnlyList<Piece> all, List<Piece> some)
    {
        var any = false;
        foreach (var method in _substance.Methods.ToArray())
        {
            if (!all.Any(piece => piece.Method == method && piece.Component is not null)) continue;
            any = true;
            if (Subtraction.MaximalBoxes(AtFirstUse(method), some.Where(p => p.Method == method).Select(Freed), Axis.Uses).Count > 0) return false;
        }

        return any;
    }

    /// <summary>Where uses are left out a choice stands or falls at the first use; where they are asked, at any of them.</summary>
    private bool AtFirstUse(Piece piece) => !UsesFree || piece.Box.Uses.Meets(FirstUse);

    private Answer Base(Verdict verdict, IReadOnlyList<Reason> reasons, IReadOnlyList<Piece> pieces, CompiledRule[] deciding) => new()
    {
        Question = question,
        Verdict = verdict,
        PartVerdict = verdict,
        Decisive = reasons.Count > 0 ? reasons[0] : new Reason(ReasonCode.MaterialsAllow, []),
        Reasons = reasons,
        Assumptions = Assumptions(),
        DecidedBy = deciding.Select(r => r.Rule).ToArray(),
        SetAside = pieces.SelectMany(p => p.Decision.SetAside).Distinct().Select(r => r.Rule).OrderBy(r => r.Id).ToArray(),
        Sources = WeakestFirst.Of(kb, deciding.SelectMany(r => r.Rule.Sources)),
        Identity = identity,
    };

    /// <summary>What a piece is on the free axes; what nobody controls counts wherever it is met.</summary>
    private Box<Stretch> Freed(Piece piece) => Box<Stretch>.Whole with
    {
        Methods = piece.Box.Methods,
        ExposureTime = ExposureTimeFree ? piece.Box.ExposureTime : Stretch.Whole,
        Dilution = DilutionFree ? piece.Box.Dilution : Stretch.Whole,
        Uses = UsesFree ? piece.Box.Uses : Stretch.Whole,
    };

    /// <summary>What can be chosen with a method.</summary>
    private Box<Stretch> Domain(ApplicationMethod method) => Box<Stretch>.Whole with
    {
        Methods = MethodSet.Of(method),
        ExposureTime = ExposureTimeFree ? Stretch.Positive : Stretch.Whole,
        Dilution = DilutionFree ? Stretch.Of(_substance.Dilution) : Stretch.Whole,
        Uses = UsesFree ? Stretch.Positive : Stretch.Whole,
    };

    private Box<Stretch> AtFirstUse(ApplicationMethod method) => UsesFree ? Domain(method) with { Uses = FirstUse } : Domain(method);

    private AllowedBox ToBox(in Box<Stretch> box, Piece[] pieces)
    {
        var exposureTime = ExposureTimeFree ? box.ExposureTime.ToInterval() : question.ExposureTime!.Value;
        var dilution = DilutionFree ? box.Dilution.ToInterval() : _substance.Dilution;
        return new AllowedBox
        {
            Method = box.Methods.Driest,
            Strength = _substance.Product is null && kb.Agent(_substance.Components[0].Agent).Basis is not null ? _substance.Components[0].Strength : null,
            Dilution = _substance.Product is null ? null : dilution,
            ExposureTime = exposureTime,
            Temperature = _substance.Temperature,
            Ph = _substance.PhWithin(Stretch.Of(dilution)) ?? Interval.Closed(-1m, 15m),
            Uses = UsesFree ? FromOne(box.Uses.ToInterval()) : Interval.Closed(1m, question.Uses!.Value),
            Duties = pieces.Length == 0 ? [] : BoxDuties.Of(_substance, Driest, exposureTime, pieces),
            DecidedBy = pieces.SelectMany(p => p.Decision.Deciding).Distinct().Select(r => r.Rule.Id).OrderBy(id => id).ToArray(),
        };
    }

    private static Interval FromOne(Interval uses) => new(1m, true, uses.Upper, uses.UpperIncluded);

    /// <summary>What was taken for each axis.</summary>
    private List<Assumption> Assumptions()
    {
        var list = new List<Assumption>
        {
            new(null, question.Method is null ? AxisTreatment.Free : AxisTreatment.Exactly, Interval.Whole, _substance.Methods, question.Method is not null),
        };
        if (_substance.Product is not null) list.Add(new(Axis.Dilution, _substance.DilutionTreatment, _substance.Dilution, default,
            question.Dilution is not null || !DilutionFree));
        else if (kb.Agent(_substance.Components[0].Agent).Basis is not null)
            list.Add(Of(Axis.Strength, _substance.Components[0].Strength, _substance.StrengthStated));
        list.Add(ExposureTimeFree ? new(Axis.ExposureTime, AxisTreatment.Free, Interval.Above(0m), default, false)
            : Of(Axis.ExposureTime, question.ExposureTime!.Value, true));
        list.Add(Of(Axis.Temperature, _substance.Temperature, question.Temperature is not null));
        list.Add(Of(Axis.Ph, _substance.WholePh, question.Ph is not null));
        list.Add(question.Uses is { } n ? new(Axis.Uses, AxisTreatment.Uncertain, Interval.Closed(1m, n), default, true)
            : new(Axis.Uses, AxisTreatment.Free, Interval.AtLeast(1m), default, false));
        return list;

        static Assumption Of(Axis axis, Interval range, bool stated) =>
            new(axis, range.IsPoint ? AxisTreatment.Exactly : AxisTreatment.Uncertain, range, default, stated);
    }

    /// <summary>Taking one assumed range as free: which part of it leaves a good choice.</summary>
    private List<Assumption> WouldBeAllowed(IReadOnlyList<Piece> pieces)
    {
        var found = new List<Assumption>();
        foreach (var assumed in Assumptions().Where(a => !a.Stated && a.Treatment == AxisTreatment.Uncertain))
        {
            var axis = assumed.Axis is Axis.Strength or Axis.Temperature ? assumed.Axis.Value : Axis.Ph;
            foreach (var method in _substance.Methods.ToArray())
            {
                var holes = pieces.Where(p => p.Method == method && p.Verdict != Verdict.Allowed).Select(p => Freed(p).With(axis, p.Box[axis]));
                foreach (var box in Subtraction.MaximalBoxes(Domain(method).With(axis, Stretch.Of(assumed.Range)), holes, Axis.Uses).Take(3))
                {
                    var part = assumed with { Treatment = AxisTreatment.Free, Range = box[axis].ToInterval(), Methods = MethodSet.Of(method) };
                    if (!found.Contains(part)) found.Add(part);
                }
            }
        }

        return found;
    }
}

/// <summary>What keeps an 'allowed' within limits (clause G5): whatever was assumed, and evidence that is weak or was not seen.</summary>
internal sealed class Limits(Question question, Substance substance, IReadOnlyList<PartVariant> variants)
{
    /// <summary>What keeps every 'allowed' on a part within limits, whatever the rules say.</summary>
    public static IEnumerable<Limit> OfPart(IReadOnlyList<PartVariant> variants)
    {
        if (variants.FirstOrDefault(v => v.Editions.Count == 0)?.Device is { } device) yield return new(LimitCode.InstructionsNotSeen, [device.Id.Value]);
        if (variants[0].MaterialsAlone) yield return new(LimitCode.SealsNotJudged, []);
    }

    /// <summary>Whether a rule that permits keeps the 'allowed' within limits: its source is silent, or it does not say `any` of an axis that was left
    /// out.</summary>
    /// <remarks>Only what a rule says counts: one on a class without basis says nothing of strength, one on an agent nothing of dilution.</remarks>
    public static bool Keeps(CompiledRule rule, Axis[] leftOut)
    {
        if (rule.IsSilent) return true;
        foreach (var axis in leftOut)
            if (!rule.SaysAny(axis)) return true;
        return false;
    }

    public IReadOnlyList<Limit> Of(IReadOnlyList<CompiledRule> deciding, bool wellFounded, HashSet<string> restricted)
    {
        var limits = OfPart(variants).ToList();
        LeftOut(question.Method is null, null, "method", substance.Methods.ToString());
        var ofProduct = substance.Product is not null;
        if (ofProduct) LeftOut(substance.DilutionTreatment == AxisTreatment.Free, Axis.Dilution, "dilution", substance.Dilution.Scale(100m).ToString("% v/v"));
        else LeftOut(!substance.StrengthStated, Axis.Strength, "strength", substance.Components[0].Strength.ToString());
        LeftOut(question.ExposureTime is null, Axis.ExposureTime, "exposure-time", "free");
        LeftOut(question.Temperature is null, Axis.Temperature, "temperature", substance.Temperature.ToString("°C"));
        LeftOut(question.Ph is null, Axis.Ph, "ph", substance.WholePh.ToString());
        LeftOut(question.Uses is null, Axis.Uses, "uses", "free");
        foreach (var rule in deciding) Unstated(rule);
        if (!wellFounded) limits.Add(new(LimitCode.WeakEvidence, []));
        return limits;

        void LeftOut(bool isLeftOut, Axis? axis, string name, string taken)
        {
            if (isLeftOut && (restricted.Contains(name) || !deciding.All(rule => rule.SaysAny(axis)))) limits.Add(new(LimitCode.AxisLeftOut, [name, taken]));
        }

        void Unstated(CompiledRule rule)
        {
            foreach (var axis in rule.Rule.When.SilentOn)
                limits.Add(new(LimitCode.SourceDoesNotSay, [Words.Of(axis), rule.Box[axis].ToInterval()
                    .ToString(axis == Axis.ExposureTime ? "s" : ""), rule.Rule.Id.Value]));
            if (rule.Rule.When.Methods.Statement == AxisStatement.Unstated)
                limits.Add(new(LimitCode.SourceDoesNotSay, ["method", rule.Methods.ToString(), rule.Rule.Id.Value]));
        }
    }
}

/// <summary>Orders boxes of choices by method, exposure time, dilution and uses.</summary>
internal sealed class ChoiceOrder : IComparer<Box<Stretch>>
{
    public static ChoiceOrder Instance { get; } = new();

    public int Compare(Box<Stretch> x, Box<Stretch> y)
    {
        var order = x.Methods.Driest - y.Methods.Driest;
        if (order == 0) order = x.ExposureTime.CompareTo(y.ExposureTime);
        if (order == 0) order = x.Dilution.CompareTo(y.Dilution);
        return order != 0 ? order : x.Uses.CompareTo(y.Uses);
    }
}

/// <summary>Orders pieces by the code of their first reason, then by method.</summary>
internal sealed class PieceOrder : IComparer<Piece>
{
    public static PieceOrder Instance { get; } = new();

    public int Compare(Piece? x, Piece? y)
    {
        var byCode = x!.Decision.Reasons[0].Code - y!.Decision.Reasons[0].Code;
        return byCode != 0 ? byCode : x.Method - y.Method;
    }
}

/// <summary>Orders sources: practice, then what is recalled, then what was read by its trust; by id where equal.</summary>
internal sealed class WeakestFirst : IComparer<Source>
{
    public static WeakestFirst Instance { get; } = new();

    public int Compare(Source? x, Source? y)
    {
        var byStrength = Strength(x!) - Strength(y!);
        return byStrength != 0 ? byStrength : x!.Id.CompareTo(y!.Id);
    }

    /// <summary>The sources of a base by these ids, each once.</summary>
    public static Source[] Of(CompiledBase kb, IEnumerable<SourceId> ids) => ids.Distinct().Select(id => kb.SourcesById[id])
        .OrderBy(source => source, Instance).ToArray();

    private static int Strength(Source source) =>
        source.Kind == SourceKind.CommonPractice ? 0 : source.Recalled ? 1 : 2 + (Trust.Weak - source.Trust);
}

/// <summary>A reason with all the pieces in which it holds.</summary>
internal sealed class ReasonGroup(Reason reason)
{
    public static IComparer<ReasonGroup> MostTellingFirst { get; } = new Order();

    public Reason Reason { get; } = reason;

    public List<Piece> Pieces { get; } = [];

    /// <summary>Whether it forbids every choice by itself.</summary>
    public bool ForbidsAll { get; set; }

    /// <summary>The reasons of some pieces, each once, in the order in which they are first met.</summary>
    public static List<ReasonGroup> Of(IReadOnlyList<Piece> pieces)
    {
        var groups = new List<ReasonGroup>();
        var byText = new Dictionary<string, ReasonGroup>(StringComparer.Ordinal);
        foreach (var piece in pieces)
        {
            foreach (var reason in piece.Decision.Reasons)
            {
                var text = Text(reason);
                if (!byText.TryGetValue(text, out var group))
                {
                    byText[text] = group = new ReasonGroup(reason);
                    groups.Add(group);
                }

                group.Pieces.Add(piece);
            }
        }

        return groups;
    }

    private static string Text(Reason reason) =>
        ((int)reason.Code)
            .ToString(System.Globalization.CultureInfo.InvariantCulture) + "|" + reason.Component + "|" + reason.Member + "|" + string.Join("|",
            reason.Arguments);

    private sealed class Order : IComparer<ReasonGroup>
    {
        public int Compare(ReasonGroup? x, ReasonGroup? y)
        {
            if (x!.ForbidsAll != y!.ForbidsAll) return x.ForbidsAll ? -1 : 1;
            var byCode = x.Reason.Code - y.Reason.Code;
            return byCode != 0 ? byCode : y.Pieces.Count - x.Pieces.Count;
        }
    }
}
