namespace Compat.Answers;

/// <summary>Intersects what the part and the people stand with what kills.</summary>
internal sealed class WindowMaker(CompiledBase kb, Question question, WindowGround ground)
{
    private const int MostListed = 32;

    private readonly decimal _share = kb.Convention(ConventionKey.WindowShare).Range.Upper ?? 0m;
    private readonly decimal _least = kb.Convention(ConventionKey.WindowLeast).Range.Upper ?? 0m;

    /// <summary>One maximal box of the window, with the set of claims that it was found by.</summary>
    internal sealed record Cell(int Set, ApplicationMethod Method, Span[] Spans);

    public Window Make(IReadOnlyList<DataIdentity> identity)
    {
        var cells = Cells();
        var boxes = cells.Take(MostListed).Select(ToBox).ToArray();
        var gap = ground.Variants.Any(v => v.Geometry is Geometry.Crevice or Geometry.Hinge) && ground.Cover.Targets.Count > 0;
        var demanding = ground.Need.Level >= Level.Intermediate || ground.Need.Against.Any(IsHardToReach);
        return new Window
        {
            Need = ground.Need,
            Boxes = boxes,
            BoxCount = cells.Count,
            Closure = cells.Count > 0 ? null : new ClosureFinder(ground, this).Find(),
            GapNotShown = gap && demanding && !boxes.Any(box => box.Method == ApplicationMethod.Chamber || (box.Claims.Count > 0 && box.Claims.All(claim => claim.NamesThePart))),
            WorkIntoGap = gap && !demanding,
            NoLabelClaim = ground.Substance.Product is not null && boxes.Length > 0 && boxes.All(box => box.Claims.Any(claim => claim.Origin == ClaimOrigin.Published)),
            Silent = ground.Silent,
            Identity = identity,
        };
    }

    /// <summary>Whether the exposure time of a box can hold its contact time, with what a person with a clock misses it by.</summary>
    public bool Fits(Span[] box)
    {
        var wet = ShortestContactTime(box);
        if (question.ExposureTime is { } stated)
            return stated.Lower is { } low ? low > wet || (low == wet && !(box[WindowAxes.ContactTime].From?.After ?? false)) : wet == 0m;
        return box[WindowAxes.ExposureTime].To is not { } most || Holds(most, wet + Margin(wet));
    }

    /// <summary>The shortest exposure time of those asked; null where none was.</summary>
    public decimal? AskedExposureTime => question.ExposureTime is { } stated ? stated.Lower ?? 0m : null;

    public decimal Margin(decimal contactTime) => Math.Max(contactTime * _share, _least);

    /// <summary>The contact times that an exposure time still holds, rounded inward; one that is asked must hold them at its shortest.</summary>
    private Interval LongestContactTime(Interval stands, decimal shortest)
    {
        if (question.ExposureTime is not null) return stands.Lower == Interval.WithoutEnd ? Interval.Whole : Interval.AtMost(stands.Lower ?? 0m);
        if (stands.Upper is not { } upper || upper == Interval.WithoutEnd) return Interval.Whole;
        var most = Math.Max(shortest, Math.Min(upper - _least, Rounding.Down(upper, 1m + _share, out _)));
        return new Interval(null, false, most, stands.UpperIncluded || most + Margin(most) < upper);
    }

    public static decimal ShortestContactTime(Span[] box) => box[WindowAxes.ContactTime].From is { } from ? from.Numerator / from.Denominator : 0m;

    public static bool Holds(Cut most, decimal value) => most.Numerator / most.Denominator is var end && (end > value || (end == value && most.After));

    private List<Cell> Cells()
    {
        var cells = new List<Cell>();
        for (var set = 0; set < ground.Sets.Count; set++)
        {
            foreach (var method in ground.Methods)
            {
                foreach (var spans in ground.Boxes(ground.PartHoles(method).Concat(ground.PeopleHoles(method)).Concat(ground.KillHoles(set, method))).Where(Fits))
                    if (!cells.Any(cell => cell.Method == method && Same(cell.Spans, spans))) cells.Add(new Cell(set, method, spans));
            }
        }

        return cells.OrderBy(cell => cell.Method).ThenBy(cell => ShortestContactTime(cell.Spans))
            .ThenByDescending(cell => cell.Spans[WindowAxes.ExposureTime].To is { } to ? to.Numerator / to.Denominator : Interval.WithoutEnd).ToList();
    }

    private static bool Same(Span[] a, Span[] b)
    {
        for (var i = 0; i < a.Length; i++)
            if (!a[i].Equals(b[i])) return false;
        return true;
    }

