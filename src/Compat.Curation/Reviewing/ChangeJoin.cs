using Compat.Curation.Checking;
using Compat.Curation.Writing;

namespace Compat.Curation.Reviewing;

/// <summary>Joins neighbouring cells of one subject and agent in which the same changed for the same cause, and writes them as boxes.</summary>
internal sealed class ChangeJoin(ReviewSide after)
{
    private sealed record Row(string Signature, Box<Stretch> Box, IReadOnlyList<CellChange> Changes);

    /// <summary>The changes of one pair as boxes, with their causes.</summary>
    public IEnumerable<(IReadOnlyList<RecordEdit> Causes, AnswerChange Change)> Of(PairChanges pair)
    {
        var rows = pair.Changes.Select(change => new Row(Signature(change), change.Box, [change])).ToList();
        rows = Joining.Of(rows, row => row.Signature, row => row.Box,
            (last, next, joined) => last with { Box = joined, Changes = [.. last.Changes, .. next.Changes] });
        foreach (var group in rows.GroupBy(row => (row.Signature, row.Box with { Methods = default })))
        {
            var box = group.Key.Item2 with { Methods = MethodSet.Of(group.SelectMany(row => row.Box.Methods.Methods).ToArray()) };
            yield return (group.First().Changes[0].Causes, Make(pair, box, group.SelectMany(row => row.Changes).ToArray()));
        }
    }

    private static string Signature(CellChange change) => string.Join('|',
    [
        $"{change.Kind} {change.Before.Verdict} {change.After.Verdict} {change.Before.Prevents} {change.After.Prevents}",
        $"{change.Before.Barrier?.Code} {change.After.Barrier?.Code} {string.Join(" ", NewlySetAside(change))}",
        .. Dropped(change).Select(ExposureYaml.DutyText), "/", .. Added(change).Select(ExposureYaml.DutyText), "/",
        .. change.Causes.Select(edit => $"{edit.Kind} {edit.Id}"),
    ]);

    private static IEnumerable<SetAside> NewlySetAside(CellChange change) => change.After.SetAside.Except(change.Before.SetAside);

    private static IEnumerable<Duty> Dropped(CellChange change) => change.After.IsAllowed ? DutyComparison.Lost(change.Before.Duties, change.After.Duties) : [];

    private static IEnumerable<Duty> Added(CellChange change) => change.Before.IsAllowed ? DutyComparison.Lost(change.After.Duties, change.Before.Duties) : [];

    private AnswerChange Make(PairChanges pair, in Box<Stretch> box, CellChange[] changes)
    {
        var subject = pair.Pair.After;
        var place = new Place(subject.Driest, after.Ground.SpeakerOf(pair.Pair.AgentAfter), box);
        var first = changes[0];
        return new AnswerChange
        {
            Kind = first.Kind,
            SubjectKind = subject.Kind,
            Subject = subject.Name,
            Agent = after.Kb.Data.Agents[pair.Pair.AgentAfter].Id,
            Box = place.ToBox(after.Ground),
            Methods = box.Methods,
            Basis = after.Kb.Agent(pair.Pair.AgentAfter).Basis,
            From = first.Before.Verdict,
            To = first.After.Verdict,
            IsNewSubject = pair.Pair.IsNewSubject,
            IsNewAgent = !pair.Pair.IsNewSubject && pair.Pair.AgentBefore < 0 && !pair.Pair.WasThere,
            IsInAnotherUnit = !pair.Pair.IsNewSubject && pair.Pair.AgentBefore < 0 && pair.Pair.WasThere,
            Prevented = changes.Max(change => change.Before.Prevents),
            Prevents = changes.Max(change => change.After.Prevents),
            BarrierBefore = first.Before.Barrier,
            BarrierAfter = first.After.Barrier,
            SetAside = changes.SelectMany(NewlySetAside).Distinct().ToArray(),
            DecidedBefore = changes.SelectMany(change => change.Before.DecidedBy).Distinct().Order().ToArray(),
            DecidedAfter = changes.SelectMany(change => change.After.DecidedBy).Distinct().Order().ToArray(),
            EvidenceBefore = changes.Min(change => change.Before.Evidence),
            EvidenceAfter = changes.Min(change => change.After.Evidence),
            DutiesDropped = Dropped(first).ToArray(),
            DutiesAdded = Added(first).ToArray(),
            Question = place.Witness(after.Ground) with { OnlyPart = subject.Kind == SubjectKind.DevicePart },
            Size = place.Size(),
        };
    }
}
