namespace Compat.Answers;

/// <summary>Intersects what the part and the people stand with what kills: clauses W1 to W3.</summary>
internal sealed class WindowMaker(CompiledBase kb, Question question, WindowGround ground)
{
    private const int MostListed = 32;

    private readonly decimal _share = kb.Convention(ConventionKey.WindowShare).Range.Upper ?? 0m;
    private readonly decimal _least = kb.Convention(ConventionKey.WindowLeast).Range.Upper ?? 0m;

    /// <summary>One maximal box of the window, with the set of claims that it was found by.</summary>
    internal sealed record Cell(int Set, Box<Stretch> Box)
    {
        public ApplicationMethod Method => Box.Methods.Driest;
    }

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
            GapNotShown = gap && demanding
                && !boxes.Any(box => box.Method == ApplicationMethod.Chamber || (box.Claims.Count > 0 && box.Claims.All(claim => claim.NamesThePart))),
            WorkIntoGap = gap && !demanding,
            NoLabelClaim = ground.Substance.Product is not null && boxes.Length > 0
                && boxes.All(box => box.Claims.Any(claim => claim.Origin == ClaimOrigin.Published)),
            Silent = ground.Silent,
            Identity = identity,
        };
    }

    /// <summary>Clause W3. Whether the exposure time of a box can hold its contact time, with what a person with a clock misses it by.</summary>
    public bool Fits(Box<Stretch> box)
    {
        var wet = ShortestContactTime(box);
        if (question.ExposureTime is { } stated)
            return stated.Lower is { } low ? low > wet || (low == wet && !(box.ContactTime.From?.After ?? false)) : wet == 0m;
        return box.ExposureTime.To is not { } most || Holds(most, wet + Margin(wet));
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

    public static decimal ShortestContactTime(in Box<Stretch> box) => box.ContactTime.From?.Value ?? 0m;

    public static bool Holds(Cut most, decimal value) => most.Value is var end && (end > value || (end == value && most.After));

    private List<Cell> Cells()
    {
        var cells = new List<Cell>();
        for (var set = 0; set < ground.Sets.Count; set++)
        {
            foreach (var method in ground.Methods)
            {
                var holes = ground.PartHoles(method).Concat(ground.PeopleHoles(method)).Concat(ground.KillHoles(set, method));
                foreach (var box in ground.Boxes(method, holes).Where(Fits))
                    if (!cells.Any(cell => cell.Box.Equals(box))) cells.Add(new Cell(set, box));
            }
        }

        return cells.OrderBy(cell => cell.Method).ThenBy(cell => ShortestContactTime(cell.Box))
            .ThenByDescending(cell => cell.Box.ExposureTime.To?.Value ?? Interval.WithoutEnd).ToList();
    }

    private WindowBox ToBox(Cell cell)
    {
        var box = cell.Box;
        var substance = ground.Substance;
        var wet = box.ContactTime.ToInterval();
        var stands = ground.Axes.ExposureTimeFree ? box.ExposureTime.ToInterval() : question.ExposureTime!.Value;
        var exposureTime = stands.Intersect(wet.Lower is { } shortest ? new Interval(shortest, wet.LowerIncluded, null, false) : Interval.Whole);
        var claims = ClaimsIn(cell);
        var pieces = ground.PiecesIn(box).ToArray();
        var people = ground.PersonRules.Where(rule => !rule.Forbids && rule.Methods.Contains(cell.Method)
            && rule.Holes.Any(hole => ground.Axes.Freed(hole).Meets(box))).ToArray();
        var dilution = ground.Axes.DilutionFree ? box.Dilution.ToInterval() : substance.Dilution;
        var hasStrength = substance.Product is null && kb.Agent(substance.Components[0].Agent).Basis is not null;
        var temperature = ground.Axes.TemperatureFree ? box.Temperature.ToInterval() : substance.Temperature;
        var ph = ground.Axes.PhFree ? box.Ph.ToInterval() : substance.PhWithin(Stretch.Of(dilution)) ?? Interval.Closed(-1m, 15m);
        return new WindowBox
        {
            Method = cell.Method,
            Strength = !hasStrength ? null : ground.Axes.StrengthFree ? box.Strength.ToInterval() : substance.Components[0].Strength,
            Dilution = substance.Product is null ? null : dilution,
            ContactTime = wet.Intersect(ground.Cover.Targets.Count == 0 ? Interval.Whole : LongestContactTime(stands, ShortestContactTime(box))),
            ExposureTime = exposureTime,
            Temperature = temperature,
            MeasureTemperature = ground.Axes.TemperatureFree && !temperature.Equals(substance.Temperature),
            Ph = ph,
            MeasurePh = ground.Axes.PhFree && !ph.Equals(substance.WholePh),
            Uses = ground.Axes.UsesFree ? new Interval(1m, true, box.Uses.ToInterval().Upper, box.Uses.ToInterval().UpperIncluded)
                : Interval.Closed(1m, question.Uses!.Value),
            Reached = Reached(cell.Method, ShortestContactTime(box)),
            Duties = BoxDuties.Of(
                substance, BoxDuties.Driest(ground.Variants), exposureTime, pieces, people.SelectMany(rule => rule.Rule.Duties).Concat(Needed(claims))),
            Claims = claims.Select(claim => claim.Claim).ToArray(),
            DecidedBy = pieces.SelectMany(p => p.Decision.Deciding).Distinct().Select(r => r.Rule.Id).OrderBy(id => id).ToArray(),
            PersonRules = people.Select(rule => rule.Rule.Id).Distinct().ToArray(),
        };
    }

    /// <summary>Why the claims that meet some target at the shortest contact time of a box are weak, where each that meets it is.</summary>
    public IEnumerable<KillReason> WeakIn(Cell cell)
    {
        var claims = ClaimsIn(cell);
        foreach (var serving in from target in ground.Cover.Targets
                                from variant in ground.Variants
                                select claims.Where(claim => ground.Cover.Serves(claim, target, cell.Method, variant)).ToArray())
        {
            var weak = serving.Select(claim => LabelTests.Weak(claim.Claim, cell.Method)).OfType<KillReason>().ToArray();
            if (weak.Length == serving.Length) foreach (var reason in weak) yield return reason;
        }
    }

    /// <summary>The claims that meet some target at the shortest contact time of a box.</summary>
    public IReadOnlyList<ClaimOnAxes> ClaimsIn(Cell cell)
    {
        return ground.Sets[cell.Set].Claims.Where(claim =>
            ground.Cover.Targets.Any(target => ground.Variants.Any(v => ground.Cover.Serves(claim, target, cell.Method, v))) && MeetsAt(claim.Box, cell.Box))
            .ToArray();
    }

    private bool MeetsAt(in Box<Stretch> claim, in Box<Stretch> box)
    {
        if (claim.ContactTime.From is { } from && box.ContactTime.From is { } shortest && from.CompareTo(shortest) > 0) return false;
        return (!ground.Axes.DilutionFree || claim.Dilution.Meets(box.Dilution))
            && (!ground.Axes.TemperatureFree || claim.Temperature.Meets(box.Temperature))
            && (!ground.Axes.StrengthFree || claim.Strength.Meets(box.Strength))
            && (!ground.Axes.PhFree || claim.Ph.Meets(box.Ph));
    }

    /// <summary>What the claims and the need ask first.</summary>
    private IEnumerable<Duty> Needed(IReadOnlyList<ClaimOnAxes> claims)
    {
        if (ground.Cover.Targets.Count > 0
            && (ground.Need.CleanFirst || ground.Need.Soil.Count > 0 || claims.Any(claim => claim.Claim.Needs.Contains(ClaimNeed.CleanFirst))))
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

/// <summary>Names the pair that closes a window.</summary>
internal sealed class ClosureFinder(WindowGround ground, WindowMaker maker)
{
    /// <summary>What the part and people stand beside what kills, on one method.</summary>
    private sealed record Pair(int Set, ApplicationMethod Method, Box<Stretch> Stands, Box<Stretch> Kills);

    public WindowClosure Find()
    {
        var kills = ground.KillBoxes;
        if (kills.Count == 0)
            return new WindowClosure { Code = ClosureCode.DoesNotKill, Kill = new KillReasons(ground).Of().Reasons };

        var part = ground.Methods.SelectMany(method => ground.Boxes(method, ground.PartHoles(method))).ToArray();
        if (part.Length == 0) return PartClosed();
        var stands = ground.Methods.SelectMany(method => ground.Boxes(method, ground.PartHoles(method).Concat(ground.PeopleHoles(method)))).ToArray();
        if (stands.Length == 0)
        {
            var harming = ground.PersonRules.Where(rule => rule.Forbids).Select(rule => rule.Rule.Id.Value).Distinct().ToArray();
            return new WindowClosure { Code = ClosureCode.HarmsPeople, Arguments = harming };
        }

        var pairs = (from kill in kills
                     from stand in stands
                     where stand.Methods.Contains(kill.Method)
                     select new Pair(kill.Set, kill.Method, stand,
            kill.Box)).ToArray();
        if (pairs.Length == 0)
        {
            return new WindowClosure
            {
                Code = ClosureCode.OtherMethods,
                Arguments = [Joined(kills.Select(kill => kill.Method)), Joined(stands.Select(stand => stand.Methods.Driest))],
                Rules = ground.Methods.SelectMany(method => ground.Closed(method)).SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct()
                    .OrderBy(id => id).ToArray(),
                Claims = ClaimsOf(kills),
            };
        }

        var atOnce = pairs.Where(pair => MeetAtOnce(pair)).ToArray();
        if (atOnce.Length > 0) return TooShort(atOnce);
        var code = pairs.Any(pair => MeetInStrength(pair)) ? ClosureCode.OtherConditions : ClosureCode.OtherStrength;
        return new WindowClosure
        {
            Code = code,
            Rules = Bounding(pairs[0]),
            Claims = ClaimsOf(pairs.Select(pair => new WindowMaker.Cell(pair.Set, pair.Kills)))
        };
    }

    /// <summary>Of the pairs that differ in time only, the one that misses by the least.</summary>
    private WindowClosure TooShort(Pair[] pairs)
    {
        var best = pairs.OrderBy(pair => WindowMaker.ShortestContactTime(pair.Kills) - Longest(pair)).First();
        var wet = WindowMaker.ShortestContactTime(best.Kills);
        var longest = Longest(best);
        return new WindowClosure
        {
            Code = longest < wet ? ClosureCode.KillsTooSlowly : ClosureCode.TooNarrow,
            ContactTime = wet,
            ExposureTime = longest,
            Rules = Bounding(best),
            Claims = Binding(best),
        };
    }

    private WindowClosure PartClosed()
    {
        var closed = ground.Methods.SelectMany(ground.Closed).ToArray();
        var byMaterials = closed.Any(p => p.Verdict == Verdict.Allowed)
            && ground.Methods.Any(method =>
            ground.Boxes(method, ground.Closed(method).Where(p => p.Verdict != Verdict.Allowed).Select(p => ground.Axes.Freed(p.Box))).Count > 0);
        return new WindowClosure
        {
            Code = byMaterials ? ClosureCode.SparedByMaterialsOnly : ClosureCode.PartDoesNotStandIt,
            Ingredients = byMaterials || ground.Substance.Product is null ? [] : Ingredients(closed),
            Forbidden = Alone(closed.Where(p => p.Verdict == Verdict.NotAllowed)),
            NotListed = closed.Any(IsNotListed) && Alone(closed.Where(p => IsNotListed(p) || IsOfAll(p))),
            Rules = closed.SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray(),
        };
    }

    /// <summary>
    /// What of a product closes the part by itself: what is forbidden, else what is not known to be stood; where nothing does so by itself, all that is
    /// forbidden.
    /// Nothing where the method, instructions or a rule on the whole product do; no class beside an ingredient of it.
    /// </summary>
    private string[] Ingredients(Piece[] closed)
    {
        if (Alone(closed.Where(p => p.Verdict == Verdict.NotAllowed && (IsOfAll(p) || IsNotListed(p))))) return [];
        foreach (var verdict in new[] { Verdict.NotAllowed, Verdict.NotEstablished })
        {
            var byItself = closed.Where(p => p.Verdict == verdict && p.Component is not null).Select(p => p.Component!).Distinct()
                .Where(one => Alone(closed.Where(p => p.Verdict == verdict && (p.Component == one || p.Component is null)))).ToArray();
            if (byItself.Length > 0) return Names(byItself);
        }

        return Names(closed.Where(p => p.Verdict == Verdict.NotAllowed).Select(p => p.Component).OfType<Component>());

        string[] Names(IEnumerable<Component> components)
        {
            var all = components.ToArray();
            return all.Where(one => !one.OnlyForbids
                || !all.Any(other => !other.OnlyForbids && !other.Unknown && ground.Gathering.Base.Agents.IsAtOrBelow(other.Agent, one.Agent)))
                .Select(one => one.Name).OfType<string>().Distinct().OrderBy(name => name, StringComparer.Ordinal).ToArray();
        }
    }

    /// <summary>Whether instructions that list all they allow do not list it.</summary>
    private static bool IsNotListed(Piece piece) => piece.Verdict == Verdict.NotAllowed
        && piece.Decision.Reasons.Any(reason => reason.Code == Answers.ReasonCode.NotListed);

    /// <summary>Whether the method, or a rule on the whole product, forbids it whatever is in it.</summary>
    private static bool IsOfAll(Piece piece) => piece.Verdict == Verdict.NotAllowed
        && (piece.Component is null || piece.Decision.Deciding.Any(rule => !rule.Allows && rule.Agent < 0));

    /// <summary>Whether pieces leave no exposure open on any method.</summary>
    private bool Alone(IEnumerable<Piece> pieces)
    {
        var byMethod = pieces.ToLookup(p => p.Method);
        return ground.Methods.All(method => ground.Boxes(method, byMethod[method].Select(p => ground.Axes.Freed(p.Box))).Count == 0);
    }

    /// <summary>The rules that end the exposure time of what the part stands: that forbid beyond it, else those that permit up to there.</summary>
    private RuleId[] Bounding(Pair pair)
    {
        var beyond = ground.Closed(pair.Method)
            .Where(p => p.Verdict == Verdict.NotAllowed && pair.Stands.ExposureTime.To is { } to && p.Box.ExposureTime.From is { } from
            && from.CompareTo(to) == 0)
            .SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray();
        return beyond.Length > 0 ? beyond
            : ground.PiecesIn(pair.Stands).SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray();
    }

    private KillClaim[] ClaimsOf(IEnumerable<WindowMaker.Cell> cells) => cells.SelectMany(maker.ClaimsIn).Select(claim => claim.Claim).Distinct().ToArray();

    /// <summary>Of the claims that kill in the shortest time, those that ask so long.</summary>
    private KillClaim[] Binding(Pair pair)
    {
        var claims = maker.ClaimsIn(new WindowMaker.Cell(pair.Set, pair.Kills));
        var binding = claims.Where(claim => claim.Box.ContactTime.From is { } from && pair.Kills.ContactTime.From is { } shortest
            && from.CompareTo(shortest) == 0).ToArray();
        return (binding.Length > 0 ? binding : claims).Select(claim => claim.Claim).Distinct().ToArray();
    }

    private decimal Longest(Pair pair) => maker.AskedExposureTime ?? Longest(pair.Stands);

    private static decimal Longest(in Box<Stretch> stands) => stands.ExposureTime.To?.Value ?? Interval.WithoutEnd;

    /// <summary>Whether the two differ in time only.</summary>
    private static bool MeetAtOnce(Pair pair) => MeetInStrength(pair) && pair.Stands.Temperature.Meets(pair.Kills.Temperature)
        && pair.Stands.Ph.Meets(pair.Kills.Ph);

    /// <summary>Whether the two differ in time and conditions only.</summary>
    private static bool MeetInStrength(Pair pair) =>
        pair.Stands.Dilution.Meets(pair.Kills.Dilution) && pair.Stands.Uses.Meets(pair.Kills.Uses) && pair.Stands.Strength.Meets(pair.Kills.Strength);

    private static string Joined(IEnumerable<ApplicationMethod> methods) => MethodSet.Of(methods.Distinct().ToArray()).ToString();
}
