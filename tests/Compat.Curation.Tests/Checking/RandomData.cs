using Compat.Tests.RandomCases;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Core;
using Interval = Compat.Space.Interval;

namespace Compat.Curation.Tests.Checking;

/// <summary>A random knowledge base with standing rules, printed as files where a property fails.</summary>
internal sealed record RandomData(int Seed, KnowledgeData Data, Site? Site = null)
{
    public override string ToString() => $"seed {Seed}\n{KnowledgeText.Write(Data)}{(Site is null ? "" : KnowledgeText.Write(Site, Data))}";

    /// <summary>Holds a property against random sets.</summary>
    /// <param name="count">How many it usually is.</param>
    /// <param name="holds">The property.</param>
    /// <param name="withSite">Whether each has a site with devices.</param>
    public static void ForAll(int count, Action<RandomData> holds, bool withSite = false)
    {
        var config = Config.QuickThrowOnFailure.WithMaxTest(RandomSize.Checks(count)).WithQuietOnSuccess(true)
            .WithReplay(FSharpOption<Replay>.Some(new Replay(new Rnd(RandomSize.Seed()), FSharpOption<int>.None)));
        Check.One(config, Prop.ForAll(Arb.From(Gen.Choose(0, int.MaxValue - 1).Select(seed => Valid(seed, withSite)), Shrink), holds));
    }

    /// <summary>The first valid set from a seed on.</summary>
    private static RandomData Valid(int seed, bool withSite)
    {
        for (var at = seed; ; at = (at + 1) & int.MaxValue)
        {
            var made = CaseMaker.Make(at, Shape.Map);
            var data = made.Data;
            if (withSite && made is { Site.Devices.Count: > 0 } && made.Build(out _) is not null)
                return new(at, data with { StandingRules = Standing(data, new Random(at)) }, made.Site);
            if (!withSite && KnowledgeBase.TryBuild(data, out _).Count == 0) return new(at, data with { StandingRules = Standing(data, new Random(at)) });
        }
    }

    private static StandingRule[] Standing(KnowledgeData data, Random random)
    {
        return Enumerable.Range(1, random.Next(3)).Select(i =>
        {
            var onPart = random.Next(2) == 0;
            return new StandingRule
            {
                Id = new("stands-" + i),
                Part = onPart ? One(data.Parts).Id : null,
                Material = onPart ? null : One(data.Materials).Id,
                Agent = One(data.Agents).Id,
                When = new ExposureBox
                {
                    ExposureTime = random.Next(3) == 0
                        ? AxisLimit.Within(One<Interval>([Interval.AtMost(60), Interval.Below(30), Interval.Above(120), Interval.AtLeast(600)])) : default,
                    Temperature = random.Next(3) == 0 ? AxisLimit.Within(One<Interval>([Interval.Closed(10, 25), Interval.Above(40), Interval.Exactly(20)]))
                        : default,
                    Methods = random.Next(3) == 0 ? MethodLimit.Within(ApplicationMethod.WetWipe, ApplicationMethod.Spray) : default,
                },
                AlwaysWith = random.Next(3) == 0 ? DutyKind.TakeOff : null,
                Reason = "made at random",
                Sources = [],
            };
        }).ToArray();

        T One<T>(IReadOnlyList<T> list) => list[random.Next(list.Count)];
    }

    /// <summary>The set without one rule or standing rule, where that is still valid.</summary>
    private static IEnumerable<RandomData> Shrink(RandomData whole)
    {
        foreach (var standing in whole.Data.StandingRules) yield return whole with
        {
            Data = whole.Data with { StandingRules = whole.Data.StandingRules.Where(one => one != standing).ToArray() },
        };
        foreach (var rule in whole.Data.Rules)
        {
            var rules = whole.Data.Rules.Where(one => one != rule).Select(one => one with { Overrides = one.Overrides.Where(id => id != rule.Id).ToArray() })
                .ToArray();
            var smaller = whole.Data with { Rules = rules };
            if (new Case(0, smaller with { StandingRules = [] }, whole.Site, new()).Build(out _) is not null) yield return whole with { Data = smaller };
        }
    }
}
