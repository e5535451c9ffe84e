namespace Compat.Published.Tests;

/// <summary>What people say in place of the name on record. Cells: part, material, agent or organism | what is said | id | where it is said so.</summary>
public sealed class EverydayNameTests
{
    public static TheoryData<string> Names => RowTable.Lines("everyday-names");

    [Theory]
    [MemberData(nameof(Names))]
    public void An_everyday_name_is_on_record(string row)
    {
        var cells = RowTable.Cells(row);
        Assert.Equal(4, cells.Length);
        var data = KnowledgeBase.Shipped.Data;
        var named = cells[0] switch
        {
            "part" => data.Parts.Where(part => Has(part.Name, part.AlsoCalled)).Select(part => part.Id.Value),
            "material" => data.Materials.Where(material => Has(material.Name, material.AlsoCalled)).Select(material => material.Id.Value),
            "agent" => data.Agents.Where(agent => Has(agent.Name, agent.AlsoCalled)).Select(agent => agent.Id.Value),
            "organism" => data.Organisms.Where(organism => Has(organism.Name, organism.AlsoCalled)).Select(organism => organism.Id.Value),
            _ => throw new FormatException(cells[0]),
        };
        Assert.Equal([cells[2]], named);

        bool Has(string name, IReadOnlyList<string> others) => others.Prepend(name).Contains(cells[1], StringComparer.OrdinalIgnoreCase);
    }
}
