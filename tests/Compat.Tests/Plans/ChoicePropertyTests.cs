using Compat.Planning;

namespace Compat.Tests.Plans;

public sealed class ChoicePropertyTests
{
    [Fact]
    public void NoChoiceIsBetter() =>
        RandomTasks.ForAll((task, _) => Assert.Equal(ChoiceText.Of(EveryChoice.Best(task)), ChoiceText.Of(ChoiceSolver.Solve(task))));

    [Fact]
    public void OneOptionMoreNeverServesFewer() => RandomTasks.ForAll((task, random) =>
    {
        if (task.Parts.Count == 0) return;
        var part = random.Next(task.Parts.Count);
        var more = task.With(part, options => options.Append(RandomTasks.Option(random, 99, 7, 9, part)));
        Assert.True(ChoiceSolver.Solve(more).Cost.NotServed <= ChoiceSolver.Solve(task).Cost.NotServed);
    });

    [Fact]
    public void OneProductMoreNeverServesFewer() => RandomTasks.ForAll((task, random) =>
    {
        var more = task with { Parts = task.Parts.Select(part => part with { Options = [.. part.Options, NewProduct(random)] }).ToArray() };
        Assert.True(ChoiceSolver.Solve(more).Cost.NotServed <= ChoiceSolver.Solve(task).Cost.NotServed);
        var larger = ChoiceSolver.Solve(task with { MaxProducts = task.MaxProducts + 1 });
        Assert.True(larger.Cost.CompareTo(ChoiceSolver.Solve(task).Cost) <= 0);
    });

    [Fact]
    public void OrderOfPartsOptionsAndProductsMeansNothing() => RandomTasks.ForAll((task, random) =>
    {
        var shuffled = task with
        {
            Parts = Shuffled(task.Parts.Select(part => part with
            {
                Options = Shuffled(part.Options.Select(option => option with { Products = Shuffled(option.Products), Steps = Shuffled(option.Steps) })),
            })),
            NeverInOnePlan = Shuffled(task.NeverInOnePlan.Select(pair => new ProductPair(pair.Other, pair.One))),
            NeverOnOnePart = Shuffled(task.NeverOnOnePart),
        };
        Assert.Equal(ChoiceText.Of(ChoiceSolver.Solve(task)), ChoiceText.Of(ChoiceSolver.Solve(shuffled)));

        T[] Shuffled<T>(IEnumerable<T> all) => all.OrderBy(_ => random.Next()).ToArray();
    });

    [Fact]
    public void OneProductFewerIsTheBestWithFewer() => RandomTasks.ForAll((task, _) =>
    {
        var (choice, fewer) = ChoiceSolver.SolveBoth(task);
        Assert.Equal(ChoiceText.Of(ChoiceSolver.Solve(task)), ChoiceText.Of(choice));
        Assert.Equal(choice.Products.Count == 0, fewer is null);
        if (fewer is null) return;
        Assert.Equal(ChoiceText.Of(EveryChoice.Best(task with { MaxProducts = choice.Products.Count - 1 })), ChoiceText.Of(fewer.Without));
        Assert.True(fewer.Without.Cost.CompareTo(choice.Cost) > 0);
        Assert.Equal(fewer.Without.Cost.NotServed - choice.Cost.NotServed, fewer.Lost.Count - fewer.Gained.Count);
    });

    private static ChoiceOption NewProduct(Random random) => new() { Ordinal = 99, Products = [new(50, random.Next(6))], Steps = [random.Next(9)] };
}
