using Compat.Curation.Reviewing;

namespace Compat.Cli.Reviews;

/// <summary>Boxes that say the same of several parts and agents, in one row.</summary>
/// <param name="Subjects">The parts or materials.</param>
/// <param name="Agents">The agents, each on each of these.</param>
/// <param name="FromTo">From which verdict to which.</param>
/// <param name="At">The box.</param>
internal sealed record FoldedRow(IReadOnlyList<string> Subjects, IReadOnlyList<string> Agents, string FromTo, string At)
{
    /// <summary>The rows of some changes, in the order of the first change of each.</summary>
    public static IReadOnlyList<FoldedRow> Of(IEnumerable<AnswerChange> changes) => changes
        .GroupBy(change => (Subject: ReviewWords.Subject(change), FromTo: ReviewWords.FromTo(change), At: ReviewCall.At(change)))
        .Select(group => (group.Key, Agents: group.Select(change => change.Agent.Value).Distinct().ToArray()))
        .GroupBy(row => (Agents: string.Join(" ", row.Agents), row.Key.FromTo, row.Key.At))
        .Select(group => new FoldedRow(group.Select(row => row.Key.Subject).ToArray(), group.First().Agents, group.Key.FromTo, group.Key.At)).ToArray();
}
