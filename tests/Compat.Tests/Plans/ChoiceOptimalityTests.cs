using Compat.Planning;
using Compat.Tests.RandomCases;

namespace Compat.Tests.Plans;

/// <summary>On random devices a general-purpose solver finds the same value at every level.</summary>
public sealed class ChoiceOptimalityTests
{
    private const int Sites = 25;

    /// <summary>Of tasks with no site behind them.</summary>
    [Fact]
    public void EveryLevelIsTheBestOne()
    {
        var devices = RandomSize.Cases(share: 50);
        var seed = (int)RandomSize.Seed();
        for (var device = 0; device < devices; device++)
        {
            var random = new Random(seed + device);
            Compare(RandomTasks.Make(random, random.Next(4, 16), random.Next(3, 13), random.Next(3, 12), random.Next(1, 5)), $"seed {seed + device}");
        }
    }

    /// <summary>Of what plans of whole sites choose from: products, methods, dilutions, contact times and temperatures.</summary>
    [Fact]
    public void EveryLevelIsTheBestOne_OfMethodsToo()
    {
        var severalMethods = 0;
        for (var seed = 0; seed < Sites; seed++)
        {
            var kb = RandomSites.Over(RandomSites.Make(seed));
            var task = new PlanMaker(kb, kb.Compiled, new() { Device = RandomSites.Device }).TaskOf(1 + (seed % 3));
            if (task.Parts.Any(
                part => part.Options.GroupBy(option => string.Join(" ", option.Products.Select(used => used.Product)))
                .Any(same => same.Count() > 1))) severalMethods++;
            Compare(task, $"site {seed}");
        }

        Assert.True(severalMethods > Sites / 2, $"only {severalMethods} sites have a product with several options");
    }

    private static void Compare(ChoiceTask task, string name)
    {
        var (ours, theirs) = (ChoiceSolver.Solve(task), new LevelSolver(task));
        var (cost, shown) = (ours.Cost, $"{name}\n{ChoiceText.Of(task)}");
        Assert.True(cost.NotServed == theirs.NotServed, shown);
        Assert.True(cost.PartsWorse == theirs.PartsWorse, shown);
        Assert.True(cost.HarmExcess == theirs.HarmExcess, shown);
        Assert.True(cost.Products == theirs.ProductCount, shown);
        Assert.True(cost.LargestShare == theirs.LargestShare, shown);
        Assert.True(cost.ShareSum == theirs.ShareSum, shown);
        Assert.True(cost.Steps == theirs.Steps, shown);
        Assert.True(cost.ContactTime == theirs.ContactTime, shown);
        Assert.True(ours.Products.SequenceEqual(theirs.Products), shown);
        Assert.True(ChoiceText.Options(ours) == theirs.Options, $"{ChoiceText.Options(ours)} and not {theirs.Options}\n{shown}");
    }
}
