namespace Compat.Deciding;

/// <summary>Reads the answer to a question off its pieces: what can be chosen freely, the worst of what nobody controls.</summary>
internal sealed class RegionAnswer(CompiledBase kb, Question question, IReadOnlyList<DataIdentity> identity)
{
    /// <summary>So many boxes or reasons of an answer are listed.</summary>
    public const int MostListed = 32;

    private readonly Substance _substance = SubstanceResolver.Resolve(kb, question);
    private readonly IReadOnlyList<PartVariant> _variants = PartResolver.Variants(kb, question);

    private PartVariant Driest => BoxDuties.Driest(_variants);

    private bool ExposureTimeFree => question.ExposureTime is null;

    private bool DilutionFree => _substance.DilutionTreatment == AxisTreatment.Free;

    private bool UsesFree => question.Uses is null;

    /// <summary>What was asked, with its pieces once the answer is made.</summary>
    public AskedPieces? Asked { get; private set; }

    public Answer Make()
    {
        var asked = new Pieces(kb, question, _substance, _variants);
        var pieces = asked.All();
        Asked = new(_substance, _variants, pieces);
        if (asked.IsNothing) return Base(Verdict.NotEstablished, [Pieces.NoValue], pieces, []);
        var boxes = new List<ChosenAxes>();
        foreach (var method in _substance.Methods.ToArray())
        {
            var holes = pieces.Where(p => p.Method == method && p.Verdict != Verdict.Allowed).Select(Freed);
            boxes.AddRange(Subtraction.MaximalBoxes(Domain(firstUseOnly: false), holes, Piece.Uses).Select(box => new ChosenAxes(method, box)));
        }

        return boxes.Count > 0 ? Allowed(pieces, boxes) : Refused(pieces);
    }

    private Answer Allowed(IReadOnlyList<Piece> pieces, List<ChosenAxes> boxes)
    {
        var sorted = boxes.OrderBy(box => box, ChoiceOrder.Instance).ToArray();
        var meeting = sorted.Select(box => pieces.Where(p => p.Method == box.Method && !p.OnlyForbids && Subtraction.Meet(Freed(p), box.Spans)).ToArray()).ToArray();
        var used = meeting.SelectMany(p => p).Distinct().ToArray();
        var deciding = used.SelectMany(p => p.Decision.Deciding).Distinct().OrderBy(r => r.Rule.Id).ToArray();
        var wellFounded = used.All(p => p.Decision.WellFounded);
        var limits = new Limits(question, _substance, _variants).Of(deciding, wellFounded, Restricted(sorted));
        var listed = sorted.Take(MostListed).Select((box, i) => ToBox(box.Method, box.Spans, meeting[i])).ToArray();
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
    private HashSet<string> Restricted(ChosenAxes[] boxes)
    {
        var domain = Domain(firstUseOnly: false);
        var restricted = new HashSet<string>();
        foreach (var method in _substance.Methods.ToArray())
            if (boxes.All(box => box.Method != method)) restricted.Add("method");
        foreach (var (_, spans) in boxes)
        {
            if (!domain[Piece.ExposureTime].LiesIn(spans[Piece.ExposureTime])) restricted.Add("exposure-time");
            if (!domain[Piece.Dilution].LiesIn(spans[Piece.Dilution])) restricted.Add("dilution");
            if (!domain[Piece.Uses].LiesIn(spans[Piece.Uses])) restricted.Add("uses");
        }

        return restricted;
    }

    private Answer Refused(IReadOnlyList<Piece> pieces)
    {
        var escapes = new List<ChosenAxes>();
        var forbidden = new List<AllowedBox>();
        foreach (var method in _substance.Methods.ToArray())
        {
            var forbidding = pieces.Where(p => p.Method == method && p.Verdict == Verdict.NotAllowed).ToArray();
            var left = Subtraction.MaximalBoxes(Domain(firstUseOnly: true), forbidding.Select(Freed), Piece.Uses);
            escapes.AddRange(left.Select(box => new ChosenAxes(method, box)));
            forbidden.AddRange(Subtraction.MaximalBoxes(Domain(firstUseOnly: true), left, -1).Select(box => ToBox(method, box, [])));
        }

        var notAllowed = escapes.Count == 0;
        var deciders = notAllowed
            ? pieces.Where(p => p.Verdict == Verdict.NotAllowed && AtFirstUse(p)).ToArray()
            : pieces.Where(p => p.Verdict == Verdict.NotEstablished && AtFirstUse(p) && escapes.Any(e => e.Method == p.Method && Subtraction.Meet(e.Spans, Freed(p)))).ToArray();
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
            if (Subtraction.MaximalBoxes(Domain(firstUseOnly: true), some.Where(p => p.Method == method).Select(Freed), Piece.Uses).Count > 0) return false;
        }

        return any;
    }

    /// <summary>Where uses are left out a choice stands or falls at the first use; where they are asked, at any of them.</summary>
    private bool AtFirstUse(Piece piece) => !UsesFree || piece.Spans[Piece.Uses].Meets(Span.Of(new Interval(0m, false, 1m, true)));

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