    private WindowBox ToBox(Cell cell)
    {
        var spans = cell.Spans;
        var substance = ground.Substance;
        var wet = spans[WindowAxes.ContactTime].ToInterval();
        var stands = ground.Axes.ExposureTimeFree ? spans[WindowAxes.ExposureTime].ToInterval() : question.ExposureTime!.Value;
        var exposureTime = stands.Intersect(wet.Lower is { } shortest ? new Interval(shortest, wet.LowerIncluded, null, false) : Interval.Whole);
        var claims = ClaimsIn(cell);
        var pieces = ground.PiecesIn(cell.Method, spans).ToArray();
        var people = ground.PersonRules.Where(rule => !rule.Forbids && rule.Methods.Contains(cell.Method) && rule.Holes.Any(hole => Subtraction.Meet(ground.Axes.Freed(hole), spans))).ToArray();
        var dilution = ground.Axes.DilutionFree ? spans[WindowAxes.Dilution].ToInterval() : substance.Dilution;
        var hasStrength = substance.Product is null && kb.Agent(substance.Components[0].Agent).Basis is not null;
        var temperature = ground.Axes.TemperatureFree ? spans[WindowAxes.Temperature].ToInterval() : substance.Temperature;
        var ph = ground.Axes.PhFree ? spans[WindowAxes.Ph].ToInterval() : substance.PhWithin(Span.Of(dilution)) ?? Interval.Closed(-1m, 15m);
        return new WindowBox
        {
            Method = cell.Method,
            Strength = !hasStrength ? null : ground.Axes.StrengthFree ? spans[WindowAxes.Strength].ToInterval() : substance.Components[0].Strength,
            Dilution = substance.Product is null ? null : dilution,
            ContactTime = wet.Intersect(ground.Cover.Targets.Count == 0 ? Interval.Whole : LongestContactTime(stands, ShortestContactTime(spans))),
            ExposureTime = exposureTime,
            Temperature = temperature,
            MeasureTemperature = ground.Axes.TemperatureFree && !temperature.Equals(substance.Temperature),
            Ph = ph,
            MeasurePh = ground.Axes.PhFree && !ph.Equals(substance.WholePh),
            Uses = ground.Axes.UsesFree ? new Interval(1m, true, spans[WindowAxes.Uses].ToInterval().Upper, spans[WindowAxes.Uses].ToInterval().UpperIncluded) : Interval.Closed(1m, question.Uses!.Value),
            Reached = Reached(cell.Method, ShortestContactTime(spans)),
            Duties = BoxDuties.Of(substance, BoxDuties.Driest(ground.Variants), exposureTime, pieces, people.SelectMany(rule => rule.Rule.Duties).Concat(Needed(claims))),
            Claims = claims.Select(claim => claim.Claim).ToArray(),
            DecidedBy = pieces.SelectMany(p => p.Decision.Deciding).Distinct().Select(r => r.Rule.Id).OrderBy(id => id).ToArray(),
            PersonRules = people.Select(rule => rule.Rule.Id).Distinct().ToArray(),
        };
    }

    /// <summary>Why the claims that meet some target at the shortest contact time of a box are weak, where each that meets it is.</summary>
    public IEnumerable<KillReason> WeakIn(Cell cell)
    {
        var claims = ClaimsIn(cell);
        foreach (var serving in from target in ground.Cover.Targets from variant in ground.Variants select claims.Where(claim => ground.Cover.Serves(claim, target, cell.Method, variant)).ToArray())
        {
            var weak = serving.Select(claim => LabelTests.Weak(claim.Claim, cell.Method)).OfType<KillReason>().ToArray();
            if (weak.Length == serving.Length) foreach (var reason in weak) yield return reason;
        }
    }

    /// <summary>The claims that meet some target at the shortest contact time of a box.</summary>
    public IReadOnlyList<ClaimOnAxes> ClaimsIn(Cell cell)
    {
        return ground.Sets[cell.Set].Claims.Where(claim => ground.Cover.Targets.Any(target => ground.Variants.Any(v => ground.Cover.Serves(claim, target, cell.Method, v))) && MeetsAt(claim, cell.Spans)).ToArray();
    }

    private bool MeetsAt(ClaimOnAxes claim, Span[] box)
    {
        if (claim.Spans[ClaimOnAxes.ContactTime].From is { } from && box[WindowAxes.ContactTime].From is { } shortest && from.CompareTo(shortest) > 0) return false;
        return (!ground.Axes.DilutionFree || claim.Spans[ClaimOnAxes.Dilution].Meets(box[WindowAxes.Dilution]))
            && (!ground.Axes.TemperatureFree || claim.Spans[ClaimOnAxes.Temperature].Meets(box[WindowAxes.Temperature]))
            && (!ground.Axes.StrengthFree || claim.Spans[ClaimOnAxes.Strength].Meets(box[WindowAxes.Strength]))
            && (!ground.Axes.PhFree || claim.Spans[ClaimOnAxes.Ph].Meets(box[WindowAxes.Ph]));
    }

    /// <summary>What the claims and the need ask first.</summary>
    private IEnumerable<Duty> Needed(IReadOnlyList<ClaimOnAxes> claims)
    {
        if (ground.Cover.Targets.Count > 0 && (ground.Need.CleanFirst || ground.Need.Soil.Count > 0 || claims.Any(claim => claim.Claim.Needs.Contains(ClaimNeed.CleanFirst))))
            yield return new Duty { Kind = DutyKind.CleanFirst };
    }

    private ContactTimeReached Reached(ApplicationMethod method, decimal shortest) =>
        ground.Cover.Targets.Count == 0 ? ContactTimeReached.NotNeeded : Reached(ground.Substance.Product, method, shortest);

    /// <summary>How a product reaches a contact time by a method.</summary>
    internal static ContactTimeReached Reached(Model.Product? product, ApplicationMethod method, decimal shortest)
    {
        if (shortest == 0m) return ContactTimeReached.NotNeeded;
        if (method >= ApplicationMethod.Rinse) return ContactTimeReached.ByItself;
        var seen = product?.ContactTimes.Where(time => time.Method == method).ToArray() ?? [];
        if (seen.Length == 0) return ContactTimeReached.TimeIt;
        return seen.All(time => time.Time.Lower >= shortest) ? ContactTimeReached.ByItself : ContactTimeReached.WipeAgain;
    }

    private bool IsHardToReach(OrganismTarget target)
    {
        var group = target.Group ?? kb.Data.Organisms.First(o => o.Id == target.Organism).Group;
        return group is OrganismGroup.Spores or OrganismGroup.Tuberculosis or OrganismGroup.NonEnvelopedViruses;
    }
}
