using Compat.Planning;

namespace Compat.Tests.Shelves;

public sealed class ShelfTests
{
    private static readonly Strength Seventy = new(Interval.Exactly(70), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume));

    [Fact]
    public void Cell_OfPartsAlike_IsThatOfEachAskedAlone()
    {
        var kb = KnowledgeBase.Shipped.With(Invented(3));
        var shelf = Shelf.Of(kb);
        Assert.Equal(12, shelf.Rows.Count);
        foreach (var row in shelf.Rows.Where(row => !row.NeedsNothing))
        {
            foreach (var cell in row.Cells)
            {
                var alone = kb.Ask(new Question { Device = row.Device, DevicePart = row.Part.Id, Product = cell.Product });
                Assert.Equal(alone.Verdict, cell.Answer!.Verdict);
                Assert.Equal(alone.Window?.ShortestContactTime, cell.Answer.Window?.ShortestContactTime);
                Assert.Equal(cell.Serves, alone.Verdict >= Verdict.AllowedWithinLimits);
            }
        }
    }

    [Fact]
    public void Rows_AreWorstFirst()
    {
        var shelf = Shelf.Of(KnowledgeBase.Shipped.With(Invented(2)));
        var serving = shelf.Rows.Where(row => !row.NeedsNothing).Select(row => row.Cells.Count(cell => cell.Serves)).ToArray();
        Assert.Equal(serving.Order(), serving);
        Assert.True(shelf.Rows[0].IsUnserved);
        Assert.True(shelf.Rows[^1].NeedsNothing);
    }

    [Fact]
    public void CoatedDisplay_UnderSpirit_IsHarmed()
    {
        var shelf = Shelf.Of(KnowledgeBase.Shipped.With(Invented(1)));
        var cell = shelf.Rows.Single(row => row.Part.Id.Value == "screen").Cells.Single(cell => cell.Product.Value == "spirit");
        Assert.Equal(ShelfWord.ReachesButHarms, cell.Word);
    }

    [Fact]
    public void Replacement_OfAProductByItself_ChangesNothing()
    {
        var kb = KnowledgeBase.Shipped.With(Invented(2));
        var change = Replacement.Of(kb, Shelf.Of(kb), new ProductId("spirit"), new ProductId("spirit"));
        Assert.Empty(change.Lost);
        Assert.Empty(change.Gained);
        Assert.Empty(change.LongerWet);
        Assert.Empty(change.NewDuties);
        Assert.Empty(change.NewProtection);
        Assert.Empty(change.GroupsLost);
    }

    /// <summary>Invented devices that are all alike, and a shelf of a spirit and a soap.</summary>
    private static Site Invented(int devices) => new()
    {
        Id = new SiteId("invented"),
        Name = "invented",
        Products =
        [
            new()
            {
                Id = new("spirit"),
                Name = "spirit",
                Composition = Composition.Full,
                StrengthOf = StrengthOf.Liquid,
                Ph = [new(Interval.Closed(6, 8), PhState.InUse)],
                Methods = MethodSet.Of(ApplicationMethod.DampWipe),
                Ingredients = [new() { Agent = new("isopropanol"), Strength = Seventy }],
            },
            new()
            {
                Id = new("soap"),
                Name = "soap",
                Composition = Composition.Full,
                StrengthOf = StrengthOf.Liquid,
                Ingredients = [new()
                {
                    Agent = new("nonionic-surfactant"),
                    Strength = new(Interval.Exactly(1), StrengthUnit.PercentOf(StrengthBasis.MassPerMass)),
                }],
            },
        ],
        Devices = Enumerable.Range(1, devices).Select(i => new Device
        {
            Id = new DeviceId($"device-{i}"),
            Name = "device",
            Parts =
            [
                new() { Id = new("screen"), OneOfTypes = [new("display-coated")] },
                new() { Id = new("frame"), OneOfTypes = [new("trolley-frame")] },
                new() { Id = new("inlet"), OneOfTypes = [new("mains-inlet")] },
                new() { Id = new("rest"), OneOfTypes = [new("chin-and-forehead-rest")] },
            ],
        }).ToArray(),
    };
}
