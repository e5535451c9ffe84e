using Compat.Curation.Checking;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>A change of what stands beside the rules on parts: a claim, a person rule, a hazard, a need, a standing rule.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Text">What it means: lower case, no final stop, text of the data in backticks.</param>
/// <param name="Evidence">How well it is known now; null where it asks rather than permits.</param>
public sealed record FactChange(ChangeKind Kind, string Text, EvidenceWeight? Evidence = null)
{
    /// <summary>The kind of record that says it; null where the change is of a record that reaches no single place.</summary>
    public RecordKind? About { get; init; }

    /// <summary>Every place it reaches; empty where it is of a record that reaches no single place.</summary>
    public IReadOnlyList<FactPlace> Reaches { get; init; } = [];
}

/// <summary>All that one edit changed in one way.</summary>
public sealed record ReviewGroup
{
    /// <summary>In which way.</summary>
    public required ChangeKind Kind { get; init; }

    /// <summary>The edit that alone makes the changes; null where only several together do.</summary>
    public RecordEdit? Cause { get; init; }

    /// <summary>The changes of answers: what was forbidden and is permitted first, by the damage that was prevented, then by evidence, then by width.</summary>
    public IReadOnlyList<AnswerChange> Answers { get; init; } = [];

    /// <summary>The other changes.</summary>
    public IReadOnlyList<FactChange> Facts { get; init; } = [];

    /// <summary>Whether something that is permitted now, or forbidden or asked no longer, rests on common practice, a recalled value or nothing.</summary>
    public bool RestsOnLittle =>
        Answers.Any(change => change.EvidenceAfter <= EvidenceWeight.Recalled) || Facts.Any(fact => fact.Evidence is null or <= EvidenceWeight.Recalled);
}

/// <summary>What differs between two knowledge bases, by what it does to the answers.</summary>
public sealed record ReviewReport
{
    /// <summary>The changes, the most dangerous first, each kind grouped by the edit that caused it.</summary>
    public required IReadOnlyList<ReviewGroup> Groups { get; init; }

    /// <summary>All records that differ, by kind and id.</summary>
    public required IReadOnlyList<RecordEdit> Edits { get; init; }

    /// <summary>The contradictions between rules of HEAD, as a check finds them.</summary>
    public required IReadOnlyList<Finding> Contradictions { get; init; }

    /// <summary>The standing rules that answers of HEAD break, as a check finds them.</summary>
    public required IReadOnlyList<Finding> BrokenStandingRules { get; init; }

    /// <summary>How many pairs of subject and agent were compared.</summary>
    public required int Compared { get; init; }

    /// <summary>Whether no answer is another than before.</summary>
    public bool IsWithoutChange => Groups.Count == 0;

    /// <summary>Whether the rules of HEAD cannot stand as they are: they contradict each other or break what must stand for ever.</summary>
    public bool IsBroken => Contradictions.Count + BrokenStandingRules.Count > 0;

    /// <summary>Whether anything is permitted that was not, a level is reached with less, or a duty is gone.</summary>
    public bool IsLoosened => Groups.Any(group => group.Kind <= ChangeKind.PreventsLess);

    /// <summary>Whether something is loosened and rests on common practice, a recalled value or nothing.</summary>
    public bool IsLoosenedOnLittle => Groups.Any(group => group.Kind <= ChangeKind.PreventsLess && group.RestsOnLittle);

    /// <summary>The edits of a kind of action that changed nothing in the groups: new and removed records, renames, wording.</summary>
    public IEnumerable<RecordEdit> WithoutEffect(EditAction action) =>
        Edits.Where(edit => edit.Action == action && !Groups.Any(group => ReferenceEquals(group.Cause, edit)));
}
