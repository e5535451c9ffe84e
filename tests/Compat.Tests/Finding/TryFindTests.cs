namespace Compat.Tests.Finding;

/// <summary>Records are found by id and by everyday name; what is not found gets the nearest.</summary>
public class TryFindTests
{
    private static readonly KnowledgeBase Kb = KnowledgeBase.Shipped.With(new Site
    {
        Id = new SiteId("clinic"),
        Name = "clinic",
        Products = [Product("blue-wipe", "Blue wipe"), Product("blue-spray", "Shared name"), Product("red-spray", "Shared name")],
        Devices = [new Device
        {
            Id = new DeviceId("slit-lamp"),
            Name = "Slit lamp",
            Parts = [new DevicePart { Id = new DevicePartId("rest"), OneOfTypes = [new PartId("display-coated")] }],
        }],
    });

    [Fact]
    public void An_id_is_found()
    {
        Assert.True(Kb.TryFindPart("display-coated", out var part, out var nearest));
        Assert.Equal("display-coated", part!.Id.Value);
        Assert.Empty(nearest);
        Assert.True(Kb.TryFindAgent("isopropanol", out var agent, out _));
        Assert.Equal("isopropanol", agent!.Id.Value);
    }

    [Fact]
    public void A_name_is_found_capitals_and_outer_blanks_aside()
    {
        Assert.True(Kb.TryFindProduct(" BLUE wipe", out var product, out _));
        Assert.Equal("blue-wipe", product!.Id.Value);
        Assert.True(Kb.TryFindDevice("slit LAMP", out var device, out _));
        Assert.Equal("slit-lamp", device!.Id.Value);
    }

    [Fact]
    public void A_slip_gets_the_nearest_id()
    {
        Assert.False(Kb.TryFindAgent("isopropanl", out var agent, out var nearest));
        Assert.Null(agent);
        Assert.Equal("isopropanol", nearest[0].Value);
        Assert.False(Kb.TryFindPart("dispaly-coated", out _, out var parts));
        Assert.Equal("display-coated", parts[0].Value);
        Assert.False(Kb.TryFindDevice("slit-lmp", out _, out var devices));
        Assert.Equal("slit-lamp", Assert.Single(devices).Value);
    }

    [Fact]
    public void A_name_of_several_is_not_guessed()
    {
        Assert.False(Kb.TryFindProduct("shared name", out var product, out var nearest));
        Assert.Null(product);
        Assert.Equal(["blue-spray", "red-spray"], nearest.Select(id => id.Value));
    }

    [Fact]
    public void What_is_near_nothing_gets_no_suggestion()
    {
        Assert.False(Kb.TryFindPart("xyzzyqwertyuiop", out _, out var nearest));
        Assert.Empty(nearest);
    }

    private static Product Product(string id, string name) => new()
    {
        Id = new ProductId(id),
        Name = name,
        Composition = Composition.Full,
        StrengthOf = StrengthOf.Liquid,
        Ingredients = [new Ingredient
        {
            Agent = new AgentId("isopropanol"),
            Strength = new Strength(Interval.Exactly(70), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume)),
        }],
    };
}
