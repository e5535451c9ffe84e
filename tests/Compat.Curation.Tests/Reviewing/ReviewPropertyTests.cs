using Compat.Curation.Reviewing;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Reviewing;

/// <summary>The review against the reference, point by point, and against itself.</summary>
public class ReviewPropertyTests
{
    private const int Points = 60;

    [Fact]
    public void A_point_lies_in_a_reported_box_if_and_only_if_its_verdict_differs()
    {
        int differing = 0, same = 0;
        RandomReview.ForAll(100, mostEdits: 3, pair =>
        {
            var changes = pair.Report.Groups.SelectMany(group => group.Answers).ToArray();
            var random = new Random(pair.Seed);
            foreach (var point in Enumerable.Range(0, Points).Select(_ => RandomPoint.Make(pair, random)))
            {
                if (!HasOneUnit(pair, point)) continue;
                var (before, after) = (point.Ask(pair.Before, pair.Sites), point.Ask(pair.After, pair.Sites));
                var holding = changes.Where(point.LiesIn).ToArray();
                if (before != after)
                {
                    differing++;
                    Assert.True(
                        holding.Any(change => !point.IsOf(change) || (Plain(change.From) == before && Plain(change.To) == after)),
                        $"no box for {before} -> {after} at {point.Question}");
                }
                else
                {
                    same++;
                    Assert.True(
                        holding.All(change => !point.IsOf(change) || Plain(change.From) == Plain(change.To)),
                        $"a box where nothing changed at {point.Question}");
                }
            }
        });
        Assert.True(differing * 200 > differing + same && same > differing, $"{differing} points differ, {same} do not");
    }

    [Fact]
    public void The_question_of_each_change_shows_both_answers() => RandomReview.ForAll(120, mostEdits: 3, pair =>
    {
        var (before, after) = (pair.Build(pair.Before), pair.Build(pair.After));
        foreach (var change in pair.Report.Groups.SelectMany(group => group.Answers).Where(change => !change.IsNewAgent && !change.IsInAnotherUnit))
        {
            var hadNoUnit = new ReferenceTrees(pair.Before, []).Basis(change.Agent) is null;
            var verdicts =
                (Plain(before.Ask(hadNoUnit ? change.Question with { Strength = null } : change.Question).Verdict), Plain(after.Ask(change.Question).Verdict));
            Assert.True(
                verdicts == (Plain(change.From), Plain(change.To)),
                $"{verdicts} at {Compat.Curation.Checking.WitnessLine.Of(change.Question)}, in "
                    + $"{Compat.Curation.Checking.BoxLine.Of(change.Box, change.Basis)}: {change.From} -> {change.To}");
        }
    });

    [Fact]
    public void A_base_beside_itself_has_no_change_in_whatever_order() => RandomReview.ForAll(40, mostEdits: 1, pair =>
    {
        var data = pair.Before;
        var turned = data with
        {
            Rules = data.Rules.Reverse()
                .Select(rule =>
                    rule with { Overrides = rule.Overrides.Reverse().ToArray(), Why = "in other words", Sources = rule.Sources.Reverse().ToArray() }).ToArray(),
            Parts = data.Parts.Reverse().ToArray(),
            Materials = data.Materials.Reverse().Select(one => one with { Name = one.Name + " renamed" }).ToArray(),
            Agents = data.Agents.Reverse().ToArray(),
            Conventions = data.Conventions.Reverse().ToArray(),
        };
        Assert.Empty(DataReview.Run(data, pair.Sites, data, pair.Sites).Edits);
        Assert.Empty(DataReview.Run(data, pair.Sites, turned, pair.Sites).Groups);
    });

    [Fact]
    public void The_review_backwards_is_its_mirror() => RandomReview.ForAll(120, mostEdits: 3, pair =>
    {
        var (there, back) = (Regions(pair.Report), Regions(DataReview.Run(pair.After, pair.Sites, pair.Before, pair.Sites)));
        var random = new Random(pair.Seed);
        foreach (var point in Enumerable.Range(0, Points).Select(_ => RandomPoint.Make(pair, random)))
        {
            if (!HasOneUnit(pair, point)) continue;
            Assert.Equal(
                there.Where(point.LiesIn).Select(change => (change.From, change.To)).Distinct().Order(),
                back.Where(point.LiesIn).Select(change => (change.To, change.From)).Distinct().Order());
        }
    });

    [Fact]
    public void A_change_has_the_edits_that_make_one_there_alone() => RandomReview.ForAll(120, mostEdits: 4, pair =>
    {
        var whole = pair.Report;
        var edits = EditList.Between(pair.Before, pair.After);
        var application = new EditApplication(edits.All);
        var alone = edits.All.Where(EditApplication.Decides)
            .Select(edit => (Edit: edit, Data: EditApplication.Apply(edits.Before, application.With(edit))))
            .Where(one => KnowledgeBase.TryBuild(one.Data, out _).Count == 0)
            .Select(one =>
                (one.Edit, Changes: DataReview.Run(edits.Before, pair.Sites, one.Data, pair.Sites).Groups.SelectMany(group => group.Answers).ToArray()))
            .ToArray();
        foreach (var group in whole.Groups)
        {
            foreach (var change in group.Answers.Where(change => !change.IsInAnotherUnit))
            {
                var making = alone.Where(one => one.Changes.Any(other => Holds(other, change))).Select(one => one.Edit.Id).ToArray();
                if (group.Cause is { } cause)
                    Assert.True(
                        making.Contains(cause.Id) || alone.All(one => one.Edit.Id != cause.Id), $"`{cause.Id}` alone makes no change at {change.Question}");
                else Assert.Empty(making);
            }
        }
    });

    private static Verdict Plain(Verdict verdict) => verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : verdict;

    private static AnswerChange[] Regions(ReviewReport report) => report.Groups.SelectMany(group => group.Answers).ToArray();

    private static bool HasOneUnit(RandomReview pair, RandomPoint point)
    {
        StrengthBasis? Basis(KnowledgeData data) => new ReferenceTrees(data, []).Basis(point.Question.Agent!);
        return Basis(pair.Before) == Basis(pair.After);
    }

    /// <summary>Whether a change holds the point that another shows.</summary>
    private static bool Holds(AnswerChange change, AnswerChange other)
    {
        var subject = other.Subject;
        return (change.Serial, other.Serial) is ({ } one, { } another) && one != another ? false
            : new RandomPoint(other.Question, subject, other.Question.Strength?.Range.Lower ?? 1m).LiesIn(change);
    }
}
