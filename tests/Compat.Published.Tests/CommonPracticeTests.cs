namespace Compat.Published.Tests;

/// <summary>What the trade holds without a publication behind it.</summary>
public sealed class CommonPracticeTests
{
    public static TheoryData<string> Practice => RowTable.Lines("common-practice");

    [Theory]
    [MemberData(nameof(Practice))]
    public void The_answer_follows_common_practice(string row) => PublishedRow.Parse(row).Check();
}
