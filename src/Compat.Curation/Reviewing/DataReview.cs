using Compat.Curation.Checking;
using Compat.Instructions;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Compares two knowledge bases by what they answer: exactly, over every part, agent, method and exposure.</summary>
/// <remarks>Safe to call from several threads. Both must have passed validation.</remarks>
public static class DataReview
{
    /// <summary>Compares two knowledge bases.</summary>
    /// <param name="before">BASE.</param>
    /// <param name="beforeSites">The sites over BASE.</param>
    /// <param name="after">HEAD.</param>
    /// <param name="afterSites">The sites over HEAD.</param>
    /// <param name="progress">Told what is looked at; null where nobody watches.</param>
    /// <exception cref="TooManyBoxesException">One pair of part and agent needs more than 100,000 boxes.</exception>
    public static ReviewReport Run(KnowledgeData before, IReadOnlyList<Site> beforeSites, KnowledgeData after, IReadOnlyList<Site> afterSites,
        Action<string>? progress = null) =>
        Run(before, beforeSites, after, afterSites, [], progress);

    /// <summary>The same with changes of what stands beside the knowledge base.</summary>
    internal static ReviewReport Run(
        KnowledgeData before, IReadOnlyList<Site> beforeSites, KnowledgeData after, IReadOnlyList<Site> afterSites,
            IReadOnlyList<(RecordEdit? Cause, FactChange Change)> beside, Action<string>? progress)
    {
        progress?.Invoke("records");
        var edits = EditList.Between(before, after);
        var sites = beforeSites.Select(edits.Renames.In).ToArray();
        progress?.Invoke("rules");
        var (was, now) = Sides(edits.Before, sites, after, afterSites);
        progress?.Invoke("what reaches each agent and part");
        var ofSites = SiteReview.Edits(sites, afterSites);
        var facts = FactReview.Of(edits, was.Kb, now.Kb).Concat(SiteReview.Of(ofSites, was.Kb, now.Kb)).Concat(beside).ToArray();
        if (!edits.All.Any(EditApplication.Decides) && ofSites.Count == 0)
            return Report([], 0);

        var rules = new RuleSameness(was.Kb, now.Kb);
        var pairs = new AffectedPairs(was, now, rules).Find();
        progress?.Invoke($"{pairs.Count} pairs of part and agent");
        var changes = Compare(was, now, rules, pairs);
        progress?.Invoke("causes");
        var join = new ChangeJoin(now);
        var answers = new Attribution(was, now, edits, sites, ofSites).Of(changes).SelectMany(join.Of).ToArray();
        return Report(answers, pairs.Count);

        ReviewReport Report(IReadOnlyList<(IReadOnlyList<RecordEdit> Causes, AnswerChange Change)> changes, int compared)
        {
            progress?.Invoke("standing rules");
            return new()
            {
                Groups = Groups(changes, facts, after),
                Edits = [.. edits.All, .. ofSites, .. beside.Select(one => one.Cause).OfType<RecordEdit>().Distinct()],
                Contradictions = new Contradictions(now.Ground).Find(withRefinements: false).ToArray(),
                BrokenStandingRules = new StandingRules(now.Ground).Find().Where(finding => finding.IsFault).ToArray(),
                Compared = compared,
            };
        }
    }

    /// <summary>The changes alone, cell by cell, without their causes.</summary>
    internal static IReadOnlyList<PairChanges> Compare(ReviewSide was, ReviewSide now, RuleSameness rules, IReadOnlyList<ReviewPair> pairs)
    {
        var found = new PairChanges?[pairs.Count];
        try
        {
            Parallel.For(0, pairs.Count, i => found[i] = Compare(was, now, rules, pairs[i]));
        }
        catch (AggregateException several) when (several.InnerException is TooManyBoxesException tooMany)
        {
            throw new TooManyBoxesException(tooMany.Message, several);
        }

        return found.OfType<PairChanges>().ToArray();
    }

