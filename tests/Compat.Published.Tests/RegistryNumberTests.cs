using Compat.Validation;

namespace Compat.Published.Tests;

/// <summary>CAS and EC numbers of the agents, and their check digits.</summary>
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

    /// <summary>EC numbers that stand beside a CAS number in a public table of registered substances.</summary>
    public static TheoryData<string> InventoryNumbers => RowTable.Lines("inventory-numbers");

    [Theory]
    [MemberData(nameof(InventoryNumbers))]
    public void An_inventory_number_leads_to_the_substance_with_that_registry_number(string row)
    {
        var cells = RowTable.Cells(row);
        var found = KnowledgeBase.Shipped.Data.Agents.Where(agent => agent.Ec.Contains(cells[0])).ToArray();
        Assert.Equal([cells[2]], found.Select(agent => agent.Id.Value));
        Assert.Contains(cells[1], found[0].Cas);
    }

    /// <summary>The first six digits, each times its place from the left, added up modulo 11: 2+0+0+24+30+6 = 62 = 5 * 11 + 7 for isopropanol.</summary>
    [Theory]
    [InlineData("200-661-7", true)]
    [InlineData("231-668-3", true)]
    [InlineData("200-661-8", false)]
    [InlineData("200-616-7", false)]
    [InlineData("2006617", false)]
    [InlineData("200-661-", false)]
    public void The_check_digit_of_an_inventory_number_is_held_to(string number, bool valid) => Assert.Equal(valid, EcNumber.IsValid(number));

    /// <summary>A public safety sheet gives 112-02-7 for the benzyl quaternary of sixteen carbons; that one is 122-18-9 (21 CFR 172.165, 1985, (a)).</summary>
    [Fact]
    public void A_number_that_a_safety_sheet_mistook_is_not_taken_over()
    {
        var benzalkonium = KnowledgeBase.Shipped.Data.Agents.Single(agent => agent.Id.Value == "benzalkonium-chloride");
        Assert.DoesNotContain("112-02-7", benzalkonium.Cas);
        Assert.Contains("122-18-9", benzalkonium.Cas);
    }
}
