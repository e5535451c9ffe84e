using Compat.Tests.Evaluation;
using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Laws;

/// <summary>What naming a material beside a part may do: decide a one-of of its list, or add to it; never put something in place of it.</summary>
public sealed class NamedMaterialLawTests
{
    [Fact]
    public void NamingAMaterialThatTheTypeHasForCertainChangesNothing() => ForTypes((kb, c, list) =>
    {
        foreach (var slot in list.Where(slot => slot.OneOf.Count == 1)) Assert.Equal(kb.Ask(c.Question).Verdict, Naming(kb, c, slot.OneOf[0]));
    });

    [Fact]
    public void TheWorstOfTheCandidatesOfAOneOfNamedInTurnGivesNoMoreThanTheType() => ForTypes((kb, c, list) =>
    {
        foreach (var slot in list.Where(slot => slot.OneOf.Count > 1))
            Assert.True(
                slot.OneOf.Min(name => PointTests.Plainly(Naming(kb, c, name))) <= PointTests.Plainly(kb.Ask(c.Question).Verdict),
                $"each candidate of {string.Join("|", slot.OneOf)} gives more with\n{c}");
    });

    [Fact]
    public void NamingAMaterialGivesNoMoreThanAListThatHasItInPlaceOfTheOneOfItDecides() => ForTypes((kb, c, list) =>
    {
        var trees = new ReferenceTrees(c.Data, []);
        foreach (var name in c.Data.Materials.Select(m => m.Id).Where(name => !list.Any(slot => slot.OneOf.All(m => trees.Below(m, name)))))
        {
            var open = list.Where(slot => slot.OneOf.Count > 1 && slot.OneOf.Any(m => trees.Below(m, name) || trees.Below(name, m))).ToArray();
            MaterialSlot[] placed = [.. open.Length == 1 ? list.Except(open) : list, new MaterialSlot(name)];
            var type = c.Question.Part!;
            var known = trees.Line(type).FirstOrDefault(p => p.Materials is not null)?.MaterialsKnown ?? list.Count > 0;
            var changed = c with
            {
                Data = c.Data with { Parts = c.Data.Parts.Select(p => p.Id == type ? p with { Materials = placed, MaterialsKnown = known } : p).ToArray() },
            };
            var most = changed.Build(out _)?.Ask(c.Question).Verdict;
            Assert.True(
                most is null || PointTests.Plainly(Naming(kb, c, name)) <= PointTests.Plainly(most.Value),
                $"naming {name} gives {Naming(kb, c, name)}, a type that has it {most} with\n{c}");
        }
    });

    private static Verdict Naming(KnowledgeBase kb, Case c, MaterialId name) => kb.Ask(c.Question with { Materials = [new MaterialSlot(name)] }).Verdict;

    private static void ForTypes(Action<KnowledgeBase, Case, IReadOnlyList<MaterialSlot>> holds)
    {
        var tried = 0;
        RandomRun.ForAll(Shape.Point, c =>
        {
            if (c.Question.Part is not { } type) return;
            tried++;
            holds(c.Build(), c with { Question = c.Question with { Materials = [], MaterialsKnown = null } }, new ReferenceTrees(c.Data, []).Materials(type));
        }, share: 4);
        Assert.True(tried > 10);
    }
}