    /// <summary>Two knowledge bases, their devices asked with the same serial numbers.</summary>
    /// <param name="before">BASE.</param>
    /// <param name="beforeSites">The sites over BASE.</param>
    /// <param name="after">HEAD.</param>
    /// <param name="afterSites">The sites over HEAD.</param>
    /// <param name="serials">The serial numbers with which devices are asked; null for those that these two tell apart.</param>
    internal static (ReviewSide Before, ReviewSide After) Sides(
        KnowledgeData before, IReadOnlyList<Site> beforeSites, KnowledgeData after, IReadOnlyList<Site> afterSites, TellingSerials? serials = null)
    {
        var was = new CompiledBase(before, beforeSites, PhraseRules.Of(before, beforeSites).Rules);
        var now = new CompiledBase(after, afterSites, PhraseRules.Of(after, afterSites).Rules);
        serials ??= new TellingSerials(was, now);
        return (new ReviewSide(was, serials, isBefore: true), new ReviewSide(now, serials, isBefore: false));
    }

    private static PairChanges? Compare(ReviewSide was, ReviewSide now, RuleSameness rules, ReviewPair pair)
    {
        try
        {
            var comparison = new PairComparison(was, now, rules, pair);
            if (!comparison.CanDiffer) return null;
            var changes = MethodSet.All.Methods.SelectMany(comparison.Of).ToArray();
            return changes.Length == 0 ? null : new PairChanges(pair, changes, comparison.Rules.ToArray());
        }
        catch (TooManyBoxesException tooMany)
        {
            throw new TooManyBoxesException($"{tooMany.Message} between `{pair.After.Name}` and `{pair.AgentId}`", tooMany);
        }
    }

    private static ReviewGroup[] Groups(
        IReadOnlyList<(IReadOnlyList<RecordEdit> Causes, AnswerChange Change)> answers, IReadOnlyList<(RecordEdit? Cause, FactChange Change)> facts,
            KnowledgeData after)
    {
        var damage = after.Conventions.FirstOrDefault(one => one.Key == ConventionKey.DamageOrder)?.Consequences ?? [];
        var byCause = answers
            .SelectMany(one => one.Causes.Count == 0 ? [(Cause: null, one.Change)] : one.Causes.Select(cause => (Cause: (RecordEdit?)cause, one.Change)));
        var kinds = byCause.Select(one => (one.Cause, one.Change.Kind)).Concat(facts.Select(one => (one.Cause, one.Change.Kind))).Distinct();
        var answersOf = byCause.ToLookup(one => (one.Cause, one.Change.Kind), one => one.Change);
        var factsOf = facts.ToLookup(one => (one.Cause, one.Change.Kind), one => one.Change);
        return kinds.Select(key => new ReviewGroup
        {
            Kind = key.Kind,
            Cause = key.Cause,
            Answers = answersOf[key].OrderBy(change => change.Step).ThenByDescending(Spared).ThenBy(change => change.EvidenceAfter)
                .ThenBy(change => change.SubjectKind == SubjectKind.Material)
                .ThenByDescending(change => change.Size).ThenBy(change => change.Subject, StringComparer.Ordinal).ThenBy(change => change.Agent).ToArray(),
            Facts = factsOf[key].ToArray(),
        }).OrderBy(group => group.Kind).ThenBy(group => group.Cause?.Kind != RecordKind.StandingRule).ThenBy(Step)
            .ThenByDescending(group => HarmsPeople(group) ? damage.Count : group.Answers.Count == 0 ? -1 : Spared(group.Answers[0]))
            .ThenBy(group => group.Answers.Count == 0 ? EvidenceWeight.Practice : group.Answers[0].EvidenceAfter).ThenByDescending(group => group.Answers.Count)
            .ThenBy(group => group.Cause is null).ThenBy(group => group.Cause?.Kind).ThenBy(group => group.Cause?.Id, StringComparer.Ordinal).ToArray();

        // The worst that was prevented, by its place among the milder ones; of what no rule forbade none.
        int Spared(AnswerChange change) => change.Prevented is { } known ? damage.TakeWhile(one => one != known).Count() : -1;
        static AnswerStep Step(ReviewGroup group) =>
            HarmsPeople(group) ? AnswerStep.ForbiddenToPermitted : group.Answers.Count == 0 ? AnswerStep.NewlyPermitted : group.Answers[0].Step;
        static bool HarmsPeople(ReviewGroup group) => group.Facts.Any(fact => fact.About is RecordKind.Mixing or RecordKind.PersonRule);
    }
}
