using Compat.Validation;

namespace Compat.Published.Tests;

/// <summary>CAS registry numbers of the agents, and the check digit.</summary>
public sealed class RegistryNumberTests
{
    public static TheoryData<string> Numbers => RowTable.Lines("registry-numbers");

    public static TheoryData<string> CheckDigits => RowTable.Lines("check-digits");

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_number_leads_to_its_substance_and_to_no_other(string row)
    {
        var cells = RowTable.Cells(row);
        Assert.True(CasNumber.IsValid(cells[0]), cells[0]);
        var found = KnowledgeBase.Shipped.Data.Agents.Where(agent => agent.Cas.Contains(cells[0])).Select(agent => agent.Id.Value);
        Assert.Equal([cells[2]], found);
    }

    [Theory]
    [MemberData(nameof(CheckDigits))]
    public void The_check_digit_is_held_to(string row)
    {
        var cells = RowTable.Cells(row);
        Assert.Equal(cells[1] == "valid", CasNumber.IsValid(cells[0]));
    }

    /// <summary>A public safety sheet gives 112-02-7 for the benzyl quaternary of sixteen carbons; that one is 122-18-9 (21 CFR 172.165, 1985, (a)).</summary>
    [Fact]
    public void A_number_that_a_safety_sheet_mistook_is_not_taken_over()
    {
        var benzalkonium = KnowledgeBase.Shipped.Data.Agents.Single(agent => agent.Id.Value == "benzalkonium-chloride");
        Assert.DoesNotContain("112-02-7", benzalkonium.Cas);
        Assert.Contains("122-18-9", benzalkonium.Cas);
    }
}
