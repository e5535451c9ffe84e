using Compat.Efficacy;
using Compat.Evaluation;
using Compat.Instructions;
using Compat.Knowledge;
using Compat.Mixing;
using Compat.Occasions;
using Compat.People;

namespace Compat.Curation.Reviewing;

/// <summary>Compares what stands beside the rules on parts: claims, person rules, hazards of mixing, needs, standing rules, protection, words of instructions, usual figures.</summary>
internal sealed class FactReview
{
    private readonly KnowledgeData _before;
    private readonly KnowledgeData _after;
    private readonly ClaimReview _claims;
    private readonly PersonReview _persons;
    private readonly RecordReview _records;

    private FactReview(KnowledgeData before, KnowledgeData after)
    {
        (_before, _after) = (before, after);
        var trees = new ReviewTrees(before, after);
        (_claims, _persons, _records) = (new ClaimReview(trees), new PersonReview(trees), new RecordReview(trees));
    }

    /// <summary>The changes with the edits that made them.</summary>
    public static IReadOnlyList<(RecordEdit Cause, FactChange Change)> Of(EditList edits, KnowledgeData after)
    {
        var review = new FactReview(edits.Before, after);
        return edits.All.Where(edit => !edit.IsWording).SelectMany(edit => review.Of(edit).Select(change => (edit, change))).ToArray();
    }

    private static bool HasOtherSourcesOnly(RecordEdit edit) =>
        edit.Action == EditAction.Changed && edit.Fields.All(field => field is "sources" or "reviewed");

    private IEnumerable<FactChange> Of(RecordEdit edit) => (edit.Before ?? edit.After) switch
    {
        Claim => _claims.Of(edit.Before as Claim, edit.After as Claim),
        Convention => (edit.Before, edit.After) is (Convention one, Convention other) ? ConventionReview.Of(one, other).Concat(_claims.OfConvention(one.Key)) : [],
        PersonRule => _persons.Of(edit.Before as PersonRule, edit.After as PersonRule),
        MixingHazard => _records.Of(edit.Before as MixingHazard, edit.After as MixingHazard),
        HarmlessMeeting => RecordReview.Of(edit.Before as HarmlessMeeting, edit.After as HarmlessMeeting),
        NeedRule => _records.Of(edit.Before as NeedRule, edit.After as NeedRule),
        StandingRule or Protection or InstructionWord or Occasion or LevelMeaning or TestStandard when HasOtherSourcesOnly(edit) => [],
        StandingRule => RecordReview.Of(edit.Before as StandingRule, edit.After as StandingRule),
        Protection => RecordReview.Of(edit.Before as Protection, edit.After as Protection),
        InstructionWord => RecordReview.Of(edit.Before as InstructionWord, edit.After as InstructionWord),
        Occasion => RecordReview.Of(edit.Before as Occasion, edit.After as Occasion),
        LevelMeaning => RecordReview.Of(edit.Before as LevelMeaning, edit.After as LevelMeaning),
        TestStandard => RecordReview.Of(edit.Before as TestStandard, edit.After as TestStandard),
        Organism => (edit.Before, edit.After) is (Organism one, Organism other) ? RecordReview.Of(one, other) : [],
        AgentClass => (edit.Before, edit.After) is (AgentClass one, AgentClass other) ? TraitReview.Of(one, other) : [],
        PartType => (edit.Before, edit.After) is (PartType one, PartType other) ? TraitReview.Of(one, _before.Needs, other, _after.Needs) : [],
        Material => (edit.Before, edit.After) is (Material one, Material other) ? TraitReview.Of(one, other) : [],
        _ => [],
    };
}

/// <summary>The trees of agents and part types of both knowledge bases.</summary>
internal sealed class ReviewTrees(KnowledgeData before, KnowledgeData after)
{
    private readonly Tree _agentsBefore = Tree.Of(before.Agents, one => one.Id, one => one.Under);
    private readonly Tree _agentsAfter = Tree.Of(after.Agents, one => one.Id, one => one.Under);
    private readonly Tree _partsBefore = Tree.Of(before.Parts, one => one.Id, one => one.Under);
    private readonly Tree _partsAfter = Tree.Of(after.Parts, one => one.Id, one => one.Under);

    public KnowledgeData Of(bool isBefore) => isBefore ? before : after;

    /// <summary>Whether an agent is another or lies below it, on one side.</summary>
    public bool IsAtOrBelow(AgentId agent, AgentId other, bool isBefore) => IsAtOrBelow(isBefore ? _agentsBefore : _agentsAfter, agent.Value, other.Value);

    /// <summary>Whether each of some part types is one of others or lies below one, on one side; none stand for all.</summary>
    public bool AreCovered(IReadOnlyList<PartId> parts, IReadOnlyList<PartId> by, bool isBefore) =>
        by.Count == 0 || (parts.Count > 0 && parts.All(part => by.Any(other => IsAtOrBelow(isBefore ? _partsBefore : _partsAfter, part.Value, other.Value))));

    private static bool IsAtOrBelow(Tree tree, string id, string other) =>
        id == other || (tree.TryFind(id, out var node) && tree.TryFind(other, out var ancestor) && tree.IsAtOrBelow(node, ancestor));
}
