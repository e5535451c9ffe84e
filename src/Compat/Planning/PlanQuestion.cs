using Compat.Snapshots;
using Compat.Validation;

namespace Compat.Planning;

/// <summary>What a plan is asked for.</summary>
public sealed record PlanQuestion
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>Its serial number; null where it is not known.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The occasion; null where none is named: then every part that needs something is taken in.</summary>
    public OccasionId? Occasion { get; init; }

    /// <summary>A level that every part which needs anything reaches at least.</summary>
    public Level? Level { get; init; }

    /// <summary>What must be killed beside what the levels include.</summary>
    public IReadOnlyList<OrganismTarget> Against { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What is on the device; null where the usual soil of each part is taken.</summary>
    public IReadOnlyList<SoilKind>? Soil { get; init => field = Frozen.Of(value); }

    /// <summary>What is on single parts; it stands in place of <see cref="Soil"/> there.</summary>
    public IReadOnlyDictionary<DevicePartId, IReadOnlyList<SoilKind>> SoilOn { get; init => field = Frozen.Of(value); } =
        new Dictionary<DevicePartId, IReadOnlyList<SoilKind>>();

    /// <summary>Whether a patient is in the device or in reach.</summary>
    public bool Occupied { get; init; }

    /// <summary>What the cloth is made of; null where one is chosen of those at hand.</summary>
    public string? Cloth { get; init; }

    /// <summary>
    /// How many products the plan uses at most, cleaners included: 1 to 32; null for the convention. More than three are refused where the shelf
    /// leaves more than 3,000,000 sets of so many.
    /// </summary>
    public int? MaxProducts { get; init; }

    /// <summary>Consequences of damage that somebody will accept by name and date where nothing else serves: looks and wear only.</summary>
    public IReadOnlyList<Consequence> Accept { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How often the plan is run on a day; null where it was not said.</summary>
    public int? UsesPerDay { get; init; }
}

/// <summary>Checks what a plan is asked for.</summary>
internal static class PlanValidation
{
    private const int FewProducts = 3;
    private const double MostSets = 3_000_000;


    public static IReadOnlyList<Problem> Check(CompiledBase kb, PlanQuestion question)
    {
        if (SnapshotWriter.FaultsOf(question) is { Count: > 0 } faults) return faults;
        var scope = new Scope(kb.Records);
        var at = new Field(scope, RecordKind.Question, "");
        if (at["device"].Knows(scope.Devices, question.Device, "device")) OfDevice(scope, kb, question, at);
        OfOccasion(kb, question, at);
        if (question.MaxProducts is < 1 or > 32)
            at["max-products"].Wrong("outside-axis", $"`{question.MaxProducts}` is no number of products for a plan", "expected a whole number from 1 to 32");
        else OfChoice(kb, question, at["max-products"]);
        if (question.UsesPerDay is < 1)
            at["uses-per-day"].Wrong("outside-axis", $"`{question.UsesPerDay}` is no number of uses a day", "expected a whole number from 1");
        foreach (var accepted in question.Accept.Distinct())
        {
            if (accepted is not (Consequence.Looks or Consequence.Wear))
                at["accept"].Wrong("cannot-be-accepted", $"`{Words.Of(accepted)}` cannot be accepted", "only harm to looks and to wear can");
        }

        return scope.Problems;
    }

    private static void OfDevice(Scope scope, CompiledBase kb, PlanQuestion question, Field at)
    {
        var device = kb.Devices[question.Device];
        var asked = new Question
        {
            Device = device.Id,
            DevicePart = device.Parts[0].Id,
            Serial = question.Serial,
            Agent = AgentClass.Root,
            Against = question.Against,
        };
        foreach (var problem in QuestionValidation.Check(kb, asked))
            scope.Add(problem.Code, problem.Place, problem.Message, problem.Help);
        foreach (var part in question.SoilOn.Keys.Where(id => device.Parts.All(part => part.Id != id)).OrderBy(id => id))
            at["soil"].Wrong("unknown-device-part", $"`{device.Id}` has no part `{part}`", NearestNames.Help(part.Value, device.Parts.Select(p => p.Id.Value)));
        if (kb.Sites.All(site => site.Products.Count == 0))
            at["site"].Wrong("no-shelf", "no site that is laid over the data has a product", "write the products of the shelf into the site file");
    }

    /// <summary>All sets of products are tried: of three products there are few on any shelf, of more there may be too many.</summary>
    private static void OfChoice(CompiledBase kb, PlanQuestion question, Field at)
    {
        var (shelf, most) = (kb.Sites.Sum(site => site.Products.Count), PlanMaker.MaxProducts(kb, question));
        var (sets, ofSize) = (1.0, 1.0);
        for (var size = 1; size <= Math.Min(most, shelf); size++)
        {
            ofSize *= (double)(shelf - size + 1) / size;
            sets += ofSize;
            if (size <= FewProducts || sets <= MostSets) continue;
            at.Wrong("too-many-sets", $"{most} of the {shelf} products of the shelf can be chosen in more than 3,000,000 ways", $"ask for at most {size - 1}");
            return;
        }
    }

    private static void OfOccasion(CompiledBase kb, PlanQuestion question, Field at)
    {
        if (question.Occasion is not { } id) return;
        var occasion = kb.Data.Occasions.FirstOrDefault(one => one.Id == id);
        if (occasion is null)
        {
            var known = kb.Data.Occasions.Select(one => one.Id.Value).ToArray();
            at["occasion"].Wrong(
                "unknown-occasion", $"unknown occasion `{id}`", NearestNames.Help(id.Value, known) ?? "the occasions are: " + string.Join(", ", known));
        }
        else if (occasion.NeedsAgainst && question.Against.Count == 0)
            at["against"].Wrong("needs-against", $"`{id}` is planned against something that is named", "name the organism or group with `--against`");
    }
}
