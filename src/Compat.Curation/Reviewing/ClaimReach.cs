using Compat.Curation.Checking;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>
/// Asks for every agent, on every part and on none, which claims hold, on both sides, and compares them as boxes: where a level or a group of organisms is
/// reached on one side only.
/// </summary>
internal sealed class ClaimReach(ReachSides sides, FactList found)
{
    private readonly Dictionary<string, IReadOnlyList<Said>> _known = [];
    private readonly bool _fillsOtherwise = sides.IsEdited(RecordKind.Convention, Words.Of(ConventionKey.ClaimTemperature))
        || sides.IsEdited(RecordKind.Convention, Words.Of(ConventionKey.ClaimMethods));

    private sealed record Said(ChangeKind Kind, string Text, IReadOnlyList<string> Claims, EvidenceWeight? Evidence = null);

    public static void Look(ReachSides sides, FactList found)
    {
        if (sides.AnyEdited(RecordKind.Claim, RecordKind.Agent, RecordKind.Part, RecordKind.Convention, RecordKind.Source)) new ClaimReach(sides, found).Look();
    }

    private void Look()
    {
        foreach (var agent in sides.After.Data.Agents.Select(one => one.Id.Value).Order(StringComparer.Ordinal))
        {
            var (ofBefore, ofAfter) = (Claims(true, agent), Claims(false, agent));
            var units = sides.UnitsOf(agent);
            if (ofBefore.Length + ofAfter.Length == 0
                || (units.IsOne && !_fillsOtherwise && !sides.AnyEdited(RecordKind.Part) && AreSame(ofBefore, ofAfter))) continue;
            var general = Look(agent, null, ofBefore, ofAfter, units, []);
            if (ofBefore.Concat(ofAfter).All(claim => claim.For.Count == 0)) continue;
            foreach (var part in sides.Parts) Look(agent, part, ofBefore, ofAfter, units, general);
        }
    }

    private bool AreSame(Claim[] was, Claim[] now) =>
        was.Select(claim => claim.Id).SequenceEqual(now.Select(claim => claim.Id)) && now.All(claim => !IsEdited(claim));

    private bool IsEdited(Claim claim) =>
        sides.IsEdited(RecordKind.Claim, claim.Id.Value) || claim.Sources.Any(source => sides.IsEdited(RecordKind.Source, source.Value));

    /// <summary>What is said of an agent on a part, but for what is said of it on every part.</summary>
    private IReadOnlyList<Said> Look(string agent, string? part, Claim[] ofBefore, Claim[] ofAfter, UnitPair units, IReadOnlyList<Said> general)
    {
        var was = ofBefore.Where(claim => sides.IsFor(true, claim.For, part)).ToArray();
        var now = ofAfter.Where(claim => sides.IsFor(false, claim.For, part)).ToArray();
        var key = $"{string.Join(" ", was.Select(claim => claim.Id))}|{string.Join(" ", now.Select(claim => claim.Id))}|{units}";
        if (!_known.TryGetValue(key, out var said)) _known[key] = said = Compare(was, now, units).ToArray();
        var place = new FactPlace(agent, null, part);
        foreach (var one in said.Where(one => !general.Any(other => other.Kind == one.Kind && other.Text == one.Text)))
            found.Add(RecordKind.Claim, one.Kind, one.Text, place, Causes(one, agent, part), one.Evidence);
        return said;
    }

    private IEnumerable<RecordEdit> Causes(Said said, string agent, string? part)
    {
        var own = said.Claims.Select(id => sides.EditOf(RecordKind.Claim, id)).OfType<RecordEdit>().ToArray();
        if (own.Length > 0) return own;
        var fills = new[] { ConventionKey.ClaimTemperature, ConventionKey.ClaimMethods }.Select(key => sides.EditOf(RecordKind.Convention, Words.Of(key)));
        var sources = new[] { sides.Before, sides.After }.SelectMany(kb => kb.Data.Claims.Where(claim => said.Claims.Contains(claim.Id.Value)))
            .SelectMany(claim => claim.Sources).Select(source => sides.EditOf(RecordKind.Source, source.Value));
        return found.Causes(RecordKind.Claim, [], [agent], part).Concat(fills.Concat(sources).OfType<RecordEdit>());
    }

