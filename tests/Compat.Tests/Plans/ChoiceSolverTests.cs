using Compat.Planning;

namespace Compat.Tests.Plans;

/// <summary>Each level decides where those before it are equal, and gives way to them.</summary>
public sealed class ChoiceSolverTests
{
    [Fact]
    public void MostPartsAreServedEvenByWhatHarmsMore()
    {
        var task = Task(1, [Option(0, [(1, 0)]), Option(1, [(2, 5)])], [Option(0, [(2, 5)])]);
        Expect(task, [2], "0:1, 1:0");
    }

    [Fact]
    public void TheMildestIsTakenEvenWithMoreProducts()
    {
        var task = Task(2, [Option(0, [(1, 0)]), Option(1, [(2, 1)])], [Option(0, [(2, 1)])]);
        Expect(task, [1, 2], "0:0, 1:0");
        Expect(task with { MaxProducts = 1 }, [2], "0:1, 1:0");
    }

    [Fact]
    public void FewestPartsAreGivenWorseThanTheirMildestBeforeTheClassesAreAddedUp()
    {
        var oneByFour = Option(1, [(9, 4)]);
        var task = Task(1, [Option(0, [(1, 0)]), oneByFour], [Option(0, [(9, 0)]), Option(1, [(1, 1)])], [Option(0, [(9, 0)]), Option(1, [(1, 1)])]);
        Expect(task, [9], "0:1, 1:0, 2:0");
        Assert.Equal((1, 4), (ChoiceSolver.Solve(task).Cost.PartsWorse, ChoiceSolver.Solve(task).Cost.HarmExcess));
    }

    [Fact]
    public void ThenFewestClassesWorse()
    {
        var task = Task(1, [Option(0, [(1, 0)]), Option(1, [(9, 3)])], [Option(0, [(9, 0)]), Option(1, [(1, 1)])]);
        Expect(task, [1], "0:0, 1:1");
    }

    [Fact]
    public void TheWorstOfItsProductsIsTheHarmOfAnOption()
    {
        var task = Task(2, [Option(0, [(1, 3), (2, 0)]), Option(1, [(3, 2), (4, 2)])]);
        Expect(task, [3, 4], "0:1");
    }

    [Fact]
    public void FewestProductsBeforeLimitsAreSpared()
    {
        var task = Task(3, [Option(0, [(1, 0)], share: new(1, 100)), Option(1, [(2, 0)], share: new(1, 2))], [Option(0, [(2, 0)])]);
        Expect(task, [2], "0:1, 1:0");
    }

    [Fact]
    public void TheLargestShareBeforeTheSum()
    {
        var task = Task(
            1, [Option(0, [(1, 0)], share: new(3, 10)), Option(1, [(2, 0)], share: new(1, 5))], [Option(0, [(1, 0)]), Option(1, [(2, 0)], share: new(1, 5))]);
        Expect(task, [2], "0:1, 1:1");
        Assert.Equal(new Fraction(2, 5), ChoiceSolver.Solve(task).Cost.ShareSum);
    }

    [Fact]
    public void SharesAreComparedExactly()
    {
        var third = new Fraction(1, 3);
        var less = new Fraction(333333333333333333, 1000000000000000000);
        var task = Task(1, [Option(0, [(1, 0)], share: third), Option(1, [(2, 0)], share: less)]);
        Expect(task, [2], "0:1");
    }

    [Fact]
    public void TheSumOfSharesBeforeSteps()
    {
        var task = Task(1, [Option(0, [(1, 0)], steps: [1], share: new(1, 9)), Option(1, [(1, 0)], steps: [1, 2, 3])], [Option(0, [(1, 0)], share: new(1, 9))]);
        Expect(task, [1], "0:1, 1:0");
    }

    [Fact]
    public void AStepThatServesSeveralPartsCountsOnce()
    {
        var task = Task(
            1,
            [Option(0, [(1, 0)], steps: [1]), Option(1, [(1, 0)], steps: [9], wet: 60)],
            [Option(0, [(1, 0)], steps: [2]), Option(1, [(1, 0)], steps: [9], wet: 60)],
            [Option(0, [(1, 0)], steps: [3]), Option(1, [(1, 0)], steps: [9], wet: 60)]);
        Expect(task, [1], "0:1, 1:1, 2:1");
        Assert.Equal((1, 180m), (ChoiceSolver.Solve(task).Cost.Steps, ChoiceSolver.Solve(task).Cost.ContactTime));
    }

