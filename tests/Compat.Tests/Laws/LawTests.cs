using Compat.Tests.Evaluation;
using Compat.Tests.RandomCases;

namespace Compat.Tests.Laws;

/// <summary>What may be added or left out without ever loosening an answer.</summary>
public sealed class LawTests
{
    [Fact]
    public void AddingANotAllowedRuleNeverLoosens() => NeverLoosens(Change.AddNotAllowed);

    [Fact]
    public void AddingAnIngredientNeverLoosens() => NeverLoosens(Change.AddIngredient);

    [Fact]
    public void AddingAMaterialToThePartAskedNeverLoosens() => NeverLoosens(Change.AddMaterial, PointTests.Plainly);

    [Fact]
    public void NamingAMaterialThatDecidesNoOneOfNeverLoosens() => NeverLoosens(Change.NameAnother, PointTests.Plainly);

    [Fact]
    public void SayingThatThereAreOtherMaterialsNeverLoosens() => NeverLoosens(Change.KnowPartly, PointTests.Plainly);

    [Fact]
    public void AddingADutyNeverLoosens() => NeverLoosens(Change.AddDuty);

    [Fact]
    public void AddingAMemberOfAOneOfNeverLoosens() => NeverLoosens(Change.AddOneOf);

    [Fact]
    public void MoreUncertaintyNeverLoosens() => NeverLoosens(Change.Widen);

    [Fact]
    public void StayingLongerNeverLoosens() => NeverLoosens(Change.StayLonger, PointTests.Plainly);

    [Fact]
    public void NotKnowingTheSerialNumberNeverLoosens() => NeverLoosens(Change.ForgetSerial);

    [Fact]
    public void OnlyListedNeverLoosens() => NeverLoosens(Change.OnlyListed);

    [Fact]
    public void RemovingAnAllowedWithoutDutyNeverLoosens() => NeverLoosens(Change.RemoveAllowed, PointTests.Plainly);

    [Fact]
    public void OrderOfRecordsChangesNothing() => Same(Change.Reorder);

    [Fact]
    public void RenamingIdsChangesNothing() => Same(Renaming.Rename);

    /// <summary>
    /// With a reading of the verdict: an 'allowed' that no longer speaks can take its limit with it ('the source does not say'), which is no permission more.
    /// </summary>
    private static void NeverLoosens(Func<Case, Random, Case?> change, Func<Verdict, Verdict>? read = null) => RandomRun.ForAll(Shape.Region, c =>
    {
        if (change(c, new Random(c.Seed)) is not { } changed || changed.Build(out _) is not { } kb) return;
        if (!kb.TryAsk(changed.Question, out var after, out _)) return;
        var before = c.Build().Ask(c.Question);
        read ??= verdict => verdict;
        Assert.True(
            read(after!.Verdict) <= read(before.Verdict),
            $"{before.Verdict} became {after.Verdict} ({before.Decisive.Code}, {after.Decisive.Code}) with\n{changed}");
    }, share: 4);

    private static void Same(Func<Case, Random, Case?> change) => RandomRun.ForAll(Shape.Region, c =>
    {
        var changed = change(c, new Random(c.Seed))!;
        var (before, after) = (c.Build().Ask(c.Question), changed.Build().Ask(changed.Question));
        Assert.True(before.Verdict == after.Verdict, $"{before.Verdict} became {after.Verdict} with\n{changed}");
        Assert.Equal(before.BoxCount, after.BoxCount);
        Assert.Equal(before.Boxes.Select(Figures), after.Boxes.Select(Figures));
    }, share: 4);

    private static (object, object?, object?, object, object, object, object) Figures(Answers.AllowedBox b) =>
        (b.Method, b.Strength, b.Dilution, b.ExposureTime, b.Temperature, b.Ph, b.Uses);
}
