using Compat.Tests.Reference;

namespace Compat.Tests.RandomCases;

/// <summary>Random cases are worth running only if they are valid and reach every step of the specification.</summary>
public sealed class CaseMakerTests
{
    [Fact]
    public void NearlyAllAreValidAsMade()
    {
        var refused = new List<string>();
        for (var seed = 0; seed < 500; seed++)
            if (CaseMaker.Make(seed, Shape.Region).Build(out var problems) is null) refused.Add(string.Join("\n", problems));

        Assert.True(refused.Count <= 25, $"{refused.Count} of 500 refused\n" + string.Join("\n", refused.SelectMany(r => r.Split('\n')).Take(20)));
    }

    [Fact]
    public void EveryStepDecidesOften()
    {
        var steps = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (var seed = 0; seed < 2_000; seed++)
        {
            var made = CaseMaker.Make(seed, Shape.Point);
            if (made.Build(out _) is null) continue;
            var step = new ReferenceEvaluator(made.Data, made.Sites, made.Question).Point().Step;
            steps[step] = steps.GetValueOrDefault(step) + 1;
        }

        string[] all = ["1 barrier", "4 forbidden", "5 not listed", "6 own duties", "7 no evidence", "7 by the part", "7 by its materials",
            "7 composition not known", "8 duties"];
        Assert.True(all.All(step => steps.GetValueOrDefault(step) >= 5), string.Join("\n", steps));
    }

    [Fact]
    public void RegionsGiveEveryVerdictOften()
    {
        var verdicts = new SortedDictionary<Verdict, int>();
        for (var seed = 0; seed < 2_000; seed++)
        {
            var made = CaseMaker.Make(seed, Shape.Region);
            if (made.Build(out _) is not { } kb) continue;
            var verdict = kb.Ask(made.Question).Verdict;
            verdicts[verdict] = verdicts.GetValueOrDefault(verdict) + 1;
        }

        Assert.True(Enum.GetValues<Verdict>().All(v => verdicts.GetValueOrDefault(v) >= (v == Verdict.Allowed ? 10 : 150)), string.Join("\n", verdicts));
    }
}
