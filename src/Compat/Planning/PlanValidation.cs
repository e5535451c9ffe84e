using Compat.Snapshots;
using Compat.Validation;

namespace Compat.Planning;

/// <summary>Checks what a plan is asked for.</summary>
internal static class PlanValidation
{
    private const int FewProducts = 3;
    private const double MostSets = 3_000_000;

    private static readonly ProblemPlace Place = new(RecordKind.Question, "");

    public static IReadOnlyList<Problem> Check(CompiledBase kb, PlanQuestion question)
    {
        if (SnapshotWriter.FaultsOf(question) is { Count: > 0 } faults) return faults;
        var scope = new Scope(kb.Records);
        if (scope.Knows(scope.Devices, question.Device, Place, "device", "device")) OfDevice(scope, kb, question);
        OfOccasion(scope, kb, question);
        if (question.MaxProducts is < 1 or > 32)
            scope.Add(
                "outside-axis", Place with { Field = "max-products" },
                $"`{question.MaxProducts}` is no number of products for a plan", "expected a whole number from 1 to 32");
        else OfChoice(scope, kb, question);
        if (question.UsesPerDay is < 1) scope.Add("outside-axis", Place with { Field = "uses-per-day" }, $"`{question.UsesPerDay}` is no number of uses a day", "expected a whole number from 1");
        foreach (var accepted in question.Accept.Distinct())
        {
            if (accepted is not (Consequence.Looks or Consequence.Wear))
                scope.Add("cannot-be-accepted", Place with { Field = "accept" }, $"`{Words.Of(accepted)}` cannot be accepted", "only harm to looks and to wear can");
        }

        return scope.Problems;
    }

    private static void OfDevice(Scope scope, CompiledBase kb, PlanQuestion question)
    {
        var device = kb.Devices[question.Device];
        foreach (var problem in QuestionValidation.Check(kb, new Question { Device = device.Id, DevicePart = device.Parts[0].Id, Serial = question.Serial, Agent = AgentClass.Root, Against = question.Against }))
            scope.Add(problem.Code, problem.Place, problem.Message, problem.Help);
        foreach (var part in question.SoilOn.Keys.Where(id => device.Parts.All(part => part.Id != id)).OrderBy(id => id))
            scope.Add("unknown-device-part", Place with { Field = "soil" }, $"`{device.Id}` has no part `{part}`", NearestNames.Help(part.Value, device.Parts.Select(p => p.Id.Value)));
        if (kb.Sites.All(site => site.Products.Count == 0))
            scope.Add("no-shelf", Place with { Field = "site" }, "no site that is laid over the data has a product", "write the products of the shelf into the site file");
    }

    /// <summary>All sets of products are tried: of three products there are few on any shelf, of more there may be too many.</summary>
    private static void OfChoice(Scope scope, CompiledBase kb, PlanQuestion question)
    {
        var (shelf, most) = (kb.Sites.Sum(site => site.Products.Count), PlanMaker.MaxProducts(kb, question));
        var (sets, ofSize) = (1.0, 1.0);
        for (var size = 1; size <= Math.Min(most, shelf); size++)
        {
            ofSize *= (double)(shelf - size + 1) / size;
            sets += ofSize;
            if (size <= FewProducts || sets <= MostSets) continue;
            scope.Add(
                "too-many-sets", Place with { Field = "max-products" },
                $"{most} of the {shelf} products of the shelf can be chosen in more than 3,000,000 ways", $"ask for at most {size - 1}");
            return;
        }
    }

    private static void OfOccasion(Scope scope, CompiledBase kb, PlanQuestion question)
    {
        if (question.Occasion is not { } id) return;
        var occasion = kb.Data.Occasions.FirstOrDefault(one => one.Id == id);
        if (occasion is null)
            scope.Add("unknown-occasion", Place with { Field = "occasion" }, $"unknown occasion `{id}`", NearestNames.Help(id.Value, kb.Data.Occasions.Select(one => one.Id.Value)) ?? "the occasions are: " + string.Join(", ", kb.Data.Occasions.Select(one => one.Id.Value)));
        else if (occasion.NeedsAgainst && question.Against.Count == 0)
            scope.Add("needs-against", Place with { Field = "against" }, $"`{id}` is planned against something that is named", "name the organism or group with `--against`");
    }
}