    private IEnumerable<Said> Compare(Claim[] was, Claim[] now, UnitPair units)
    {
        foreach (var claim in now)
        {
            if (NotReached(claim, was, isBefore: false, units) is not var (more, with)) continue;
            yield return new(ChangeKind.EfficacyLoosened, $"{more}, with less than before: {with}", [claim.Id.Value], Weight(claim, isBefore: false));
        }

        foreach (var claim in was)
        {
            if (NotReached(claim, now, isBefore: true, units) is var (less, without))
                yield return new(ChangeKind.Tightened, $"no longer {less}: {without}", [claim.Id.Value]);
        }

        var spared = was.SelectMany(claim => claim.DoesNotKill).Except(now.SelectMany(claim => claim.DoesNotKill)).ToArray();
        foreach (var claim in was.Where(claim => claim.DoesNotKill.Any(spared.Contains)))
            yield return new(ChangeKind.EfficacyLoosened,
                $"`{claim.Id}` no longer says that it does not kill {List(claim.DoesNotKill.Where(spared.Contains))}", [claim.Id.Value]);
        var denied = now.SelectMany(claim => claim.DoesNotKill).Except(was.SelectMany(claim => claim.DoesNotKill)).ToArray();
        foreach (var claim in now.Where(claim => claim.DoesNotKill.Any(denied.Contains)))
            yield return new(ChangeKind.Tightened, $"`{claim.Id}` says that it does not kill {List(claim.DoesNotKill.Where(denied.Contains))}",
                [claim.Id.Value]);
        foreach (var claim in now)
        {
            if (was.FirstOrDefault(one => one.Id == claim.Id) is not { } former) continue;
            var (weighs, weighed) = (Weight(claim, false), Weight(former, true));
            if (weighs < weighed)
                yield return new(ChangeKind.EvidenceWeakened, $"`{claim.Id}` rests on {Words.Of(weighs)}, before on {Words.Of(weighed)}", [claim.Id.Value],
                    weighs);
            if (former.Bath is not null && !RecordDifference.AreSame(former.Bath, claim.Bath))
                yield return new(ChangeKind.EfficacyLoosened, $"the bath of `{claim.Id}` is kept otherwise", [claim.Id.Value], weighs);
        }
    }

    /// <summary>Where a claim of one side reaches what no claim of the other side does, in words; null where there is no such place.</summary>
    private (string What, string Where)? NotReached(Claim claim, Claim[] others, bool isBefore, UnitPair units)
    {
        var (own, other) = (sides.Of(isBefore), sides.Of(!isBefore));
        var speaking = others.Where(one => AsksNoMore(one, claim) && (units.IsOne || one.When.Strength.Statement != AxisStatement.Within)).ToArray();
        var targets = claim.Kills
            .Select(target => (Name: $"`{target}`", Reaches: (Func<Claim, bool>)(one => one.Kills.Contains(target) && !one.DoesNotKill.Contains(target))));
        if (claim.Reaches is { } level) targets = targets.Prepend((Name: Words.Of(level), Reaches: one => one.Reaches >= level));
        var left = new List<(string Name, ApplicationMethod Method, Box<Stretch> Box)>();
        foreach (var (name, reaches) in targets)
        {
            foreach (var method in Methods(claim, own).Methods)
            {
                var holes = speaking.Where(one => reaches(one) && Methods(one, other).Contains(method)).Select(one => Box(one, other));
                left.AddRange(Subtraction.MaximalBoxes(Box(claim, own) with { Methods = MethodSet.Of(method) }, holes).Select(box => (name, method, box)));
            }
        }

        if (left.Count == 0) return null;
        var first = left[0].Box;
        var methods = left.Where(one => one.Name == left[0].Name).Select(one => Words.Of(one.Method)).Distinct();
        var box = BoxLine.Of(new ExposureBox
        {
            Strength = BoxValues.Limit(first.Strength),
            Dilution = BoxValues.Limit(first.Dilution),
            Temperature = BoxValues.Limit(first.Temperature),
            Ph = BoxValues.Limit(first.Ph)
        }, units.Of(isBefore));
        var needs = claim.Needs.Count == 0 ? "" : "; needs " + string.Join(", ", claim.Needs.Select(Words.Of));
        return ("reached: " + string.Join(", ", left.Select(one => one.Name).Distinct()),
            $"by `{claim.Agent}` at contact time {first.ContactTime.ToInterval().ToString("s")}{(box == "every exposure" ? "" : "; " + box)}; "
                + $"methods {string.Join(", ", methods)}{needs} (`{claim.Id}`)");
    }

