namespace Compat.Published.Tests;

/// <summary>Where published sources part, the answer keeps to the more careful one; the other is named behind it.</summary>
public sealed class SourceDisagreementTests
{
    public static TheoryData<string> Disagreements => RowTable.Lines("disagreements");

    [Theory]
    [MemberData(nameof(Disagreements))]
    public void Where_sources_part_the_answer_keeps_to_the_careful_one(string row) => PublishedRow.Parse(row).Check();
}