    [Fact]
    public void ThenLeastContactTime()
    {
        var task = Task(1, [Option(0, [(1, 0)], steps: [1], wet: 30), Option(1, [(1, 0)], steps: [1], wet: 29.5m)], [Option(0, [(1, 0)], steps: [1])]);
        Expect(task, [1], "0:1, 1:0");
    }

    [Fact]
    public void ThenOrdinals()
    {
        var task = Task(1, [Option(3, [(5, 0)]), Option(2, [(4, 0)]), Option(4, [(4, 0)])]);
        Expect(task, [4], "0:2");
    }

    [Fact]
    public void OfPartsThatCannotBothBeServedTheFirstIs()
    {
        var task = Task(1, [Option(0, [(8, 0)])], [Option(0, [(7, 0)])]);
        Expect(task, [7], "1:0");
        Expect(Task(1, [Option(0, [(8, 0)], steps: [1])], [Option(0, [(8, 0)], steps: [1])]) with { MaxProducts = 0 }, [], "");
    }

    [Fact]
    public void ExcludedProductsAreNeverInOnePlan()
    {
        var task = Task(2, [Option(0, [(1, 0)])], [Option(0, [(2, 0)]), Option(1, [(3, 6)])]);
        Expect(task with { NeverInOnePlan = [new(2, 1)] }, [1, 3], "0:0, 1:1");
        Expect(task with { NeverInOnePlan = [new(2, 1), new(3, 1)] }, [1], "0:0");
    }

    [Fact]
    public void ProductsExcludedOnOnePartMayServeTwo()
    {
        var task = Task(2, [Option(0, [(1, 0), (2, 0)])], [Option(0, [(1, 0)])], [Option(0, [(2, 0)])]);
        Expect(task with { NeverOnOnePart = [new(1, 2)] }, [1, 2], "1:0, 2:0");
    }

    [Fact]
    public void WhatTakesMoreThanALimitServesNothing() => Expect(Task(1, [Option(0, [(1, 0)], share: new(101, 100))]), [], "");

    [Fact]
    public void WhatOneProductFewerCosts()
    {
        var task = Task(
            3,
            [Option(0, [(1, 0)], steps: [1]), Option(1, [(2, 1)], steps: [2], wet: 60)],
            [Option(0, [(2, 1)], steps: [2], wet: 60)],
            [Option(0, [(3, 0)], steps: [3], share: new(1, 4))]);
        var (choice, fewer) = ChoiceSolver.SolveBoth(task);
        Assert.Equal([1, 2, 3], choice.Products);
        Assert.Equal([2, 3], fewer!.Without.Products);
        Assert.Empty(fewer.Lost);
        Assert.Equal(1, Assert.Single(fewer.Worse).Option.Ordinal);
        Assert.Equal((-1, 60m, default), (fewer.MoreSteps, fewer.MoreContactTime, fewer.MoreOfLimits));
        Assert.Equal([2], ChoiceSolver.SolveBoth(task with { MaxProducts = 2 }).Fewer!.Lost.Select(part => part.Ordinal));
    }

    [Fact]
    public void ATaskThatContradictsItselfIsRefused()
    {
        Assert.Throws<ArgumentException>(() => ChoiceSolver.Solve(Task(1, [Option(0, []), Option(0, [])])));
        Assert.Throws<ArgumentException>(() => ChoiceSolver.Solve(Task(1) with { NeverInOnePlan = [new(1, 1)] }));
        Assert.Throws<ArgumentException>(() => ChoiceSolver.Solve(Task(1, [Option(0, [], share: new(-1, 2))])));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChoiceSolver.Solve(Task(-1)));
    }

    private static void Expect(ChoiceTask task, int[] products, string options)
    {
        var choice = ChoiceSolver.Solve(task);
        Assert.Equal(products, choice.Products);
        Assert.Equal(options, ChoiceText.Options(choice));
    }

    private static ChoiceTask Task(int maxProducts, params ChoiceOption[][] parts) =>
        new() { MaxProducts = maxProducts, Parts = parts.Select((options, i) => new ChoicePart { Ordinal = i, Options = options }).ToArray() };

    private static ChoiceOption Option(int ordinal, (int Product, int Harm)[] products, int[]? steps = null, decimal wet = 0, Fraction share = default) => new()
    {
        Ordinal = ordinal,
        Products = products.Select(one => new UsedProduct(one.Product, one.Harm)).ToArray(),
        Steps = steps ?? [],
        ContactTime = wet,
        Shares = new Dictionary<Mechanism, Fraction> { [Mechanism.LegendWear] = share },
    };
}