    /// <summary>
    /// Whether a claim holds wherever another does, as far as its box goes: nothing more is needed or mixed in. A field that none of these lines names must be
    /// the same, or left out on both.
    /// </summary>
    private static bool AsksNoMore(Claim one, Claim other) =>
        RecordDifference.AreSame(one.With, other.With) && (other.For.Count == 0 || one.For.Count > 0)
            && (Reach.IsOfGuideline(one) || !Reach.IsOfGuideline(other)) && one.Needs.All(other.Needs.Contains) && other.StandsSoil.All(one.StandsSoil.Contains)
        && RecordDifference.AreSameBut(
            one, other, nameof(one.Agent), nameof(one.With), nameof(one.When), nameof(one.Reaches), nameof(one.Kills), nameof(one.For), nameof(one.DoesNotKill),
            nameof(one.Needs), nameof(one.StandsSoil), nameof(one.Bath), nameof(one.Refuted), nameof(one.Kind), nameof(one.Sources));

    private Claim[] Claims(bool isBefore, string agent) => sides.Saying(isBefore, agent, (kb, node) => Reach.Claims(kb, node).OrderBy(claim => claim.Id));

    private static MethodSet Methods(Claim claim, CompiledBase kb) => claim.When.Methods.Statement switch
    {
        AxisStatement.Within => claim.When.Methods.Methods,
        AxisStatement.Unstated => kb.Data.Conventions.FirstOrDefault(one => one.Key == ConventionKey.ClaimMethods)?.Methods ?? MethodSet.None,
        _ => MethodSet.All,
    };

    private static Box<Stretch> Box(Claim claim, CompiledBase kb) => Box<Stretch>.Whole with
    {
        Methods = Methods(claim, kb),
        Strength = Stretch.Of(Range(claim.When.Strength, Interval.Whole)),
        ContactTime = Stretch.Of(Range(claim.When.ContactTime, Interval.Whole)),
        Temperature = Stretch.Of(Range(claim.When.Temperature, kb.Data.Conventions.FirstOrDefault(one => one.Key == ConventionKey.ClaimTemperature)?.Range
            ?? Interval.Whole)),
        Ph = Stretch.Of(Range(claim.When.Ph, Interval.Whole)),
        Dilution = Stretch.Of(Range(claim.When.Dilution, Interval.Whole)),
    };

    private static Interval Range(AxisLimit limit, Interval unstated) => limit.Statement switch
    {
        AxisStatement.Within => limit.Range,
        AxisStatement.Unstated => unstated,
        _ => Interval.Whole,
    };

    private EvidenceWeight Weight(Claim claim, bool isBefore) =>
        (EvidenceWeight)claim.Sources.Select(id => sides.Of(isBefore).SourcesById.TryGetValue(id, out var source) ? Effect.Weight(source) : 0).DefaultIfEmpty(0)
            .Max();

    private static string List(IEnumerable<OrganismTarget> targets) => string.Join(", ", targets.Distinct().Select(target => $"`{target}`"));
}
