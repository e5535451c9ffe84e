using Compat.Planning;
using Compat.Tests.RandomCases;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Core;

namespace Compat.Tests.Plans;

/// <summary>Random tasks, with few values on each level so that ties are many.</summary>
internal static class RandomTasks
{
    private static readonly Mechanism[] Mechanisms = [Mechanism.LegendWear, Mechanism.Swelling, Mechanism.Oxidation];

    /// <summary>Holds a property against random tasks, a share of the usual number of cases.</summary>
    public static void ForAll(Action<ChoiceTask, Random> holds, int share = 4)
    {
        var config = Config.QuickThrowOnFailure.WithMaxTest(RandomSize.Cases(share)).WithQuietOnSuccess(true)
            .WithReplay(FSharpOption<Replay>.Some(new Replay(new Rnd(RandomSize.Seed()), FSharpOption<int>.None)));
        var tasks = Arb.From(Gen.Choose(0, int.MaxValue - 1).Select(Small), one => Simpler(one.Task).Select(task => one with { Task = task }));
        Check.One(config, Prop.ForAll(tasks, one => holds(one.Task, new Random(one.Seed))));
    }

    /// <summary>A task of a size.</summary>
    public static ChoiceTask Make(Random random, int parts, int products, int options, int maxProducts)
    {
        var steps = random.Next(1, 3 * products);
        return new()
        {
            MaxProducts = maxProducts,
            Parts = Enumerable.Range(0, parts).Select(part => new ChoicePart
            {
                Ordinal = part,
                Options = Enumerable.Range(0, random.Next(options + 1)).Select(ordinal => Option(random, ordinal, products, steps, part)).ToArray(),
            }).ToArray(),
            NeverInOnePlan = Pairs(random, products),
            NeverOnOnePart = Pairs(random, products),
        };
    }

    /// <summary>One option, with products by harm of their own, as a shelf has it.</summary>
    public static ChoiceOption Option(Random random, int ordinal, int products, int steps, int part) => new()
    {
        Ordinal = ordinal,
        Products = Enumerable.Range(0, random.Next(10) == 0 ? 0 : random.Next(1, 3)).Select(_ => random.Next(products)).Distinct()
            .Select(product => new UsedProduct(product, (((product * 7) + (part * 3)) % 5) + random.Next(2))).ToArray(),
        Shares = Mechanisms.Take(random.Next(3))
            .ToDictionary(mechanism => mechanism, _ => random.Next(25) == 0 ? new Fraction(4, 3) : new Fraction(random.Next(3), random.Next(2, 5))),
        Steps = Enumerable.Range(0, random.Next(4)).Select(_ => random.Next(4) == 0 ? 1000 + part : random.Next(steps)).Distinct().ToArray(),
        ContactTime = 15 * random.Next(4),
    };

    public static ChoiceTask With(this ChoiceTask task, int part, Func<IReadOnlyList<ChoiceOption>, IEnumerable<ChoiceOption>> change) =>
        task with { Parts = task.Parts.Select((one, i) => i == part ? one with { Options = change(one.Options).ToArray() } : one).ToArray() };

    private static Sample Small(int seed)
    {
        var random = new Random(seed);
        return new(seed, Make(random, random.Next(6), random.Next(1, 6), 4, random.Next(4)));
    }

    private static ProductPair[] Pairs(Random random, int products) => Enumerable.Range(0, random.Next(3))
        .Select(_ => new ProductPair(random.Next(products), random.Next(products))).Where(pair => pair.One != pair.Other).ToArray();

    private static IEnumerable<ChoiceTask> Simpler(ChoiceTask task)
    {
        for (var part = 0; part < task.Parts.Count; part++)
        {
            yield return task with { Parts = task.Parts.Where((_, i) => i != part).ToArray() };
            for (var option = 0; option < task.Parts[part].Options.Count; option++) yield return task.With(
                part, options => options.Where((_, i) => i != option));
        }
    }

    /// <summary>A task and the seed of what is changed in it.</summary>
    private sealed record Sample(int Seed, ChoiceTask Task)
    {
        public override string ToString() => Seed + "\n" + ChoiceText.Of(Task);
    }
}
