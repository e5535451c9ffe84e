using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Cards;

/// <summary>Makes the card of a plan: what to use, what never, what is not made safe by it, cautions and identity.</summary>
internal sealed class CardMaker(PlanSheet sheet, NeverList never, Names names)
{
    private readonly CardNames _words = new(sheet, names);

    /// <summary>The card, in the order of its never list that allows the larger type; where both allow the same, by product, as one has a bottle in hand.</summary>
    public WardCard Make()
    {
        var (byProduct, byPart) = (Make(byPart: false), Make(byPart: true));
        return Room(byPart) > Room(byProduct) ? byPart : byProduct;
    }

    private static double Room(WardCard card) => CardFit.Of(card) ?? -CardFit.Over(card);

    private WardCard Make(bool byPart) => new(Upper(_words.Device.Name), string.Join("; ", Under()), [.. Sections(byPart).Where(section => section.Lines.Count > 0)]);

    private IEnumerable<string> Under()
    {
        if (sheet.Question.Serial is { } serial) yield return $"serial number {serial}";
        if (sheet.Occasion is { } occasion) yield return occasion.Name;
        if (sheet.Question.Level is { } level) yield return $"at least {NeedWording.Of(level)}";
        if (sheet.Question.Against.Count > 0) yield return "against " + string.Join(", ", sheet.Question.Against.Select(names.Target));
        if (sheet.Question.Soil is { } soil) yield return "soil: " + NeedWording.Soils(soil);
        if (sheet.Question.Occupied) yield return "a patient is in the device or in reach";
    }

    private IEnumerable<CardSection> Sections(bool byPart)
    {
        if (sheet.Prions) yield return new(CardPart.Use, "Stop", [new(KillWording.Prions, "")]);
        else if (sheet.Hold) yield return new(CardPart.Use, "Do not clean it: it is kept as it is", [.. (sheet.Occasion?.Adds ?? []).Select(add => new CardLine("", add)), new("", "Who was told: ____________ date and time: ____________ held by: ____________")]);
        else
        {
            var steps = new UseLines(_words, never, names).Of(sheet.Steps).ToArray();
            yield return new(CardPart.Use, "Use", steps.Length > 0 ? steps : [new("Nothing on this shelf is known to do this device.", "Do not try: ask.")]);
            yield return new(CardPart.Never, "Never", [new("Use nothing else.", "What is not named above for a part is not shown to be safe there."), .. new NeverLines(_words).Of(never, byPart)]);
            yield return new(CardPart.NotDone, "Not made safe by this card: ask infection prevention or the engineer", NotDone().ToArray());
        }

        yield return new(CardPart.Foot, "The device's own instructions and the product's label and safety data sheet come first.", Foot().ToArray());
    }

    private IEnumerable<CardLine> NotDone()
    {
        foreach (var part in sheet.Under(PlanHeading.HarmsThePart))
            yield return new(_words.Part(part.Part.Id), $"harmed by the steps above: {string.Join(", ", part.Accepted.Select(DamageWording.Of))}; accepted by ____________ (infection prevention), date ____________");
        var rest = sheet.Parts.Where(part => part.Heading is PlanHeading.CannotBeDone or PlanHeading.GapNotShown);
        foreach (var group in rest.GroupBy(part => (part.Heading, Ways: Ways(part)))) yield return new(string.Join(", ", group.Select(part => _words.Part(part.Part.Id))), $"{(group.Key.Heading == PlanHeading.GapNotShown ? "the gap is not shown to be reached" : "cannot be done")}: {group.Key.Ways}");
        var later = sheet.Parts.Where(part => part.Reason == PlanReason.NotOnThisOccasion).Select(part => _words.Part(part.Part.Id)).ToArray();
        if (later.Length > 0) yield return new(string.Join(", ", later), "not taken in on this occasion");
    }

    /// <summary>What the ward can do meanwhile.</summary>
    private static string Ways(PlannedPart part)
    {
        if (part.Reason == PlanReason.SoiledWhereDry) return "soiled where it is kept dry; out of use, call the engineer";
        var ways = part.WaysOut.Select(way => way.Code switch
        {
            PlanWayOutCode.MoreProducts => "a run of its own",
            PlanWayOutCode.TakeApart => "take it apart" + (way.How is { } how ? $" ({how})" : ""),
            PlanWayOutCode.WorkIn => "brush it clean twice, work the cloth in, open and closed",
            PlanWayOutCode.SingleUse => "a single-use part",
            PlanWayOutCode.Cover => "cover it",
            PlanWayOutCode.Spare => "a spare",
            PlanWayOutCode.SterileServices => "send it to sterile services",
            PlanWayOutCode.Withdraw => "withdraw it",
            _ => null,
        }).OfType<string>().Distinct();
        return string.Join(", or ", ways);
    }

    private static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    private IEnumerable<CardLine> Foot()
    {
        yield return new("", string.Join(" ", VerdictWording.Cautions.Skip(1)));
        yield return new("", "Up since ____________ checked by ____________ The whole sheet, with reasons and sources: compat plan. " + string.Join("; ", sheet.Identity.Select(EvidenceWording.Of)) + ".");
    }
}
