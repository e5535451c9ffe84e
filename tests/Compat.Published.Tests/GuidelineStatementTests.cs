namespace Compat.Published.Tests;

/// <summary>What guidelines, alerts and public guidance state of materials and parts.</summary>
public sealed class GuidelineStatementTests
{
    public static TheoryData<string> Statements => RowTable.Lines("guideline-statements");

    [Theory]
    [MemberData(nameof(Statements))]
    public void The_answer_follows_the_guideline(string row) => PublishedRow.Parse(row).Check();

    public static TheoryData<string> Devices => RowTable.Lines("device-statements");

    [Theory]
    [MemberData(nameof(Devices))]
    public void The_answer_follows_what_is_told_of_a_kind_of_device(string row) => PublishedRow.Parse(row).Check();
}
