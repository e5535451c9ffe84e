using Compat.Planning;

namespace Compat.Tests.Plans;

/// <summary>The method is chosen with the rest: where another serves better than the driest it is taken, else the driest.</summary>
public sealed class MethodChoiceTests
{
    private static readonly CalendarDate Day = new(2026, 1, 1);
    private static readonly ProductId Wipe = new("wipe");

    [Fact]
    public void OneStepForBoth_GoesBeforeTheDriestMethodForOne()
    {
        var step = Assert.Single(Disinfecting([ApplicationMethod.DampWipe, ApplicationMethod.WetWipe], [ApplicationMethod.WetWipe]));
        Assert.Equal((ApplicationMethod.WetWipe, 2), (step.Setting!.Method, step.Parts.Count));
    }

    [Fact]
    public void WhereAllElseIsEqual_TheDriestIsTaken()
    {
        var step =
            Assert.Single(Disinfecting([ApplicationMethod.DampWipe, ApplicationMethod.WetWipe], [ApplicationMethod.DampWipe, ApplicationMethod.WetWipe]));
        Assert.Equal((ApplicationMethod.DampWipe, 2), (step.Setting!.Method, step.Parts.Count));
    }

    [Fact]
    public void AMethodThatSparesThePartLonger_GoesBeforeADrierOne()
    {
        var site = Site([ApplicationMethod.DampWipe], [ApplicationMethod.DampWipe]);
        var wet = Rule("more", "first", [ApplicationMethod.WetWipe], 5000m);
        var steps = RandomSites.Over(site with { Rules = [.. site.Rules, wet] })
            .PlanOf(new() { Device = RandomSites.Device }).Steps.Where(step => step.Order == StepOrder.Disinfect).ToArray();
        Assert.Equal(ApplicationMethod.WetWipe, steps.Single(step => step.Parts.Contains(new DevicePartId("first"))).Setting!.Method);
        Assert.Equal(ApplicationMethod.DampWipe, steps.Single(step => step.Parts.Contains(new DevicePartId("second"))).Setting!.Method);
    }

    private static PlanStep[] Disinfecting(ApplicationMethod[] first, ApplicationMethod[] second) =>
        RandomSites.Over(Site(first, second)).PlanOf(new() { Device = RandomSites.Device }).Steps.Where(step => step.Order == StepOrder.Disinfect).ToArray();

    private static Site Site(ApplicationMethod[] first, ApplicationMethod[] second) => new()
    {
        Id = new("ward"),
        Name = "ward",
        Sources = [new() { Id = new("ward-test"), Kind = SourceKind.SiteTest, Title = "an invented test" }],
        Products =
        [
            new()
            {
                Id = Wipe, Name = "wipe", Composition = Composition.Full, CompositionDated = Day, StrengthOf = StrengthOf.Liquid,
                    Temperature = Interval.Closed(15m, 30m),
                Ingredients = [new()
                {
                    Agent = new("isopropanol"),
                    Strength = new(Interval.Exactly(70m), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume)),
                }],
                LabelClaims = [new()
                {
                    Id = new("low"),
                    When = new() { ContactTime = AxisLimit.Within(Interval.AtLeast(30m)), Temperature = AxisLimit.Any, Methods = MethodLimit.Any },
                    Reaches = Level.Low,
                    ShownBy = RandomSites.ShowingAll,
                }],
            },
        ],
        Devices = [new() { Id = RandomSites.Device, Name = "trolley", Parts = [Part("first"), Part("second")] }],
        Rules = [Rule("one", "first", first, 500m), Rule("other", "second", second, 500m)],
    };

    private static DevicePart Part(string id) => new() { Id = new(id), OneOfTypes = [new("trolley-frame")], Soil = [] };

    private static Rule Rule(string id, string part, ApplicationMethod[] methods, decimal uses) => new()
    {
        Id = new("trolley." + id),
        Target = RuleTarget.On(RandomSites.Device, new(part)),
        Product = Wipe,
        CompositionDated = Day,
        When = new()
        {
            Dilution = AxisLimit.Within(Interval.Exactly(1m)),
            ExposureTime = AxisLimit.Any,
            Temperature = AxisLimit.Any,
            Ph = AxisLimit.Any,
            Uses = AxisLimit.Within(Interval.AtMost(uses)),
            Methods = MethodLimit.Within(methods),
        },
        Allows = true,
        CountsTowards = Mechanism.LegendWear,
        Why = "An invented rule.",
        KnownBy = KnownBy.Practice,
        Sources = [new("ward-test")],
        Reviewed = Day,
    };
}
