using Compat.Plans;

namespace Compat.Tests.Plans;

/// <summary>On random devices a general-purpose solver finds the same value at every level: 200, or as COMPAT_PLAN_DEVICES says.</summary>
public sealed class ChoiceOptimalityTests
{
    [Fact]
    public void EveryLevelIsTheBestOne()
    {
        var devices = (int)(RandomTasks.Number("COMPAT_PLAN_DEVICES") ?? 200);
        var seed = (int)(RandomTasks.Number("COMPAT_RANDOM_SEED") ?? 20261125);
        for (var device = 0; device < devices; device++)
        {
            var random = new Random(seed + device);
            var task = RandomTasks.Make(random, random.Next(4, 16), random.Next(3, 13), random.Next(3, 12), random.Next(1, 5));
            var (ours, theirs) = (ChoiceSolver.Solve(task), new LevelSolver(task));
            var (cost, shown) = (ours.Cost, $"seed {seed + device}\n{ChoiceText.Of(task)}");
            Assert.True(cost.NotServed == theirs.NotServed, shown);
            Assert.True(cost.PartsWorse == theirs.PartsWorse, shown);
            Assert.True(cost.HarmExcess == theirs.HarmExcess, shown);
            Assert.True(cost.Products == theirs.ProductCount, shown);
            Assert.True(cost.LargestShare == theirs.LargestShare, shown);
            Assert.True(cost.ShareSum == theirs.ShareSum, shown);
            Assert.True(cost.Steps == theirs.Steps, shown);
            Assert.True(cost.WetTime == theirs.WetTime, shown);
            Assert.True(ours.Products.SequenceEqual(theirs.Products), shown);
            Assert.True(ChoiceText.Options(ours) == theirs.Options, $"{ChoiceText.Options(ours)} and not {theirs.Options}\n{shown}");
        }
    }
}
