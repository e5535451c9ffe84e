using Compat.Curation.Diagnostics;
using Compat.Curation.Recorded;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>A recorded answer that HEAD no longer gives.</summary>
/// <param name="Difference">What was recorded and what is answered now.</param>
/// <param name="Causes">The edits that may have made it so; empty where it was so in BASE, or where the change lies in the site files.</param>
/// <param name="WasStale">Whether BASE gave it no more either, and HEAD permits no less than BASE did.</param>
public sealed record StaleAnswer(AnswerDifference Difference, IReadOnlyList<RecordEdit> Causes, bool WasStale);

/// <summary>A plan of which answers no longer hold.</summary>
/// <param name="Plan">The plan, or dossier.</param>
/// <param name="Answers">The answers that no longer hold: those that BASE still gave first, of these what tightened first, then by step.</param>
public sealed record StalePlan(RecordedFile Plan, IReadOnlyList<StaleAnswer> Answers)
{
    /// <summary>
    /// Whether it goes stale between BASE and HEAD: an answer that BASE gave is no longer given, or one that it did not give permits less still.
    /// </summary>
    public bool GoesStale => Answers.Any(answer => !answer.WasStale);

    /// <summary>How pressing the worst of it is.</summary>
    public Standing Worst => Answers.Min(answer => answer.Difference.Standing);

    /// <summary>The plans of which answers no longer hold in HEAD: those that go stale first, the most pressing of them first.</summary>
    /// <param name="plans">Plans and dossiers written earlier.</param>
    /// <param name="before">BASE.</param>
    /// <param name="after">HEAD.</param>
    /// <param name="edits">All records that differ between them.</param>
    /// <param name="faults">Takes questions that the program cannot have written.</param>
    internal static IReadOnlyList<StalePlan> Of(IReadOnlyList<RecordedFile> plans, KnowledgeBase before, KnowledgeBase after, IReadOnlyList<RecordEdit> edits,
        List<Diagnostic> faults)
    {
        var causes = new StaleCauses(after, edits);
        return plans.SelectMany(plan => plan.Plans.Prepend(plan)).Select(plan =>
        {
            var stale = Reasking.Of(plan, after, faults).Where(one => one.IsStale).ToArray();
            return new StalePlan(plan, stale.Select(Answer).OrderBy(one => one.WasStale).ThenBy(one => one.Difference.Standing)
                .ThenBy(one => one.Difference.Recorded.Step).ToArray());
        }).Where(plan => plan.Answers.Count > 0).OrderBy(plan => !plan.GoesStale).ThenBy(plan => plan.Worst)
            .ThenBy(plan => plan.Plan.Path, StringComparer.Ordinal).ToArray();

        StaleAnswer Answer(AnswerDifference difference)
        {
            var inBase = Reasking.Of(difference.Recorded, before, "", []);
            var wasStale = inBase is not { IsStale: false } && !PermitsLess(difference, inBase);
            return new(difference, wasStale ? [] : causes.Of(difference), wasStale);
        }
    }

    /// <summary>Whether HEAD permits less than BASE did, where neither gives what was recorded.</summary>
    private static bool PermitsLess(AnswerDifference inHead, AnswerDifference? inBase) =>
        inBase?.Present is { } was && (inHead.Present is not { } now || AnswerDifference.Between(was, now).Standing == Standing.Tightened);
}

/// <summary>Finds the edits that a stale answer goes back to.</summary>
internal sealed class StaleCauses
{
    private readonly KnowledgeBase _kb;
    private readonly RecordEdit[] _edits;

    public StaleCauses(KnowledgeBase kb, IReadOnlyList<RecordEdit> edits) => (_kb, _edits) = (kb, edits.Where(edit => !edit.IsWording).ToArray());

    /// <summary>
    /// The edits of what decided then or decides now; where none of these was edited, those of the facts it was asked about; else all that can decide.
    /// </summary>
    public IReadOnlyList<RecordEdit> Of(AnswerDifference difference)
    {
        var (was, now) = (difference.Recorded, difference.Present);
        var deciders = Ids(was).Concat(now is null ? [] : Ids(now)).ToHashSet();
        var found = _edits.Where(edit => deciders.Contains((edit.Kind, edit.Id)) || (edit.FormerId is { } former && deciders.Contains((edit.Kind, former))))
            .ToArray();
        if (found.Length > 0) return found;
        var facts = Facts(was.Question).ToHashSet();
        found = _edits.Where(edit => facts.Contains((edit.Kind, edit.Id))).ToArray();
        return found.Length > 0 ? found
            : _edits.Where(edit => edit.Kind is not (RecordKind.StandingRule or RecordKind.Occasion or RecordKind.Protection)).ToArray();
    }

    private static IEnumerable<(RecordKind Kind, string Id)> Ids(RecordedAnswer answer) => answer.Rules.Select(id => (RecordKind.Rule, id.Value))
        .Concat(answer.PersonRules.Select(id => (RecordKind.PersonRule, id.Value))).Concat(answer.Claims.Select(id => (RecordKind.Claim, id)));

    private IEnumerable<(RecordKind Kind, string Id)> Facts(Question question)
    {
        var kb = _kb.Compiled;
        if (question.Device is { } id && kb.Devices.TryGetValue(id, out var device)
            && device.Parts.FirstOrDefault(one => one.Id == question.DevicePart) is { } part)
        {
            foreach (var type in part.OneOfTypes)
                foreach (var node in kb.Parts.Upward(kb.Parts[type.Value])) yield return (RecordKind.Part, kb.Data.Parts[node].Id.Value);
            foreach (var material in part.OneOfTypes.SelectMany(type => kb.Part(kb.Parts[type.Value]).Materials).Concat(part.Materials ?? [])
                .SelectMany(slot => slot.OneOf))
                foreach (var node in kb.Materials.Upward(kb.Materials[material.Value])) yield return (RecordKind.Material, kb.Data.Materials[node].Id.Value);
        }

        if (question.Product is not { } product || !kb.Records.Products.TryGetValue(product, out var mixture)) yield break;
        foreach (var agent in mixture.Ingredients.Select(ingredient => ingredient.Agent).OfType<AgentId>())
            foreach (var node in kb.Agents.Upward(kb.Agents[agent.Value])) yield return (RecordKind.Agent, kb.Data.Agents[node].Id.Value);
    }
}
