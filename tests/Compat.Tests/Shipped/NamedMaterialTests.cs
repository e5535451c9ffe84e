namespace Compat.Tests.Shipped;

/// <summary>Every part type of the shipped data with every material of its own named beside it.</summary>
public class NamedMaterialTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Shipped;

    [Fact]
    public void A_material_of_the_parts_own_that_is_named_never_takes_the_place_of_the_others()
    {
        var agents = Shipped.Data.Agents.Where(a => !Shipped.Data.Agents.Any(child => child.Under == a.Id)).Select(a => a.Id).ToArray();
        var found = new List<string>();
        int asked = 0, decided = 0;
        foreach (var (part, at) in Shipped.Data.Parts.Select((part, at) => (part.Id, at)))
        {
            var list = Upward(part).Select(p => p.Materials).FirstOrDefault(m => m is not null) ?? [];
            foreach (var agent in agents.Where((_, i) => (i + at) % 4 == 0))
            {
                var plain = Plainly(new Question { Part = part, Agent = agent });
                foreach (var slot in list)
                {
                    var named = slot.OneOf.Select(m => Plainly(new Question { Part = part, Agent = agent, Materials = [new MaterialSlot(m)] })).ToArray();
                    asked += named.Length;
                    if (named.Length > 1 && named.Max() > plain) decided++;
                    if (named.Length == 1 ? named[0] != plain : named.Min() > plain)
                        found.Add($"{part} {agent}: {plain}, with {string.Join("|", slot.OneOf)} named {string.Join(", ", named)}");
                }
            }
        }

        Assert.True(found.Count == 0, $"{found.Count} of {asked}\n" + string.Join("\n", found.Take(20)));
        Assert.True(asked > 1000 && decided > 0);
    }

    [Fact]
    public void A_material_that_the_part_has_nothing_to_do_with_never_gives_more()
    {
        var found = new List<string>();
        MaterialId[] strangers = [new("soda-lime-glass"), new("stainless-steel-316"), new("polypropylene"), new("abs"), new("nitrile-rubber")];
        foreach (var part in Shipped.Data.Parts.Select(p => p.Id))
        {
            var open = (Upward(part).Select(p => p.Materials).FirstOrDefault(m => m is not null) ?? []).Where(slot => slot.OneOf.Count > 1)
                .SelectMany(slot => slot.OneOf).ToArray();
            foreach (var name in strangers.Where(name => !open.Any(m => AreRelated(m, name))))
                foreach (var agent in new[] { "isopropanol", "sodium-hypochlorite", "neutral-detergent", "hydrogen-peroxide" })
                {
                    var question = new Question { Part = part, Agent = new(agent) };
                    if (Plainly(question with { Materials = [new MaterialSlot(name)] }) > Plainly(question)) found.Add($"{part} {agent} with {name}");
                }
        }

        Assert.True(found.Count == 0, string.Join("\n", found.Take(20)));
    }

    private static Verdict Plainly(Question question)
    {
        var asked = question with
        {
            Method = ApplicationMethod.DampWipe,
            ExposureTime = Interval.Exactly(30),
            Temperature = Interval.Exactly(20),
            Uses = 1,
            OnlyPart = true,
        };
        var verdict = Shipped.VerdictOf(Shipped.Prepare(asked));
        return verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : verdict;
    }

    private static IEnumerable<PartType> Upward(PartId? id)
    {
        for (var part = Shipped.Data.Parts.Single(p => p.Id == id); part is not null; part = Shipped.Data.Parts.SingleOrDefault(
            p => p.Id == part.Under)) yield return part;
    }

    private static bool AreRelated(MaterialId a, MaterialId b) => Line(a).Contains(b) || Line(b).Contains(a);

    private static IEnumerable<MaterialId> Line(MaterialId? id)
    {
        for (; id is not null; id = Shipped.Data.Materials.Single(m => m.Id == id).Under) yield return id;
    }
}
