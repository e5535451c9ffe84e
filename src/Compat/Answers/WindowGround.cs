namespace Compat.Answers;

/// <summary>All that opens or closes a window: what the part stands, what kills, what harms people, each as holes on the axes of the window.</summary>
internal sealed class WindowGround
{
    private readonly CompiledBase _kb;
    private readonly Question _question;
    private readonly IReadOnlyList<Piece> _pieces;
    private readonly Func<Piece, bool>? _accepts;
    private readonly Dictionary<(int Set, ApplicationMethod Method), Box<Stretch>[]> _killHoles = [];
    private WindowMaker.Cell[]? _killBoxes;

    /// <param name="kb">The knowledge base.</param>
    /// <param name="question">The question.</param>
    /// <param name="need">What the part needs.</param>
    /// <param name="measured">Whether temperature and an agent's pH are measured and kept to.</param>
    /// <param name="freeStrength">Whether the strength of an agent is chosen.</param>
    /// <param name="variants">The variants in place of those of the question: a part that was taken apart.</param>
    /// <param name="accepts">Of the pieces that are not allowed those that somebody accepts; null for none.</param>
    /// <param name="asked">The pieces of the same question; null where it was not asked before.</param>
    public WindowGround(CompiledBase kb, Question question, Need need, bool measured, bool freeStrength = false, IReadOnlyList<PartVariant>? variants = null,
        Func<Piece, bool>? accepts = null, Asked? asked = null)
    {
        _accepts = accepts;
        _kb = kb;
        _question = question;
        Need = need;
        var resolved = SubstanceResolver.Resolve(kb, question);
        MethodsAsked = resolved.Methods;
        Substance = resolved with
        {
            Temperature = question.Temperature ?? (measured ? AtHand(kb, question) : null) ?? resolved.Temperature,
            Methods = resolved.Product is { Methods.IsEmpty: false } product ? resolved.Methods.Intersect(product.Methods) : resolved.Methods,
        };
        Variants = variants ?? asked?.Variants ?? PartResolver.Variants(kb, question);
        Axes = new WindowAxes(question, Substance, measured, freeStrength);
        Domain = Axes.Domain();
        _pieces = asked?.PiecesOf(Substance) ?? new Pieces(kb, question, Substance, Variants).All();
        Gathering = new ClaimGathering(kb, Substance, Variants);
        Sets = Gathering.Sets();
        Cover = new KillCover(kb, Substance, Variants, need);
        var people = new PeopleGround(kb, question, Substance, Variants, need);
        PersonRules = people.Rules();
        Silent = people.Silent().Select(pair => new SilentPatient(pair.Component, pair.Patient)).ToArray();
    }

    /// <summary>The same without the claims that are weak.</summary>
    public WindowGround(WindowGround other)
    {
        (_kb, _question, _pieces, _accepts) = (other._kb, other._question, other._pieces, other._accepts);
        (Need, Substance, MethodsAsked, Variants, Axes, Domain, Gathering, Cover, PersonRules, Silent) =
            (other.Need, other.Substance, other.MethodsAsked, other.Variants, other.Axes, other.Domain, other.Gathering, other.Cover, other.PersonRules,
                other.Silent);
        Sets = other.Sets.Select(LabelTests.WithoutWeak).ToArray();
    }

    public Need Need { get; }

    public Substance Substance { get; }

    public IReadOnlyList<PartVariant> Variants { get; }

    public WindowAxes Axes { get; }

    /// <summary>What can be chosen, or measured and kept to, by any method.</summary>
    public Box<Stretch> Domain { get; }

    public ClaimGathering Gathering { get; }

    public IReadOnlyList<ClaimSet> Sets { get; }

    public KillCover Cover { get; }

    public IReadOnlyList<PersonRuleOnAxes> PersonRules { get; }

    public IReadOnlyList<SilentPatient> Silent { get; }

    public IReadOnlyList<ApplicationMethod> Methods => Substance.Methods.Methods;

    /// <summary>The methods asked, those too by which the product cannot be used: what harms people there does so all the same.</summary>
    public MethodSet MethodsAsked { get; }

    /// <summary>The longest exposure time asked, in seconds; null where none was, or one without end.</summary>
    public decimal? LongestAsked => _question.ExposureTime?.Upper is { } upper && upper != Interval.WithoutEnd ? upper : null;

    /// <summary>Whether the cloth asked is on record as binding the product or one of its agents, so that wiping with it is not shown to kill.</summary>
    public bool ClothBinds => _question.Cloth is { } cloth && Cover.Targets.Count > 0 && ClothBinding.Binds(_kb, Substance, cloth);

