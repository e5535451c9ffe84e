using Compat.Curation.Checking;
using Compat.Efficacy;
using Compat.Evaluation;
using Compat.Exposures;
using Compat.Knowledge;

namespace Compat.Curation.Reviewing;

/// <summary>Compares claims as boxes: where a level or a group of organisms is reached on one side and not on the other.</summary>
internal sealed class ClaimReview(ReviewTrees trees)
{
    /// <summary>What an edit of a claim changes.</summary>
    public IEnumerable<FactChange> Of(Claim? before, Claim? after)
    {
        if (after is not null && NotReached(after, isBefore: false) is var (more, with))
            yield return new(ChangeKind.EfficacyLoosened, $"{more}, with less than before: {with}", Weight(after, isBefore: false));
        if (before is not null && NotReached(before, isBefore: true) is var (less, without)) yield return new(ChangeKind.Tightened, $"no longer {less}: {without}");
        if (before is null || after is null) yield break;
        var spared = before.DoesNotKill.Except(after.DoesNotKill).ToArray();
        if (spared.Length > 0) yield return new(ChangeKind.EfficacyLoosened, $"`{after.Id}` no longer says that it does not kill {List(spared)}", Weight(after, isBefore: false));
        if (Weight(after, false) < Weight(before, true)) yield return new(ChangeKind.EvidenceWeakened, $"`{after.Id}` rests on {Words.Of(Weight(after, false))}, before on {Words.Of(Weight(before, true))}", Weight(after, false));
        if (!RecordDifference.AreSame(before.Bath, after.Bath) && before.Bath is not null) yield return new(ChangeKind.EfficacyLoosened, $"the bath of `{after.Id}` is kept otherwise", Weight(after, isBefore: false));
    }

    /// <summary>What a convention that fills in what claims leave out changes.</summary>
    public IEnumerable<FactChange> OfConvention(ConventionKey key)
    {
        if (key is not (ConventionKey.ClaimTemperature or ConventionKey.ClaimMethods)) yield break;
        var silent = trees.Of(isBefore: false).Claims.Where(claim => key == ConventionKey.ClaimMethods ? claim.When.Methods.Statement == AxisStatement.Unstated : claim.When.Temperature.Statement == AxisStatement.Unstated);
        foreach (var claim in silent)
            if (NotReached(claim, isBefore: false) is var (more, with)) yield return new(ChangeKind.EfficacyLoosened, $"{more}, with less than before: {with}", Weight(claim, isBefore: false));
    }

    /// <summary>Where a claim of one side reaches what no claim of the other side does, in words; null where there is no such place.</summary>
    private (string What, string Where)? NotReached(Claim claim, bool isBefore)
    {
        if (!HoldsByHand(claim)) return null;
        var own = trees.Of(isBefore);
        var others = trees.Of(!isBefore).Claims.Where(other => HoldsByHand(other) && Speaks(other, claim, !isBefore)).ToArray();
        var targets = claim.Kills.Select(target => (Name: $"`{target}`", Reaches: (Func<Claim, bool>)(other => other.Kills.Contains(target) && !other.DoesNotKill.Contains(target))));
        if (claim.Reaches is { } level) targets = targets.Prepend((Name: Words.Of(level), Reaches: other => other.Reaches >= level));
        var left = new List<(string Name, ApplicationMethod Method, Span[] Box)>();
        foreach (var (name, reaches) in targets)
        {
            foreach (var method in Methods(claim, own).Methods)
            {
                var holes = others.Where(other => reaches(other) && Methods(other, trees.Of(!isBefore)).Contains(method)).Select(other => Box(other, trees.Of(!isBefore)));
                left.AddRange(Subtraction.MaximalBoxes(Box(claim, own), holes, anchored: -1).Select(box => (name, method, box)));
            }
        }

        if (left.Count == 0) return null;
        var first = left[0].Box;
        var methods = left.Where(one => one.Name == left[0].Name).Select(one => Words.Of(one.Method)).Distinct();
        var basis = own.Agents.FirstOrDefault(agent => agent.Id == claim.Agent)?.Basis;
        var box = BoxLine.Of(new ExposureBox { Strength = Limit(first[0]), Temperature = Limit(first[2]), Ph = Limit(first[3]) }, basis);
        return ("reached: " + string.Join(", ", left.Select(one => one.Name).Distinct()), $"by `{claim.Agent}` at wet time {first[1].ToInterval().ToString("s")}{(box == "every exposure" ? "" : "; " + box)}; methods {string.Join(", ", methods)}{(claim.Needs.Count == 0 ? "" : "; needs " + string.Join(", ", claim.Needs.Select(Words.Of)))} (`{claim.Id}`)");
    }

    /// <summary>Whether a claim speaks wherever another does: of its agent, its parts, its soil, with nothing more needed.</summary>
    private bool Speaks(Claim claim, Claim where, bool isBefore) =>
        trees.IsAtOrBelow(where.Agent, claim.Agent, isBefore) && trees.AreCovered(where.For, claim.For, isBefore)
        && RecordDifference.AreSame(claim.With, where.With) && claim.Needs.All(where.Needs.Contains) && where.StandsSoil.All(claim.StandsSoil.Contains);

    /// <summary>Whether a claim meets anything at all: one that was refuted, or holds in a machine only, does not.</summary>
    private static bool HoldsByHand(Claim claim) => claim.Refuted is null && claim.Where is null;

    private static MethodSet Methods(Claim claim, KnowledgeData data) => claim.When.Methods.Statement switch
    {
        AxisStatement.Within => claim.When.Methods.Methods,
        AxisStatement.Unstated => data.Conventions.FirstOrDefault(one => one.Key == ConventionKey.ClaimMethods)?.Methods ?? MethodSet.None,
        _ => MethodSet.All,
    };

    private static Span[] Box(Claim claim, KnowledgeData data) =>
    [
        Span.Of(Range(claim.When.Strength, Interval.Whole)), Span.Of(Range(claim.When.WetTime, Interval.Whole)),
        Span.Of(Range(claim.When.Temperature, data.Conventions.FirstOrDefault(one => one.Key == ConventionKey.ClaimTemperature)?.Range ?? Interval.Whole)),
        Span.Of(Range(claim.When.Ph, Interval.Whole)), Span.Of(Range(claim.When.Dilution, Interval.Whole)),
    ];

    private static Interval Range(AxisLimit limit, Interval unstated) => limit.Statement switch
    {
        AxisStatement.Within => limit.Range,
        AxisStatement.Unstated => unstated,
        _ => Interval.Whole,
    };

    private static AxisLimit Limit(Span span) => span.From is null && span.To is null ? default : AxisLimit.Within(span.ToInterval());

    private EvidenceWeight Weight(Claim claim, bool isBefore)
    {
        var sources = trees.Of(isBefore).Sources.Where(source => claim.Sources.Contains(source.Id));
        return (EvidenceWeight)sources.Select(Effect.Weight).DefaultIfEmpty(0).Max();
    }

    private static string List(IEnumerable<OrganismTarget> targets) => string.Join(", ", targets.Select(target => $"`{target}`"));
}
