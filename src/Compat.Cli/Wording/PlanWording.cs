using Compat.Planning;

namespace Compat.Cli.Wording;

/// <summary>Says a plan: its headings, its parts and why they stand there.</summary>
public sealed class PlanWording(PlanSheet sheet, Names names)
{
    private readonly Device _device = names.FindDevice(sheet.Question.Device.Value)!;
    private readonly Dictionary<PlanHeading, ClosedWording> _closed = [];

    /// <summary>What the plan is for, in one line.</summary>
    public string Title => $"Plan for {names.Device(sheet.Question.Device.Value)}" + (sheet.Question.Serial is { } serial ? $", serial number {serial}" : "") + (sheet.Occasion is { } occasion ? $": {occasion.Name}" : "");

    /// <summary>What was asked beside the device.</summary>
    public IEnumerable<string> Asked()
    {
        var question = sheet.Question;
        if (question.Level is { } level) yield return $"at least {NeedWording.Of(level)}";
        if (question.Against.Count > 0) yield return "against " + string.Join(", ", question.Against.Select(names.Target));
        yield return question.Soil is { } soil ? "soil: " + NeedWording.Soils(soil) : "soil: what is usual on each part, assumed; state it with --soil";
        foreach (var pair in question.SoilOn.OrderBy(pair => pair.Key)) yield return $"soil on {Part(pair.Key)}: {NeedWording.Soils(pair.Value)}";
        if (question.Occupied) yield return "a patient is in the device or in reach";
        if (question.Accept.Count > 0) yield return "harm to " + string.Join(" and ", question.Accept.Select(Words.Of)) + " is accepted, where nothing else serves";
        yield return $"at most {sheet.MaxProducts} products, cleaners included";
    }

    /// <summary>The words of a heading.</summary>
    public static string Of(PlanHeading heading) => heading switch
    {
        PlanHeading.CannotBeDone => "Cannot be done",
        PlanHeading.GapNotShown => "Open surfaces reached, the gap not shown",
        PlanHeading.HarmsThePart => "Harms the part",
        PlanHeading.Done => "Done by the steps",
        _ => "Needs nothing",
    };

    /// <summary>A part of the device, by the site's name of it.</summary>
    public string Part(DevicePartId id) => _device.Parts.FirstOrDefault(part => part.Id == id)?.Name is { } name ? $"{name} ({id})" : id.Value;

    /// <summary>A product, by the site's name of it.</summary>
    public string Product(ProductId id) => names.FindProduct(id.Value)?.Name ?? id.Value;

    /// <summary>Parts, joined.</summary>
    public string Parts(IEnumerable<DevicePartId> ids) => string.Join(", ", ids.Select(Part));

    /// <summary>What closes products on every part under a heading alike; empty where nothing does. The first line heads the others.</summary>
    public IReadOnlyList<string> Everywhere(PlanHeading heading) =>
        Closed(heading).Everywhere.ToArray() is { Length: > 0 } lines ? ["the same on each of these parts:", .. lines] : [];

    private ClosedWording Closed(PlanHeading heading) =>
        _closed.TryGetValue(heading, out var closed) ? closed : _closed[heading] = new(sheet.Under(heading), this, names);

    /// <summary>What stands at a part under its heading; the first line names it.</summary>
    public IEnumerable<string> Of(PlannedPart part)
    {
        yield return Part(part.Part.Id) + ": " + Why(part);
        if (part.Heading is not PlanHeading.NeedsNothing) yield return "needs: " + NeedWording.Of(part.Need, names).First();
        foreach (var accepted in part.Accepted) yield return $"harms the part: {Damage(accepted)}; accepted by ____________ (infection prevention), date ____________. The verdict stays: not allowed";
        if (part.NotCovered.Count > 0) yield return "does not cover " + string.Join(", ", part.NotCovered.Select(one => names.Target(one.Organism.Value)).Distinct());
        foreach (var line in Closed(part.Heading).Of(part)) yield return line;
        foreach (var group in part.WaysOut.GroupBy(way => (way.Code, Against: way.Rules.Count > 0))) yield return "way out: " + Of([.. group]);
        foreach (var budget in part.Budgets) yield return Of(budget);
        if (part.Runs is { } runs) yield return $"stands this plan {runs} times" + (sheet.Question.UsesPerDay is { } daily ? $": {runs / daily} days at {daily} a day" : "");
    }

