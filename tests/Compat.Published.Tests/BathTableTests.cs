using System.Globalization;
using Compat.Planning;

namespace Compat.Published.Tests;

/// <summary>
/// How long a bath may be used again and how weak it may become. Cells: claim whose bath it is | days since it was activated, diluted or opened | strength
/// measured today (`-` where nobody did) | `use`, `discard` or `not known` | what the source says | source. The day on the lot lies far ahead.
/// </summary>
public sealed class BathTableTests
{
    private static readonly CalendarDate Today = new(2026, 11, 26);

    public static TheoryData<string> Baths => RowTable.Lines("baths");

    [Theory]
    [MemberData(nameof(Baths))]
    public void A_bath_ends_with_its_strength_or_its_days(string row)
    {
        var cells = RowTable.Cells(row);
        Assert.Equal(6, cells.Length);
        var since = Today.AddDays(-int.Parse(cells[1], CultureInfo.InvariantCulture));
        var question = new BathQuestion
        {
            Claim = new(cells[0]),
            Today = Today,
            Activated = since,
            Diluted = since,
            Opened = since,
            Expires = new(2030, 1, 31),
        };
        if (cells[2] != "-")
        {
            var words = cells[2].Split(' ', 2);
            question = question with { Measured = PublishedRow.Strength(words[0], words[1]) };
        }

        Assert.True(Bath.TryJudge(KnowledgeBase.Shipped, question, out var answer, out var problems), string.Join("\n", problems));
        var expected = cells[3] switch
        {
            "use" => BathVerdict.Use,
            "discard" => BathVerdict.Discard,
            "not known" => BathVerdict.NotKnown,
            _ => throw new FormatException(cells[3]),
        };
        Assert.True(
            answer!.Verdict == expected,
            $"expected {cells[3]}, is {answer.Verdict} ({string.Join(", ", answer.Reasons.Select(reason => reason.Code))}): {row}");
    }
}
