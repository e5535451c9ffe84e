using Compat.Curation.Reviewing;
using Compat.Tests.RandomCases;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Core;

namespace Compat.Curation.Tests.Reviewing;

/// <summary>Two random knowledge bases, one an edit of the other, perhaps with a site over both; printed as files where a property fails.</summary>
internal sealed record RandomReview(int Seed, KnowledgeData Before, KnowledgeData After, IReadOnlyList<Site> Sites)
{
    public ReviewReport Report => DataReview.Run(Before, Sites, After, Sites);

    public override string ToString() =>
        $"seed {Seed}\n---- BASE\n{KnowledgeText.Write(Before)}\n---- HEAD\n{KnowledgeText.Write(After)}\n"
            + $"{string.Join("\n", Sites.Select(site => KnowledgeText.Write(site, Before)))}";

    /// <summary>The knowledge base of one side.</summary>
    public KnowledgeBase Build(KnowledgeData data)
    {
        KnowledgeBase.TryBuild(data, out var kb);
        foreach (var site in Sites) kb = kb!.With(site);
        return kb!;
    }

    /// <summary>Holds a property against so many pairs as it usually is, or as the run says.</summary>
    public static void ForAll(int count, int mostEdits, Action<RandomReview> holds)
    {
        var config = Config.QuickThrowOnFailure.WithMaxTest(RandomSize.Checks(count)).WithQuietOnSuccess(true)
            .WithReplay(FSharpOption<Replay>.Some(new Replay(new Rnd(RandomSize.Seed()), FSharpOption<int>.None)));
        Check.One(config, Prop.ForAll(Arb.From(Gen.Choose(0, int.MaxValue - 1).Select(at => Valid(at, mostEdits)), Shrink), holds));
    }

    /// <summary>The first valid pair from a seed on.</summary>
    private static RandomReview Valid(int seed, int mostEdits)
    {
        for (var at = seed; ; at = (at + 1) & int.MaxValue)
        {
            var made = CaseMaker.Make(at, Shape.Map);
            if (made.Build(out _) is null) continue;
            var random = new Random(at);
            var edited = RandomEdit.Of(made.Data, random, 1 + random.Next(mostEdits));
            if ((made with { Data = edited }).Build(out _) is not null) return new(at, made.Data, edited, made.Sites);
        }
    }

    /// <summary>The pair without one rule, or without the site, where that is still valid.</summary>
    private static IEnumerable<RandomReview> Shrink(RandomReview whole)
    {
        if (whole.Sites.Count > 0) yield return whole with { Sites = [] };
        foreach (var id in whole.Before.Rules.Concat(whole.After.Rules).Select(rule => rule.Id).Distinct())
        {
            var (before, after) = (Without(whole.Before, id), Without(whole.After, id));
            if (IsValid(before, whole.Sites) && IsValid(after, whole.Sites)) yield return whole with { Before = before, After = after };
        }
    }

    private static bool IsValid(KnowledgeData data, IReadOnlyList<Site> sites) => new Case(0, data, sites.Count > 0 ? sites[0] : null, new())
        .Build(out _) is not null;

    private static KnowledgeData Without(KnowledgeData data, RuleId gone) => data with
    {
        Rules = data.Rules.Where(rule => rule.Id != gone).Select(rule => rule with { Overrides = rule.Overrides.Where(id => id != gone).ToArray() }).ToArray(),
    };
}
