using System.Text;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Reviews;

/// <summary>Writes which plans no longer hold into a comment on a pull request, above all else: people follow them.</summary>
internal static class StaleMarkdown
{
    private const int LongestPath = 120;

    /// <summary>How many plans are named at least, however many there are.</summary>
    private const int Least = 20;

    /// <summary>The section; empty where no plan was looked at.</summary>
    /// <param name="call">What was reviewed.</param>
    /// <param name="names">Names of HEAD.</param>
    /// <param name="rows">How many plans and answers of each are shown; 0 for the names of a few plans alone.</param>
    public static string Of(ReviewCall call, Names names, int rows)
    {
        if (call.Stale is not { } stale) return "";
        var (going, already) = (stale.Where(plan => plan.GoesStale).ToArray(), stale.Where(plan => !plan.GoesStale).ToArray());
        var text = new StringBuilder($"{(going.Length == 0 ? "" : "### Plans that no longer hold\n\n")}{Sentence(StaleWords.Sum(stale, call.Plans))}\n\n");
        List(text, going, call, names, rows);
        if (already.Length > 0) text.Append("### Plans that did not hold before either\n\n");
        List(text, already, call, names, rows);
        return text.ToString();
    }

    private static void List(StringBuilder text, IReadOnlyList<StalePlan> plans, ReviewCall call, Names names, int rows)
    {
        foreach (var plan in plans.Take(rows == 0 ? Least : rows))
        {
            var shown = rows == 0 ? [] : plan.Answers.Take(rows).ToArray();
            text.Append($"- **{Markdown.Code(Short(plan.Plan.Path))}**, {Markdown.Code(plan.Plan.Device.Value)}: {ReviewWords.Count(plan.Answers.Count, "answer")}, the worst {StaleWords.Of(plan.Worst)}\n");
            foreach (var answer in shown) Answer(text, answer, call, names);
            if (shown.Length < plan.Answers.Count && rows > 0) text.Append($"  - {ReviewWords.Count(plan.Answers.Count - shown.Length, "answer")} more, not shown here\n");
        }

        var left = plans.Count - (rows == 0 ? Least : rows);
        if (left > 0) text.Append($"- {ReviewWords.Count(left, "plan")} more, not shown here\n");
        if (plans.Count > 0) text.Append('\n');
    }

    private static void Answer(StringBuilder text, StaleAnswer answer, ReviewCall call, Names names)
    {
        var lines = StaleWords.All(answer, call, names).Select(line => Markdown.Text(line.Replace("->", "→", StringComparison.Ordinal))).ToArray();
        text.Append($"  - {lines[0]}\n");
        foreach (var line in lines.Skip(1)) text.Append($"    - {line}\n");
    }

    private static string Sentence(string text) => char.ToUpperInvariant(text[0]) + text[1..] + ".";

    private static string Short(string path) => path.Length <= LongestPath ? path : "…" + path[^LongestPath..];
}
