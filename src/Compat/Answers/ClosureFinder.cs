namespace Compat.Answers;

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

        var pairs = (from kill in kills from stand in stands where stand.Methods.Contains(kill.Method) select new Pair(kill.Set, kill.Method, stand, kill.Box)).ToArray();
        if (pairs.Length == 0)
        {
            return new WindowClosure
            {
                Code = ClosureCode.OtherMethods,
                Arguments = [Joined(kills.Select(kill => kill.Method)), Joined(stands.Select(stand => stand.Methods.Driest))],
                Rules = ground.Methods.SelectMany(method => ground.Closed(method)).SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray(),
                Claims = ClaimsOf(kills),
            };
        }

        var atOnce = pairs.Where(pair => MeetAtOnce(pair)).ToArray();
        if (atOnce.Length > 0) return TooShort(atOnce);
        var code = pairs.Any(pair => MeetInStrength(pair)) ? ClosureCode.OtherConditions : ClosureCode.OtherStrength;
        return new WindowClosure { Code = code, Rules = Bounding(pairs[0]), Claims = ClaimsOf(pairs.Select(pair => new WindowMaker.Cell(pair.Set, pair.Kills))) };
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
        var byMaterials = closed.Any(p => p.Verdict == Verdict.Allowed) && ground.Methods.Any(method => ground.Boxes(method, ground.Closed(method).Where(p => p.Verdict != Verdict.Allowed).Select(p => ground.Axes.Freed(p.Box))).Count > 0);
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
    /// What of a product closes the part by itself: what is forbidden, else what is not known to be stood; where nothing does so by itself, all that is forbidden.
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
            return all.Where(one => !one.OnlyForbids || !all.Any(other => !other.OnlyForbids && !other.Unknown && ground.Gathering.Base.Agents.IsAtOrBelow(other.Agent, one.Agent)))
                .Select(one => one.Name).OfType<string>().Distinct().OrderBy(name => name, StringComparer.Ordinal).ToArray();
        }
    }

    /// <summary>Whether instructions that list all they allow do not list it.</summary>
    private static bool IsNotListed(Piece piece) => piece.Verdict == Verdict.NotAllowed && piece.Decision.Reasons.Any(reason => reason.Code == Answers.ReasonCode.NotListed);

    /// <summary>Whether the method, or a rule on the whole product, forbids it whatever is in it.</summary>
    private static bool IsOfAll(Piece piece) => piece.Verdict == Verdict.NotAllowed && (piece.Component is null || piece.Decision.Deciding.Any(rule => !rule.Allows && rule.Agent < 0));

    /// <summary>Whether pieces leave no exposure open on any method.</summary>
    private bool Alone(IEnumerable<Piece> pieces)
    {
        var byMethod = pieces.ToLookup(p => p.Method);
        return ground.Methods.All(method => ground.Boxes(method, byMethod[method].Select(p => ground.Axes.Freed(p.Box))).Count == 0);
    }

    /// <summary>The rules that end the exposure time of what the part stands: that forbid beyond it, else those that permit up to there.</summary>
    private RuleId[] Bounding(Pair pair)
    {
        var beyond = ground.Closed(pair.Method).Where(p => p.Verdict == Verdict.NotAllowed && pair.Stands.ExposureTime.To is { } to && p.Box.ExposureTime.From is { } from && from.CompareTo(to) == 0)
            .SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray();
        return beyond.Length > 0 ? beyond
            : ground.PiecesIn(pair.Stands).SelectMany(p => p.Decision.Deciding).Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray();
    }

    private KillClaim[] ClaimsOf(IEnumerable<WindowMaker.Cell> cells) => cells.SelectMany(maker.ClaimsIn).Select(claim => claim.Claim).Distinct().ToArray();

    /// <summary>Of the claims that kill in the shortest time, those that ask so long.</summary>
    private KillClaim[] Binding(Pair pair)
    {
        var claims = maker.ClaimsIn(new WindowMaker.Cell(pair.Set, pair.Kills));
        var binding = claims.Where(claim => claim.Box.ContactTime.From is { } from && pair.Kills.ContactTime.From is { } shortest && from.CompareTo(shortest) == 0).ToArray();
        return (binding.Length > 0 ? binding : claims).Select(claim => claim.Claim).Distinct().ToArray();
    }

    private decimal Longest(Pair pair) => maker.AskedExposureTime ?? Longest(pair.Stands);

    private static decimal Longest(in Box<Stretch> stands) => stands.ExposureTime.To?.Value ?? Interval.WithoutEnd;

    /// <summary>Whether the two differ in time only.</summary>
    private static bool MeetAtOnce(Pair pair) => MeetInStrength(pair) && pair.Stands.Temperature.Meets(pair.Kills.Temperature) && pair.Stands.Ph.Meets(pair.Kills.Ph);

    /// <summary>Whether the two differ in time and conditions only.</summary>
    private static bool MeetInStrength(Pair pair) =>
        pair.Stands.Dilution.Meets(pair.Kills.Dilution) && pair.Stands.Uses.Meets(pair.Kills.Uses) && pair.Stands.Strength.Meets(pair.Kills.Strength);

    private static string Joined(IEnumerable<ApplicationMethod> methods) => MethodSet.Of(methods.Distinct().ToArray()).ToString();
}
