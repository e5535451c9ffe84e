using System.Globalization;

namespace Compat.Published.Tests;

/// <summary>One published statement as a question and what the answer must be.</summary>
/// <remarks>
/// Cells: material (or `part` and a part type) | agent and strength | exposure | expected | what the source says | source.
/// Expected: `forbidden` is not allowed; `never allowed` is not allowed or not established; `not forbidden` is anything but not allowed;
/// `permitted` is allowed, within limits or without; `taken off` is permitted, and never without the duty to take the agent off.
/// </remarks>
internal sealed class PublishedRow
{
    private PublishedRow(Question question, string expected, string statement, string source)
    {
        Question = question;
        Expected = expected;
        Statement = statement;
        Source = source;
    }

    public Question Question { get; }

    public string Expected { get; }

    public string Statement { get; }

    public string Source { get; }

    public static PublishedRow Parse(string line)
    {
        var cells = RowTable.Cells(line);
        if (cells.Length != 6 || cells[5].Length == 0) throw new FormatException(line);
        return new(QuestionOf(cells) with { OnlyPart = true }, cells[3], cells[4], cells[5]);
    }

    /// <summary>The question in the first three cells: subject, agent and strength, exposure (`-` where none is stated).</summary>
    internal static Question QuestionOf(IReadOnlyList<string> cells)
    {
        var question = What(Subject(new Question(), cells[0]), cells[1]);
        return cells[2] == "-" ? question : cells[2].Split(", ").Aggregate(question, Exposure);
    }

    public void Check()
    {
        var answer = KnowledgeBase.Shipped.Ask(Question);
        var holds = Expected switch
        {
            "forbidden" => answer.Verdict == Verdict.NotAllowed,
            "never allowed" => answer.Verdict <= Verdict.NotEstablished,
            "not forbidden" => answer.Verdict != Verdict.NotAllowed,
            "permitted" => answer.Verdict >= Verdict.AllowedWithinLimits,
            "taken off" => answer.Verdict >= Verdict.AllowedWithinLimits && answer.Boxes.All(box => box.Duties.Any(duty => duty.Kind == DutyKind.TakeOff)),
            _ => throw new FormatException(Expected),
        };
        Assert.True(
            holds, $"expected {Expected}, is {answer.Verdict}: {Statement} ({Source}); decided by "
                + $"{string.Join(", ", answer.DecidedBy.Select(rule => rule.Id.Value))}; {Text(answer.Decisive)}");
    }

    private static string Text(Reason reason) => reason.Code + " " + string.Join(" ", reason.Arguments);

    private static Question Subject(Question question, string cell) => cell.StartsWith("part ", StringComparison.Ordinal)
        ? question with { Part = new(cell[5..]) }
        : question with { Materials = [new MaterialSlot(new MaterialId(cell))] };

    private static Question What(Question question, string cell)
    {
        var words = cell.Split(' ', 3);
        question = question with { Agent = new(words[0]) };
        return words.Length == 1 ? question : question with { Strength = Strength(words[1], words[2]) };
    }

    internal static Strength Strength(string figure, string unit) =>
        StrengthUnit.TryParse(unit, out var known) ? new Strength(Range(figure), known) : throw new FormatException(unit);

    private static Question Exposure(Question question, string token)
    {
        if (Words.TryParse<ApplicationMethod>(token, out var method)) return question with { Method = method };
        if (token == "without end") return question with { ExposureTime = Interval.Exactly(Interval.WithoutEnd) };
        var words = token.Split(' ');
        if (words[0] == "pH") return question with { Ph = Range(words[1]) };
        return words[1] switch
        {
            "°C" => question with { Temperature = Range(words[0]) },
            "use" or "uses" => question with { Uses = int.Parse(words[0], CultureInfo.InvariantCulture) },
            "min" => question with { ExposureTime = Range(words[0]).Scale(60m) },
            "h" => question with { ExposureTime = Range(words[0]).Scale(3600m) },
            "d" => question with { ExposureTime = Range(words[0]).Scale(86400m) },
            _ => throw new FormatException(token),
        };
    }

    internal static Interval Range(string text)
    {
        var ends = text.Split("..");
        return ends.Length == 1 ? Interval.Exactly(Figure(ends[0])) : Interval.Closed(Figure(ends[0]), Figure(ends[1]));
    }

    internal static decimal Figure(string text) => decimal.Parse(text, NumberStyles.Number, CultureInfo.InvariantCulture);
}