    /// <summary>The pieces of a method that the part does not stand, or is not known to; at a high level also what only its materials are known to
    /// stand.</summary>
    public IEnumerable<Piece> Closed(ApplicationMethod method) =>
        _pieces.Where(p => p.Method == method
            && (p.Verdict != Verdict.Allowed ? _accepts?.Invoke(p) != true : Need.Level >= Model.Level.High && !p.OnlyForbids && !p.Decision.ByPart));

    public IEnumerable<Piece> PiecesIn(Box<Stretch> box) =>
        _pieces.Where(p => p.Component is not null && !p.OnlyForbids && Axes.Freed(p.Box).Meets(box));

    public IEnumerable<Box<Stretch>> PartHoles(ApplicationMethod method) => Closed(method).Select(p => Axes.Freed(p.Box));

    public IEnumerable<Box<Stretch>> PeopleHoles(ApplicationMethod method) =>
        PersonRules.Where(rule => rule.Forbids && rule.Methods.Contains(method)).SelectMany(rule => rule.Holes).Select(Axes.Freed);

    public IReadOnlyList<Box<Stretch>> KillHoles(int set, ApplicationMethod method)
    {
        if (_killHoles.TryGetValue((set, method), out var holes)) return holes;
        holes = Substance.IsNothing || (ClothBinds && method <= ApplicationMethod.WetWipe) ? [Box<Stretch>.Whole]
            : Cover.Holes(Sets[set], method).Select(Axes.Freed).ToArray();
        return _killHoles[(set, method)] = holes;
    }

    /// <summary>The boxes in which what is needed is killed, whatever the part and people stand.</summary>
    public IReadOnlyList<WindowMaker.Cell> KillBoxes => _killBoxes ??=
    [
        .. from set in Enumerable.Range(0, Sets.Count)
           from method in Methods
           from box in Boxes(method, KillHoles(set, method))
           select new WindowMaker.Cell(set, box),
    ];

    /// <summary>The boxes of a method that meet no hole.</summary>
    public List<Box<Stretch>> Boxes(ApplicationMethod method, IEnumerable<Box<Stretch>> holes) =>
        Subtraction.MaximalBoxes(Domain with { Methods = MethodSet.Of(method) }, holes, Axis.Uses);

    /// <summary>The temperatures at hand: those of the site whose device or product is asked, else of any site that states them.</summary>
    private static Interval? AtHand(CompiledBase kb, Question question) =>
        (kb.Sites.FirstOrDefault(site => question.Device is { } device && site.Devices.Any(d => d.Id == device))
            ?? kb.Sites.FirstOrDefault(site => question.Product is { } product && site.Products.Any(p => p.Id == product))
            ?? kb.Sites.FirstOrDefault(site => site.Here.Temperature is not null))?.Here.Temperature;
}

/// <summary>What of a window is free: chosen, or measured and kept to. Elsewhere the worst counts.</summary>
internal sealed class WindowAxes(Question question, Substance substance, bool measured, bool freeStrength)
{
    public bool ExposureTimeFree => question.ExposureTime is null;

    public bool DilutionFree => substance.DilutionTreatment == AxisTreatment.Free;

    public bool UsesFree => question.Uses is null;

    public bool StrengthFree => freeStrength && substance.Product is null;

    public bool TemperatureFree => measured && question.Temperature is null;

    /// <summary>The pH of a product is that of its record; of an agent it is measured.</summary>
    public bool PhFree => measured && question.Ph is null && substance.Product is null;

    /// <summary>What can be chosen, or measured and kept to, by any method.</summary>
    public Box<Stretch> Domain() => Box<Stretch>.Whole with
    {
        ExposureTime = ExposureTimeFree ? Stretch.Positive : Stretch.Whole,
        Dilution = DilutionFree ? Stretch.Of(substance.Dilution) : Stretch.Whole,
        Uses = UsesFree ? Stretch.Positive : Stretch.Whole,
        Strength = StrengthFree ? Stretch.Of(substance.Components[0].Strength) : Stretch.Whole,
        Temperature = TemperatureFree ? Stretch.Of(substance.Temperature) : Stretch.Whole,
        Ph = PhFree ? Stretch.Of(substance.WholePh) : Stretch.Whole,
        ContactTime = Stretch.Positive,
    };

    /// <summary>A hole on the free axes: what nobody controls counts wherever it is met.</summary>
    public Box<Stretch> Freed(Box<Stretch> hole) => Box<Stretch>.Whole with
    {
        Methods = hole.Methods,
        ExposureTime = ExposureTimeFree ? hole.ExposureTime : Stretch.Whole,
        Dilution = DilutionFree ? hole.Dilution : Stretch.Whole,
        Uses = UsesFree ? hole.Uses : Stretch.Whole,
        Strength = StrengthFree ? hole.Strength : Stretch.Whole,
        Temperature = TemperatureFree ? hole.Temperature : Stretch.Whole,
        Ph = PhFree ? hole.Ph : Stretch.Whole,
        ContactTime = hole.ContactTime,
    };
}