    private string Why(PlannedPart part) => part.Reason switch
    {
        PlanReason.Served => With(part) + (part.WorkIntoGap ? "; the cloth is worked into the gap, open and closed" : ""),
        PlanReason.KeptDry => "nothing touches it; keep it dry",
        PlanReason.NotOnThisOccasion => "not taken in on this occasion; touched by " + (part.Need.TouchedBy is { } contact ? NeedWording.Contact(contact) : "nobody knows what"),
        PlanReason.SoiledWhereDry => $"soil ({NeedWording.Soils(part.Need.Soil)}) on a part that is kept dry: take the device out of use, call the engineer",
        PlanReason.ContactNotKnown => "what touches it is not on record, so nobody knows what it needs",
        PlanReason.NothingServes => "nothing on the shelf reaches what it needs and spares it",
        PlanReason.NoCleaner => "something disinfects it, but it must be cleaned first, and nothing on the shelf " + (part.Need.Soil.Count == 0 ? "that cleans is known to spare it" : $"is on record as taking off {NeedWording.Soils(part.Need.Soil)}{(part.Need.SoilIsUsual ? " (usual on it, assumed: state what is there)" : "")} and sparing it"),
        PlanReason.MoreProducts => $"the shelf could serve it, but not with {sheet.MaxProducts} products",
        _ => "what serves it must never meet what the other parts are done with",
    };

    private string With(PlannedPart part) =>
        part.Cleaner is { } cleaner ? Product(cleaner) + (part.Disinfectant is { } then ? ", then " + Product(then) : "") : Product(part.Disinfectant!);

    private string Of(PlanWayOut[] ways)
    {
        var products = string.Join(", ", ways.Select(way => way.Product).OfType<ProductId>().Distinct().Select(id => Product(id)));
        return ways[0].Code switch
        {
            PlanWayOutCode.RuleNeeded => ways[0].Rules.Count == 0 ? $"a test, or a statement of the maker, for {products}: nothing on record speaks for it"
                : $"instructions of the device that allow {products} after all, or a test written to set aside the rules named above",
            PlanWayOutCode.ClaimNeeded => $"a label claim of {products}: the part stands it",
            PlanWayOutCode.MoreProducts => "a run of its own for this part, or more products (--max-products)",
            PlanWayOutCode.TakeApart => "take it apart" + (ways[0].How is { } how ? $" ({how})" : "") + (ways[0].Opens.Count > 0 ? "; then it is reached with " + string.Join(", ", ways[0].Opens.Select(id => Product(id))) : ways[0].How is null ? "; what lies open then is not on record" : "; even then nothing on the shelf serves it"),
            PlanWayOutCode.GetMissing => $"get what is missing for {products}",
            PlanWayOutCode.WorkIn => "brush it clean twice and work the cloth in, open and closed; the gap is still not shown",
            PlanWayOutCode.SingleUse => "a single-use part in its place",
            PlanWayOutCode.Cover => "cover it",
            PlanWayOutCode.Spare => "a spare part in its place",
            PlanWayOutCode.SterileServices => "send it to sterile services",
            _ => "withdraw it from use",
        };
    }

    private string Of(UseBudget budget) =>
        $"each run takes one of the {string.Join(" and one of the ", budget.Limits.Select(limit => $"{limit.Uses} uses with {Product(limit.Product)}"))} that it stands ({Words.Of(budget.Mechanism).Replace('-', ' ')})";

    /// <summary>The damage in one phrase.</summary>
    public static string Damage(Damage damage) =>
        Words.Of(damage.Mechanism).Replace('-', ' ') + (damage.LookFor is { } look ? $", look for {look}" : "") + (damage.WithdrawIf is { } when ? $"; withdraw it if {when}" : "");

    /// <summary>What one product fewer would cost; null where the plan uses none.</summary>
    public string? Fewer()
    {
        if (sheet.Fewer is not { } fewer) return null;
        var costs = new List<string>();
        if (fewer.Lost.Count > 0) costs.Add("no longer done: " + Parts(fewer.Lost));
        if (fewer.Gained.Count > 0) costs.Add("done instead: " + Parts(fewer.Gained));
        if (fewer.Harsher.Count > 0) costs.Add("harsher treated: " + Parts(fewer.Harsher));
        if (fewer.MoreContactTime != 0m) costs.Add($"{FigureWording.Duration(Math.Abs(fewer.MoreContactTime))} {(fewer.MoreContactTime > 0m ? "more" : "less")} contact time over all parts");
        if (fewer.MoreSteps != 0) costs.Add($"{Math.Abs(fewer.MoreSteps)} {(Math.Abs(fewer.MoreSteps) == 1 ? "step" : "steps")} with a product {(fewer.MoreSteps > 0 ? "more" : "fewer")}");
        var with = fewer.Products.Count == 0 ? "With no product" : "With " + string.Join(", ", fewer.Products.Select(id => Product(id))) + " alone";
        return $"{with}: {(costs.Count == 0 ? "nothing would be lost" : string.Join("; ", costs))}.";
    }
}
