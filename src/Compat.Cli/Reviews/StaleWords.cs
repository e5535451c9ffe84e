using Compat.Cli.Wording;
using Compat.Curation.Recorded;
using Compat.Curation.Reviewing;
using Compat.Validation;

namespace Compat.Cli.Reviews;

/// <summary>Says which recorded answers no longer hold, in words that every output shares. Text of the data stands in backticks.</summary>
internal static class StaleWords
{
    /// <summary>The answer: its step, part and product, and from which verdict to which.</summary>
    public static string Of(AnswerDifference difference)
    {
        var question = difference.Recorded.Question;
        var step = difference.Recorded.Step is { } number ? $"step {number}, " : "";
        var product = question.Product is { } id ? $" with `{id}`" : question.Agent is { } agent ? $" with `{agent}`" : "";
        return $"{step}`{question.DevicePart}`{product}: {FromTo(difference)}";
    }

    /// <summary>What is another beside the verdict: the part's own verdict, duties, limits, boxes; or why it cannot be asked.</summary>
    public static IEnumerable<string> Changes(AnswerDifference difference, Names names)
    {
        foreach (var problem in difference.Problems) yield return problem.Message;
        if (difference.Present is { } now && now.Verdict == difference.Recorded.Verdict && now.PartVerdict != difference.Recorded.PartVerdict)
            yield return $"what the part stands: {ReviewWords.Of(difference.Recorded.PartVerdict)} -> {ReviewWords.Of(now.PartVerdict)}";
        foreach (var duty in difference.DutiesAdded) yield return $"now also: {Plain(DutyWording.Of(duty, names))}";
        foreach (var duty in difference.DutiesDropped) yield return $"no longer: {Plain(DutyWording.Of(duty, names))}";
        foreach (var limit in difference.LimitsAdded) yield return $"limited now: {Of(limit)}";
        foreach (var limit in difference.LimitsDropped) yield return $"limited no longer: {Of(limit)}";
        var unit = ExposureWording.Unit(difference.Recorded.Question, names);
        foreach (var box in Few(difference.BoxesLost)) yield return $"not allowed as a whole any more: {Plain(ExposureWording.Of(box, unit))}";
        foreach (var box in Few(difference.BoxesGained)) yield return $"allowed now: {Plain(ExposureWording.Of(box, unit))}";
    }

    /// <summary>What decided then or decides now, with its place.</summary>
    public static string Of(Ground ground, string? where) =>
        $"{Plain(Words.Of(ground.Kind), '-')} `{ground.Id}` {(ground.IsNow ? "decides now" : "decided then, not now")}{(where is null ? "" : $": `{where}`")}";

    /// <summary>The record that decides.</summary>
    public static ProblemPlace PlaceOf(Ground ground) =>
        new(ground.Kind, ground.Kind is RecordKind.Product or RecordKind.Device ? ground.Id.Split(": ")[0] : ground.Id);

    /// <summary>An answer with all that is to be said of it: its line first.</summary>
    public static IEnumerable<string> All(StaleAnswer stale, ReviewCall call, Names names)
    {
        yield return $"{Of(stale.Difference.Standing)}: {Of(stale.Difference)}{(stale.WasStale ? " (so in BASE already)" : "")}";
        foreach (var change in Changes(stale.Difference, names)) yield return change;
        foreach (var ground in stale.Difference.Grounds) yield return Of(ground, call.Where(ground));
        foreach (var edit in stale.Causes.Take(3)) yield return $"by the edit of {ReviewWords.Of(edit)}: `{call.Where(edit)}`";
        if (stale.Causes.Count > 3) yield return $"or by {ReviewWords.Count(stale.Causes.Count - 3, "edit")} more";
    }

    /// <summary>What became of an answer.</summary>
    public static string Of(Standing standing) => Plain(Words.Of(standing), '-');

    /// <summary>The lines of a review in text; none where no plan was looked at or all hold.</summary>
    public static IEnumerable<string> Report(ReviewCall call, Names names)
    {
        foreach (var plan in call.Stale ?? [])
        {
            yield return $"{plan.Plan.Path}: this plan of `{plan.Plan.Device}` {(plan.GoesStale ? "no longer holds" : "did not hold before either")}";
            foreach (var stale in plan.Answers)
            {
                var isFirst = true;
                foreach (var line in All(stale, call, names))
                {
                    yield return (isFirst ? "  " : "    ") + line;
                    isFirst = false;
                }
            }

            yield return "";
        }
    }

    /// <summary>How many plans hold, in one line.</summary>
    public static string Sum(IReadOnlyList<StalePlan> stale, int plans)
    {
        var going = stale.Where(plan => plan.GoesStale).ToArray();
        var already = stale.Count - going.Length;
        if (stale.Count == 0) return $"plans: {ReviewWords.Count(plans, "plan")} asked again, all hold";
        if (going.Length == 0) return $"plans: {ReviewWords.Count(plans, "plan")} asked again, none goes stale; {already} did not hold before either";
        var counts = going.SelectMany(plan => plan.Answers).Where(one => !one.WasStale).GroupBy(one => one.Difference.Standing).OrderBy(one => one.Key).Select(group => $"; {Of(group.Key)}: {ReviewWords.Count(group.Count(), "answer")}");
        return $"plans: {going.Length} of {plans} no longer hold{string.Concat(counts)}{(already > 0 ? $"; {already} did not hold before either" : "")}";
    }

    private static string FromTo(AnswerDifference difference) => difference.Present is not { } now
        ? $"{ReviewWords.Of(difference.Recorded.Verdict)} -> cannot be asked any more"
        : now.Verdict == difference.Recorded.Verdict ? $"{ReviewWords.Of(now.Verdict)}, as before" : $"{ReviewWords.Of(difference.Recorded.Verdict)} -> {ReviewWords.Of(now.Verdict)}";

    private static string Of(Limit limit) => Plain(Words.Of(limit.Code), '-') + (limit.Arguments.Count == 0 ? "" : $": `{string.Join(", ", limit.Arguments)}`");

    private static IEnumerable<AllowedBox> Few(IReadOnlyList<AllowedBox> boxes) => boxes.Take(4);

    private static string Plain(string text, char hidden = '\u00a0') => text.Replace(hidden, ' ');
}
