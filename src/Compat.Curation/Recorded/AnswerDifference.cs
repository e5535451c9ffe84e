using Compat.Curation.Reviewing;
using Compat.Validation;

namespace Compat.Curation.Recorded;

/// <summary>Whether a recorded answer still holds; the most pressing first, for people follow it.</summary>
public enum Standing
{
    /// <summary>Less is permitted now, or with more care.</summary>
    Tightened,

    /// <summary>It cannot be asked any more: something it names is gone.</summary>
    CannotBeAsked,

    /// <summary>More is permitted now, or with less care.</summary>
    Loosened,

    /// <summary>The same is answered, on other rules, claims or editions.</summary>
    OtherGrounds,

    /// <summary>The same is answered on the same.</summary>
    Holds,
}

/// <summary>What decided an answer on one side only.</summary>
/// <param name="Kind">What it is; a device for an edition of its instructions, a product for a claim of its label.</param>
/// <param name="Id">Its id; of an edition <c>device: edition</c>, of a label's claim <c>product: claim</c>.</param>
/// <param name="IsNow">Whether it decides now and did not before; else it decided before and does not now.</param>
public sealed record Ground(RecordKind Kind, string Id, bool IsNow);

/// <summary>A recorded answer beside what is answered now.</summary>
public sealed record AnswerDifference
{
    /// <summary>What was recorded.</summary>
    public required RecordedAnswer Recorded { get; init; }

    /// <summary>What is answered now; null where it cannot be asked.</summary>
    public RecordedAnswer? Present { get; init; }

    /// <summary>Why it cannot be asked; empty where it can.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>Whether it still holds.</summary>
    public required Standing Standing { get; init; }

    /// <summary>Whether those who follow it follow an answer that is no longer given.</summary>
    public bool IsStale => Standing <= Standing.Loosened;

    /// <summary>The duties that nothing met before.</summary>
    public IReadOnlyList<Duty> DutiesAdded { get; init; } = [];

    /// <summary>The duties that nothing meets any more.</summary>
    public IReadOnlyList<Duty> DutiesDropped { get; init; } = [];

    /// <summary>The limits that are new.</summary>
    public IReadOnlyList<Limit> LimitsAdded { get; init; } = [];

    /// <summary>The limits that are gone.</summary>
    public IReadOnlyList<Limit> LimitsDropped { get; init; } = [];

    /// <summary>The recorded boxes that are not allowed as a whole any more.</summary>
    public IReadOnlyList<AllowedBox> BoxesLost { get; init; } = [];

    /// <summary>The boxes allowed now that were not allowed as a whole.</summary>
    public IReadOnlyList<AllowedBox> BoxesGained { get; init; } = [];

    /// <summary>What decided on one side only.</summary>
    public IReadOnlyList<Ground> Grounds { get; init; } = [];

    /// <summary>A recorded answer whose question cannot be asked any more.</summary>
    internal static AnswerDifference NotAsked(RecordedAnswer recorded, IReadOnlyList<Problem> problems) =>
        new() { Recorded = recorded, Problems = problems, Standing = Standing.CannotBeAsked };

    /// <summary>Holds a recorded answer against the present one to the same question.</summary>
    internal static AnswerDifference Between(RecordedAnswer was, RecordedAnswer now)
    {
        var isAllowed = was.Verdict >= Verdict.AllowedWithinLimits && now.Verdict >= Verdict.AllowedWithinLimits;
        var difference = new AnswerDifference
        {
            Recorded = was,
            Present = now,
            Standing = Standing.Holds,
            DutiesAdded = isAllowed ? DutyComparison.NotMet(now.Duties, was.Duties).ToArray() : [],
            DutiesDropped = isAllowed ? DutyComparison.NotMet(was.Duties, now.Duties).ToArray() : [],
            LimitsAdded = isAllowed ? Without(now.Limits, was.Limits) : [],
            LimitsDropped = isAllowed ? Without(was.Limits, now.Limits) : [],
            BoxesLost = isAllowed ? NotIn(was, now) : [],
            BoxesGained = isAllowed ? NotIn(now, was) : [],
            Grounds = [.. GroundsOf(was, now, isNow: false), .. GroundsOf(now, was, isNow: true)],
        };
        return difference with { Standing = Of(was, now, difference) };
    }

    private static Standing Of(RecordedAnswer was, RecordedAnswer now, AnswerDifference found)
    {
        if (now.Verdict < was.Verdict || now.PartVerdict < was.PartVerdict || found.DutiesAdded.Count + found.LimitsAdded.Count + found.BoxesLost.Count > 0)
            return Standing.Tightened;
        if (now.Verdict > was.Verdict || now.PartVerdict > was.PartVerdict
            || found.DutiesDropped.Count + found.LimitsDropped.Count + found.BoxesGained.Count > 0) return Standing.Loosened;
        return found.Grounds.Count > 0 ? Standing.OtherGrounds : Standing.Holds;
    }

    /// <summary>The limits that the others do not have. Of a silent source only the axis and what is taken for it count, not the id of the rule.</summary>
    private static Limit[] Without(IReadOnlyList<Limit> limits, IReadOnlyList<Limit> others) =>
        limits.Where(limit => !others.Any(other => other.Code == limit.Code && Said(other).SequenceEqual(Said(limit)))).ToArray();

    private static IEnumerable<string> Said(Limit limit) => limit.Code == LimitCode.SourceDoesNotSay ? limit.Arguments.Take(2) : limit.Arguments;

    /// <summary>
    /// The boxes of one answer that lie in none of the other; where either lists not all of its boxes, those that the other does not list alike.
    /// </summary>
    private static AllowedBox[] NotIn(RecordedAnswer one, RecordedAnswer other)
    {
        var areAll = one.BoxCount == one.Boxes.Count && other.BoxCount == other.Boxes.Count;
        return one.Boxes.Where(box => !other.Boxes.Any(wide => areAll ? LiesIn(box, wide) : LiesIn(box, wide) && LiesIn(wide, box))).ToArray();
    }

    private static bool LiesIn(AllowedBox box, AllowedBox wide) =>
        box.Method == wide.Method && LiesIn(box.Strength, wide.Strength) && LiesIn(box.Dilution, wide.Dilution) && box.ExposureTime.LiesIn(wide.ExposureTime)
        && box.Temperature.LiesIn(wide.Temperature) && box.Ph.LiesIn(wide.Ph) && box.Uses.LiesIn(wide.Uses);

    private static bool LiesIn(Interval? range, Interval? wide) => (range ?? Interval.Whole).LiesIn(wide ?? Interval.Whole);

    private static IEnumerable<Ground> GroundsOf(RecordedAnswer one, RecordedAnswer other, bool isNow)
    {
        foreach (var id in one.Rules.Except(other.Rules)) yield return new(RecordKind.Rule, id.Value, isNow);
        foreach (var id in one.PersonRules.Except(other.PersonRules)) yield return new(RecordKind.PersonRule, id.Value, isNow);
        foreach (var id in one.Claims.Except(other.Claims))
            yield return new(
                !id.Contains(": ", StringComparison.Ordinal) ? RecordKind.Claim : id.StartsWith(one.Question.Product + ": ", StringComparison.Ordinal)
                ? RecordKind.Product : RecordKind.Device, id, isNow);
        foreach (var id in one.Editions.Except(other.Editions)) yield return new(RecordKind.Device, $"{one.Question.Device}: {id}", isNow);
    }
}
