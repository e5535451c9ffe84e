namespace Compat.Published.Tests;

/// <summary>Published findings on materials: what attacked them is never permitted, what they stood is not forbidden at that exposure.</summary>
public sealed class MaterialFindingTests
{
    public static TheoryData<string> Plastics => RowTable.Lines("findings-plastics");

    public static TheoryData<string> Rubbers => RowTable.Lines("findings-rubbers");

    public static TheoryData<string> Metals => RowTable.Lines("findings-metals");

    public static TheoryData<string> CoatingsAndOthers => RowTable.Lines("findings-coatings");

    public static TheoryData<string> Handbooks => RowTable.Lines("findings-handbooks");

    [Theory]
    [MemberData(nameof(Plastics))]
    public void A_plastic_is_judged_as_found(string row) => PublishedRow.Parse(row).Check();

    [Theory]
    [MemberData(nameof(Rubbers))]
    public void A_rubber_is_judged_as_found(string row) => PublishedRow.Parse(row).Check();

    [Theory]
    [MemberData(nameof(Metals))]
    public void A_metal_is_judged_as_found(string row) => PublishedRow.Parse(row).Check();

    [Theory]
    [MemberData(nameof(CoatingsAndOthers))]
    public void A_coating_cloth_or_board_is_judged_as_found(string row) => PublishedRow.Parse(row).Check();

    [Theory]
    [MemberData(nameof(Handbooks))]
    public void What_a_handbook_warns_of_is_not_allowed(string row) => PublishedRow.Parse(row).Check();
}
