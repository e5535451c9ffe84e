namespace Compat.Curation.Reviewing;

/// <summary>What differs between the decision maps of one subject and agent.</summary>
/// <param name="Pair">The subject and agent.</param>
/// <param name="Changes">The boxes of cells in which the answers differ.</param>
/// <param name="FactsDiffer">Whether facts of the subject or agent differ, and not rules alone.</param>
/// <param name="Rules">All rules that can speak of them on either side.</param>
internal sealed record PairChanges(ReviewPair Pair, IReadOnlyList<CellChange> Changes, bool FactsDiffer, IReadOnlyList<RuleId> Rules);
