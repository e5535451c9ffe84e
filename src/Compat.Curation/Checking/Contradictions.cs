using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Finds every pair of rules that contradict each other, exactly: the boxes where both are live are computed, never sampled.</summary>
internal sealed class Contradictions(Ground ground)
{
    /// <summary>On so many subjects the largest box of a pair is looked for.</summary>
    private const int MostSubjects = 64;
    private readonly Relation _relation = new(ground.Kb);
    private readonly Dictionary<(int, int), Best> _found = [];
    private readonly Dictionary<(int, int), bool> _refines = [];

    /// <summary>All contradictions; with them, where asked, all refinements.</summary>
    public IEnumerable<Finding> Find(bool withRefinements)
    {
        new PairSearch(ground).Search(
            (a, n) => _found.TryGetValue((a, n), out var best) ? best.Seen >= MostSubjects
                : !withRefinements && Refines(ground.Kb.Rules[a], ground.Kb.Rules[n]),
            Look);
        foreach (var ((a, n), best) in _found.OrderBy(pair => pair.Key))
        {
            var (allowed, forbids) = (ground.Kb.Rules[a], ground.Kb.Rules[n]);
            yield return Refines(allowed, forbids) ? Refinement(allowed, forbids, best.Place) : Contradiction(allowed, forbids, best.Place);
        }
    }

    /// <summary>Whether any two rules contradict each other, as a pair of ids; for tests of the search alone.</summary>
    public IReadOnlyCollection<(RuleId Allowed, RuleId Forbids)> Pairs()
    {
        new PairSearch(ground).Search((a, n) => _found.ContainsKey((a, n)) || Refines(ground.Kb.Rules[a], ground.Kb.Rules[n]), Look);
        return _found.Keys.Select(pair => (ground.Kb.Rules[pair.Item1].Rule.Id, ground.Kb.Rules[pair.Item2].Rule.Id)).ToArray();
    }

    private bool Refines(CompiledRule allowed, CompiledRule forbids)
    {
        var key = (allowed.Index, forbids.Index);
        if (!_refines.TryGetValue(key, out var refines)) _refines[key] = refines = _relation.IsStrictlyBelow(forbids, allowed);
        return refines;
    }

    private void Look(Pair pair)
    {
        var key = (pair.Allowed.Index, pair.Forbids.Index);
        foreach (var speaker in Speakers(pair))
        {
            if (Disagreement(pair, speaker) is not { } place) continue;
            var size = place.Size();
            if (!_found.TryGetValue(key, out var best)) _found[key] = new Best(place, size, 1);
            else _found[key] = size > best.Size ? new Best(place, size, best.Seen + 1) : best with { Seen = best.Seen + 1 };
        }
    }

    /// <summary>The agents and products of which both rules speak; of agents among which no rule tells apart, the widest.</summary>
    private IEnumerable<Speaker> Speakers(Pair pair)
    {
        var (allowed, forbids) = (pair.Allowed, pair.Forbids);
        foreach (var speaker in ground.ProductSpeakers)
            if (Speaks(allowed, speaker) && Speaks(forbids, speaker)) yield return speaker;
        if (allowed.Agent < 0 || forbids.Agent < 0) yield break;
        var over = ground.Overriders[allowed.Index].Concat(ground.Overriders[forbids.Index]).ToArray();
        var telling = over.Concat(over.SelectMany(one => ground.Overriders[one.Index])).Distinct().ToArray();
        var seen = new HashSet<string>();
        foreach (var agent in Meeting(allowed, forbids))
        {
            var speaker = ground.SpeakerOf(agent);
            var mark = string.Concat(telling.Select(rule => Speaks(rule, speaker) ? '1' : '0'))
                + (pair.Subject.EndsAlways ? "" : speaker.Substance.LeavesNothing ? "n" : "f");
            if (seen.Add(mark)) yield return speaker;
        }
    }

    private bool Speaks(CompiledRule rule, Speaker speaker) => Reach.Speaks(ground.Kb, rule, speaker.Substance.Product, speaker.Component);

    private IEnumerable<int> Meeting(CompiledRule allowed, CompiledRule forbids)
    {
        var below = allowed.Rule.WholeClass || allowed.SeenWith.Length > 0;
        foreach (var top in Reach.Tops(allowed))
        {
            var from = ground.Agents.IsAtOrBelow(top, forbids.Agent) ? top : below && ground.Agents.IsAtOrBelow(forbids.Agent, top) ? forbids.Agent : -1;
            if (from < 0) continue;
            if (!below) yield return from;
            else foreach (var agent in ground.Agents.Downward(from).ToArray()) yield return agent;
        }
    }

    /// <summary>The largest box, over the methods, at which both rules are live.</summary>
    private Place? Disagreement(Pair pair, Speaker speaker)
    {
        var live = new LiveRegion(ground, pair.Subject, speaker);
        int a = live.Find(pair.Allowed, pair.VoiceOfAllowed), n = live.Find(pair.Forbids, pair.VoiceOfForbids);
        if (a < 0 || n < 0) return null;
        var methods = pair.Allowed.Methods.Intersect(pair.Forbids.Methods).Intersect(pair.Subject.Stood).Methods;
        var byMethod = methods.Select(method => (Method: method, Boxes: live.OfBoth(a, pair.VoiceOfAllowed, n, pair.VoiceOfForbids, method))).ToArray();
        Place? largest = null;
        foreach (var box in byMethod.SelectMany(one => one.Boxes))
        {
            var all = MethodSet.Of(byMethod.Where(one => one.Boxes.Any(other => (box with { Methods = other.Methods }).LiesIn(other))).Select(one => one.Method)
                .ToArray());
            var place = new Place(pair.Subject, speaker, ground.Kb.Grid.ValuesOf(box with { Methods = all }));
            if (largest is null || place.Size() > largest.Size()) largest = place;
        }

        return largest;
    }

    private Finding Contradiction(CompiledRule allowed, CompiledRule forbids, Place place) => new()
    {
        Kind = FindingKind.Contradiction,
        IsFault = true,
        Message = $"`{allowed.Rule.Id}` allows what `{forbids.Rule.Id}` does not allow, and neither is an exception to the other",
        Involved = [Rule(allowed, "allows it"), Rule(forbids, "does not allow it")],
        Subject = place.Subject.Name,
        Agent = place.Speaker.Name(ground.Kb),
        Box = place.ToBox(ground),
        Witness = place.Witness(ground),
        Mends = new MendProposals(ground.Kb, _relation).For(allowed, forbids).ToArray(),
    };

    private Finding Refinement(CompiledRule allowed, CompiledRule forbids, Place place) => new()
    {
        Kind = FindingKind.Refinement,
        IsFault = false,
        Message = $"`{forbids.Rule.Id}` takes a piece out of `{allowed.Rule.Id}`",
        Involved = [Rule(forbids, "does not allow it"), Rule(allowed, "allows it, more widely")],
        Subject = place.Subject.Name,
        Agent = place.Speaker.Name(ground.Kb),
        Box = place.ToBox(ground),
        Witness = place.Witness(ground),
    };

    private static Involved Rule(CompiledRule rule, string label) => new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value), label);

    private sealed record Best(Place Place, double Size, int Seen);
}
