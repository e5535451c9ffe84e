using Compat.Planning;

namespace Compat.Tests.Plans;

/// <summary>What holds of every plan, on random sites.</summary>
public sealed class PlanPropertyTests
{
    private const int Sites = 30;

    [Fact]
    public void NoPlanContainsAStepThatAskRefuses()
    {
        var asked = 0;
        foreach (var (_, sheet) in Plans())
        {
            foreach (var answer in sheet.Steps.SelectMany(step => step.Answers))
            {
                Assert.True(answer.PartVerdict >= Verdict.AllowedWithinLimits, answer.Question.ToString());
                Assert.True(answer.Verdict >= Verdict.AllowedWithinLimits, answer.Question.ToString());
                asked++;
            }
        }

        Assert.True(asked > Sites, $"only {asked} steps were asked");
    }

    [Fact]
    public void EveryPartMeetsItsNeed_OrStandsUnderAnotherHeading()
    {
        foreach (var (_, sheet) in Plans())
        {
            foreach (var part in sheet.Under(PlanHeading.Done))
            {
                var steps = sheet.Steps.Where(step => step.Parts.Contains(part.Part.Id)).ToArray();
                if (!part.Need.NothingToKill)
                {
                    var step = Assert.Single(steps, step => step.Order == StepOrder.Disinfect);
                    Assert.Equal(part.Disinfectant, step.Product);
                    Assert.Contains(step.Answers, answer => answer.Part == part.Part.Id && !answer.Question.OnlyPart);
                }

                if (part.Need.Soil.Count > 0 || part.Need.CleanFirst)
                    Assert.True(
                        steps.Any(step => step.Order == StepOrder.Clean && step.Product == part.Cleaner)
                        || steps.Any(step => step.OneStep), part.Part.Id.Value);
            }

            Assert.All(sheet.Under(PlanHeading.CannotBeDone), part => Assert.Contains(part.WaysOut, way => way.Code == PlanWayOutCode.Withdraw));
            Assert.All(
                sheet.Under(PlanHeading.CannotBeDone), part =>
                    Assert.DoesNotContain(sheet.Steps, step => step.Answers.Any(answer => answer.Part == part.Part.Id)));
        }
    }

    [Fact]
    public void DilutionAndContactTimeLieInsideTheWindow_ExposureTimeIsNeverShorter()
    {
        foreach (var (kb, sheet) in Plans())
        {
            foreach (var step in sheet.Steps.Where(step => step.Order == StepOrder.Disinfect))
            {
                var setting = step.Setting!;
                Assert.True(setting.ExposureTime.Lower >= setting.ContactTime && (setting.ExposureTime.Upper is not { } last || last >= setting.ContactTime));
                foreach (var answer in step.Answers)
                {
                    var window = kb.WindowOf(answer.Question with { Method = null, Dilution = null, ExposureTime = null, Temperature = null, Uses = null });
                    Assert.Contains(
                        window.Boxes, box => box.Method == setting.Method && box.Dilution!.Value.Contains(setting.Dilution)
                        && box.ContactTime.Contains(setting.ContactTime) && setting.Temperature.LiesIn(box.Temperature));
                }
            }
        }
    }

    [Fact]
    public void AddingAProductNeverServesFewerParts()
    {
        for (var seed = 0; seed < Sites / 2; seed++)
        {
            var site = RandomSites.Make(seed);
            var whole = Served(RandomSites.Over(site));
            foreach (var product in site.Products.Where(_ => site.Products.Count > 1))
                Assert.True(Served(RandomSites.Over(RandomSites.Without(site, product))) <= whole, $"seed {seed}: {product.Id}");
        }
    }

    [Fact]
    public void HoldingAProductToOneMethodNeverServesMore()
    {
        for (var seed = 0; seed < Sites / 3; seed++)
        {
            var site = RandomSites.Make(seed);
            var whole = Served(RandomSites.Over(site));
            foreach (var method in new[] { ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Immerse })
                Assert.True(
                    Served(RandomSites.Over(
                        site with { Products = site.Products.Select(product => product with { Methods = MethodSet.Of(method) }).ToArray() })) <= whole,
                        $"seed {seed}: {method}");
        }
    }

    [Fact]
    public void RaisingANeedNeverTurnsCannotBeDoneIntoDone()
    {
        for (var seed = 0; seed < Sites / 2; seed++)
        {
            var kb = RandomSites.Over(RandomSites.Make(seed));
            var before = kb.PlanOf(Question with { MaxProducts = 32 });
            foreach (
                var raised in new[] { Question with { Level = Level.Intermediate }, Question with { Level = Level.High },
                Question with { Against = [OrganismTarget.Of(OrganismGroup.Spores)] } })
            {
                var after = kb.PlanOf(raised with { MaxProducts = 32 });
                Assert.True(after.Parts.Count(IsDone) <= before.Parts.Count(IsDone), $"seed {seed}");
                foreach (var part in before.Under(PlanHeading.CannotBeDone).Where(part => part.Reason != PlanReason.KeptApart))
                    Assert.False(IsDone(after.Parts.Single(one => one.Part.Id == part.Part.Id)), $"seed {seed}: {part.Part.Id}");
            }
        }
    }

    [Fact]
    public void OrderOfProductsChangesNothing()
    {
        for (var seed = 0; seed < Sites / 3; seed++)
        {
            var site = RandomSites.Make(seed);
            var one = RandomSites.Over(site).PlanOf(Question);
            var other = RandomSites.Over(site with { Products = site.Products.Reverse().ToArray(), Rules = site.Rules.Reverse().ToArray() }).PlanOf(Question);
            Assert.Equal(Line(one), Line(other));
        }
    }

    [Fact]
    public void MaxProducts_OfMoreSetsThanAreTried_IsRefusedWithTheBound()
    {
        var site = RandomSites.Make(1);
        var wide = RandomSites.Over(site with
        {
            Products = Enumerable.Range(0, 50).Select(i => site.Products[0] with { Id = new($"product-{i}") }).ToArray(),
            Rules = [],
        });
        Assert.True(wide.TryPlan(Question with { MaxProducts = 5 }, out _, out _));
        Assert.False(wide.TryPlan(Question with { MaxProducts = 6 }, out _, out var problems));
        Assert.Equal(("too-many-sets", "ask for at most 5"), (Assert.Single(problems).Code, problems[0].Help));
        Assert.True(RandomSites.Over(site).TryPlan(Question with { MaxProducts = 32 }, out _, out _));
    }

    private static readonly PlanQuestion Question = new() { Device = RandomSites.Device };

    private static IEnumerable<(KnowledgeBase Kb, PlanSheet Sheet)> Plans() =>
        Enumerable.Range(0, Sites).Select(seed => RandomSites.Over(RandomSites.Make(seed))).Select(kb => (kb, kb.PlanOf(Question)));

    private static bool IsDone(PlannedPart part) => part.Heading is PlanHeading.Done or PlanHeading.GapNotShown;

    private static int Served(KnowledgeBase kb) => kb.PlanOf(Question).Parts.Count(IsDone);

    private static string Line(PlanSheet sheet) =>
        string.Join("; ", sheet.Parts.Select(part => $"{part.Part.Id} {part.Heading} {part.Cleaner} {part.Disinfectant}")) + " | "
        + string.Join("; ", sheet.Steps.Select(step => $"{step.Order} {step.Product} {step.Setting} {string.Join(",", step.Parts)}"));
}
