using Compat.Planning;

namespace Compat.Tests.Plans;

/// <summary>The declaration is filled from what was written down, never from the plan.</summary>
public sealed class StatusDeclarationTests
{
    private static readonly PlanSheet Sheet = Enumerable.Range(0, 50)
        .Select(seed => RandomSites.Over(RandomSites.Make(seed)).PlanOf(new() { Device = RandomSites.Device }))
        .First(sheet => sheet.Under(PlanHeading.Done).Any());
    private static readonly DoneRecord Whole = new()
    {
        Device = RandomSites.Device,
        Date = new(2026, 11, 25),
        Steps = Sheet.Steps.Select(step => new DoneStep(step.Number, true, "mk", step.Product)).ToArray(),
    };

    [Fact]
    public void WithoutARecord_DonePartsAreBlanks_OthersAreNotDecontaminated()
    {
        Assert.True(StatusDeclaration.TryMake(Sheet, null, out var declaration, out _));
        foreach (var part in Sheet.Parts)
            Assert.Equal(
                part.Heading is PlanHeading.CannotBeDone or PlanHeading.NeedsNothing ? PartStatus.NotDecontaminated
                : PartStatus.Blank, declaration!.Parts.Single(one => one.Part == part.Part.Id).Status);
    }

    [Fact]
    public void AStepNotDoneOrNotSigned_LeavesItsPartsNotFully()
    {
        var done = Sheet.Under(PlanHeading.Done).First().Part.Id;
        Assert.Equal(PartStatus.Decontaminated, StatusOf(Whole, done));
        foreach (var step in Whole.Steps.Where(step => Sheet.Steps[step.Number - 1] is { Product: not null } planned && planned.Parts.Contains(done)))
        {
            Assert.Equal(
                PartStatus.NotFully, StatusOf(Whole with { Steps = Whole.Steps.Select(one => one == step ? one with { Done = false } : one).ToArray() }, done));
            Assert.Equal(
                PartStatus.NotFully,
                StatusOf(Whole with { Steps = Whole.Steps.Select(one => one == step ? one with { Initials = " " } : one).ToArray() }, done));
            Assert.Equal(PartStatus.NotFully, StatusOf(Whole with { Steps = Whole.Steps.Where(one => one != step).ToArray() }, done));
        }
    }

    [Fact]
    public void ARecordOfAnotherPlanIsRefused()
    {
        Assert.Equal("done-device", Refused(Whole with { Device = new("other") }));
        Assert.Equal("done-step", Refused(Whole with { Steps = [new(99, true, "mk", null)] }));
        Assert.Equal("done-twice", Refused(Whole with { Steps = [Whole.Steps[0], Whole.Steps[0]] }));
        var product = Whole.Steps.First(step => step.Product is not null);
        Assert.Equal("done-product", Refused(Whole with { Steps = [product with { Product = new("another") }] }));
        Assert.Equal("done-product", Refused(Whole with { Steps = [product with { Product = null }] }));
    }

    private static PartStatus StatusOf(DoneRecord record, DevicePartId part)
    {
        Assert.True(StatusDeclaration.TryMake(Sheet, record, out var declaration, out var problems), string.Join("; ", problems));
        return declaration!.Parts.Single(one => one.Part == part).Status;
    }

    private static string Refused(DoneRecord record)
    {
        Assert.False(StatusDeclaration.TryMake(Sheet, record, out _, out var problems));
        return Assert.Single(problems).Code;
    }
}