    /// <summary>The spans of the free axes; what nobody controls counts wherever it is met.</summary>
    private Span[] Freed(Piece piece) =>
    [
        ExposureTimeFree ? piece.Spans[Piece.ExposureTime] : Span.Whole,
        DilutionFree ? piece.Spans[Piece.Dilution] : Span.Whole,
        UsesFree ? piece.Spans[Piece.Uses] : Span.Whole,
    ];

    private Span[] Domain(bool firstUseOnly) =>
    [
        ExposureTimeFree ? Pieces.Positive : Span.Whole,
        DilutionFree ? Span.Of(_substance.Dilution) : Span.Whole,
        !UsesFree ? Span.Whole : firstUseOnly ? Span.Of(new Interval(0m, false, 1m, true)) : Pieces.Positive,
    ];

    /// <summary>All that is asked of a method, as a box without rules and duties.</summary>
    public AllowedBox WholeBox(ApplicationMethod method) => ToBox(method, Domain(firstUseOnly: false), []);

    private AllowedBox ToBox(ApplicationMethod method, Span[] spans, Piece[] pieces)
    {
        var exposureTime = ExposureTimeFree ? spans[Piece.ExposureTime].ToInterval() : question.ExposureTime!.Value;
        var dilution = DilutionFree ? spans[Piece.Dilution].ToInterval() : _substance.Dilution;
        return new AllowedBox
        {
            Method = method,
            Strength = _substance.Product is null && kb.Agent(_substance.Components[0].Agent).Basis is not null ? _substance.Components[0].Strength : null,
            Dilution = _substance.Product is null ? null : dilution,
            ExposureTime = exposureTime,
            Temperature = _substance.Temperature,
            Ph = _substance.PhWithin(Span.Of(dilution)) ?? Interval.Closed(-1m, 15m),
            Uses = UsesFree ? FromOne(spans[Piece.Uses].ToInterval()) : Interval.Closed(1m, question.Uses!.Value),
            Duties = pieces.Length == 0 ? [] : BoxDuties.Of(_substance, Driest, exposureTime, pieces),
            DecidedBy = pieces.SelectMany(p => p.Decision.Deciding).Distinct().Select(r => r.Rule.Id).OrderBy(id => id).ToArray(),
        };
    }

    private static Interval FromOne(Interval uses) => new(1m, true, uses.Upper, uses.UpperIncluded);

    /// <summary>What was taken for each axis.</summary>
    public IReadOnlyList<Assumption> Assumptions()
    {
        var list = new List<Assumption>
        {
            new(null, question.Method is null ? AxisTreatment.Free : AxisTreatment.Exactly, Interval.Whole, _substance.Methods, question.Method is not null),
        };
        if (_substance.Product is not null) list.Add(new(Axis.Dilution, _substance.DilutionTreatment, _substance.Dilution, default, question.Dilution is not null || !DilutionFree));
        else if (kb.Agent(_substance.Components[0].Agent).Basis is not null)
            list.Add(Of(Axis.Strength, _substance.Components[0].Strength, _substance.StrengthStated));
        list.Add(ExposureTimeFree ? new(Axis.ExposureTime, AxisTreatment.Free, Interval.Above(0m), default, false) : Of(Axis.ExposureTime, question.ExposureTime!.Value, true));
        list.Add(Of(Axis.Temperature, _substance.Temperature, question.Temperature is not null));
        list.Add(Of(Axis.Ph, _substance.WholePh, question.Ph is not null));
        list.Add(question.Uses is { } n ? new(Axis.Uses, AxisTreatment.Uncertain, Interval.Closed(1m, n), default, true) : new(Axis.Uses, AxisTreatment.Free, Interval.AtLeast(1m), default, false));
        return list;

        static Assumption Of(Axis axis, Interval range, bool stated) => new(axis, range.IsPoint ? AxisTreatment.Exactly : AxisTreatment.Uncertain, range, default, stated);
    }

    /// <summary>Taking one assumed range as free: which part of it leaves a good choice.</summary>
    private List<Assumption> WouldBeAllowed(IReadOnlyList<Piece> pieces)
    {
        var found = new List<Assumption>();
        foreach (var assumed in Assumptions().Where(a => !a.Stated && a.Treatment == AxisTreatment.Uncertain))
        {
            var at = assumed.Axis switch { Axis.Strength => Piece.Strength, Axis.Temperature => Piece.Temperature, _ => Piece.Ph };
            foreach (var method in _substance.Methods.ToArray())
            {
                var domain = With(Domain(firstUseOnly: false), Span.Of(assumed.Range));
                var holes = pieces.Where(p => p.Method == method && p.Verdict != Verdict.Allowed).Select(p => With(Freed(p), p.Spans[at]));
                foreach (var box in Subtraction.MaximalBoxes(domain, holes, Piece.Uses).Take(3))
                {
                    var part = assumed with { Treatment = AxisTreatment.Free, Range = box[3].ToInterval(), Methods = MethodSet.Of(method) };
                    if (!found.Contains(part)) found.Add(part);
                }
            }
        }

        return found;

        static Span[] With(Span[] free, Span assumed) => [free[Piece.ExposureTime], free[Piece.Dilution], free[Piece.Uses], assumed];
    }
}
