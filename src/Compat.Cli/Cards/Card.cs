namespace Compat.Cli.Cards;

/// <summary>What a part of a card is for; it decides how large it is written.</summary>
internal enum CardPart
{
    Use,

    /// <summary>What never to use, and what then happens.</summary>
    Never,

    NotDone,

    /// <summary>Cautions and where it comes from, in small type.</summary>
    Foot,
}

/// <summary>A line of a card.</summary>
/// <param name="Lead">What it is about, in bold; empty where there is nothing.</param>
internal sealed record CardLine(string Lead, string Text, bool IsDetail = false);

/// <summary>A part of a card under its heading.</summary>
/// <param name="Lines">Its lines; at least one.</param>
internal sealed record CardSection(CardPart Part, string Heading, IReadOnlyList<CardLine> Lines);

/// <summary>A card for the ward: one page for one device. All of it is text; how it is laid out is decided by <see cref="CardFit"/> and written by
/// <see cref="CardHtml"/>.</summary>
internal sealed record WardCard(string Title, string Under, IReadOnlyList<CardSection> Sections);

/// <summary>Names as a card says them: those that the site uses, never an id where there is a name.</summary>
internal sealed class CardNames
{
    private readonly Names _names;
    private readonly Dictionary<DevicePartId, string> _parts;
    private readonly HashSet<DevicePartId> _wet;

    public CardNames(PlanSheet sheet, Names names)
    {
        _names = names;
        Device = names.FindDevice(sheet.Question.Device.Value)!;
        _parts = Device.Parts.ToDictionary(part => part.Id, part => part.Name ?? part.Id.Value.Spaced());
        _wet = [.. sheet.Parts.Where(part => !part.Need.KeptDry).Select(part => part.Part.Id)];
    }

    public Device Device { get; }

    public string Product(ProductId id) => _names.FindProduct(id.Value)?.Name ?? id.Value;

    /// <summary>Parts, joined; 'every part' where all are meant that may become wet at all.</summary>
    public string Parts(IEnumerable<DevicePartId> ids)
    {
        var all = ids.ToArray();
        return all.Length > 1 && _wet.Count == all.Length && all.All(_wet.Contains) ? EveryPart : string.Join(", ", all.Select(id => _parts[id]));
    }

    public string Part(DevicePartId id) => _parts[id];

    public const string EveryPart = "every part";
}

/// <summary>Makes the card of a plan: what to use, what never, what is not made safe by it, cautions and identity.</summary>
internal sealed class CardMaker(PlanSheet sheet, NeverList never, Names names)
{
    private readonly CardNames _words = new(sheet, names);

    /// <summary>The card, in the order of its never list that allows the larger type; where both allow the same, by product, as one has a bottle in
    /// hand.</summary>
    public WardCard Make()
    {
        var (byProduct, byPart) = (Make(byPart: false), Make(byPart: true));
        return Room(byPart) > Room(byProduct) ? byPart : byProduct;
    }

    private static double Room(WardCard card) => CardFit.Of(card) ?? -CardFit.Over(card);

    private WardCard Make(bool byPart) => new(English.Capital(_words.Device.Name), string.Join("; ", Under()),
        [.. Sections(byPart).Where(section => section.Lines.Count > 0)]);

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
        else if (sheet.Hold) yield return new(CardPart.Use, "Do not clean it: it is kept as it is",
            [.. (sheet.Occasion?.Adds ?? []).Select(add => new CardLine("", add)), new(
            "", "Who was told: ____________ date and time: ____________ held by: ____________")]);
        else
        {
            var steps = new UseLines(_words, never, names).Of(sheet.Steps).ToArray();
            yield return new(CardPart.Use, "Use", steps.Length > 0 ? steps : [new("Nothing on this shelf is known to do this device.", "Do not try: ask.")]);
            yield return new(CardPart.Never, "Never", [new("Use nothing else.", "What is not named above for a part is not shown to be safe there."),
                .. new NeverLines(_words).Of(never, byPart)]);
            yield return new(CardPart.NotDone, "Not made safe by this card: ask infection prevention or the engineer", NotDone().ToArray());
        }

        yield return new(CardPart.Foot, "The device's own instructions and the product's label and safety data sheet come first.", Foot().ToArray());
    }

    private IEnumerable<CardLine> NotDone()
    {
        foreach (var part in sheet.Under(PlanHeading.HarmsThePart))
            yield return new(_words.Part(part.Part.Id), $"harmed by the steps above: {string.Join(", ", part.Accepted.Select(DamageWording.Of))}; accepted "
                + "by ____________ (infection prevention), date ____________");
        var rest = sheet.Parts.Where(part => part.Heading is PlanHeading.CannotBeDone or PlanHeading.GapNotShown);
        foreach (var group in rest.GroupBy(part => (part.Heading, Ways: Ways(part)))) yield return new(
            string.Join(", ", group.Select(part => _words.Part(part.Part.Id))),
            $"{(group.Key.Heading == PlanHeading.GapNotShown ? "the gap is not shown to be reached" : "cannot be done")}: {group.Key.Ways}");
        var later = sheet.Parts.Where(part => part.Reason == PlanReason.NotOnThisOccasion).Select(part => _words.Part(part.Part.Id)).ToArray();
        if (later.Length > 0) yield return new(string.Join(", ", later), "not taken in on this occasion");
    }

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

    private IEnumerable<CardLine> Foot()
    {
        yield return new("", string.Join(" ", VerdictWording.Cautions.Skip(1)));
        yield return new("", "Up since ____________ checked by ____________ The whole sheet, with reasons and sources: compat plan. "
            + string.Join("; ", sheet.Identity.Select(EvidenceWording.Of)) + ".");
    }
}

/// <summary>Says what is never done, lines of one meaning folded into one: every product and part of the list stands in some line, with the worst that then
/// happens.</summary>
internal sealed class NeverLines(CardNames words)
{
    /// <summary>The lines: what harms people at once, then what holds for every product, then what each product harms.</summary>
    /// <param name="byPart">Whether the products stand under the parts they harm; else the parts stand behind the products.</param>
    public IEnumerable<CardLine> Of(NeverList never, bool byPart)
    {
        foreach (var line in Together(never.NeverTogether)) yield return line;
        if (never.KeepDry.Count > 0) yield return new("Anything wet", $"on {words.Parts(never.KeepDry)}: keep dry; liquid gets in and it fails");
        foreach (var wet in never.NeverWetter) yield return new(Wetter(wet.Wettest), $"on {words.Parts(wet.Parts)}: liquid gets in or under it");
        foreach (var acts in never.NeverActs.GroupBy(act => words.Parts(act.Parts))) yield return new(
            English.Capital(string.Join(", ", acts.Select(act => Act(act.Act)))), $"on {acts.Key}: it is damaged");
        foreach (var line in byPart ? Parts(never.Uses) : Products(never.Uses)) yield return line;
    }

    private IEnumerable<CardLine> Together(IReadOnlyList<NeverTogether> pairs) =>
        pairs.GroupBy(pair => (pair.One, Then: MixingWording.Worst(pair.Hazards.SelectMany(hazard => hazard.Effects))))
            .Select(group => new CardLine($"{English.Capital(words.Product(group.Key.One))} with, or on top of,",
                $"{Joined(group.Select(pair => words.Product(pair.Other)))}: {group.Key.Then}"));

    private IEnumerable<CardLine> Products(IReadOnlyList<NeverUse> uses)
    {
        var said = uses.GroupBy(use => use.Product).Select(group => (Product: group.Key, Text: Text([.. group])));
        return said.GroupBy(one => one.Text, one => one.Product).Select(group => new CardLine(English.Capital(Joined(group.Select(words.Product))), group.Key));
    }

    /// <summary>Parts that the same happens to by the same product, then what happens, then the products.</summary>
    private IEnumerable<CardLine> Parts(IReadOnlyList<NeverUse> uses)
    {
        var harms = uses.SelectMany(use => Thens(use).Select(then => (use.Product, Then: then, use.Part)))
            .GroupBy(harm => (harm.Product, harm.Then), harm => harm.Part)
            .Select(group => (group.Key.Product, group.Key.Then, Parts: words.Parts(group.Distinct())));
        return harms.GroupBy(harm => harm.Parts).Select(group => new CardLine(
            $"On {group.Key}:",
            string.Join("; ", group.GroupBy(harm => harm.Then, harm => harm.Product).Select(same => $"{Joined(same.Select(words.Product))}: {same.Key}"))));
    }

    /// <summary>Of one product: what happens, and on which parts; one that happens on most parts first.</summary>
    private string Text(NeverUse[] uses)
    {
        var harms = uses.SelectMany(use => Thens(use).Select(then => (then, use.Part))).GroupBy(pair => pair.then, pair => pair.Part)
            .Select(group => (Then: group.Key, Parts: words.Parts(group.Distinct()), Count: group.Distinct().Count()));
        return string.Join("; ", harms.GroupBy(harm => harm.Parts).OrderByDescending(group => group.First().Count)
            .ThenBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => $"on {group.Key}: {Joined(group.Select(harm => harm.Then))}"));
    }

    /// <summary>What then happens: the instructions and people where they speak, and the worst that happens to the part.</summary>
    private static IEnumerable<string> Thens(NeverUse use)
    {
        if (use.Reason == NeverReason.Instructions) yield return "the device's instructions rule it out";
        if (use.Harm.Count > 0) yield return "people are harmed: " + Joined(use.Harm);
        if (use.Damage.Count > 0) yield return DamageWording.Of(use.Damage[0]);
        else if (use.Harm.Count == 0 && use.Reason != NeverReason.Instructions) yield return use.Reason switch
        {
            NeverReason.ResidueStays => "what it leaves cannot be taken off",
            NeverReason.TooWet => "it is too wet: liquid gets in or under it",
            NeverReason.HarmsPeople => "people are harmed",
            _ => "it is damaged",
        };
    }

    private static string Wetter(ApplicationMethod wettest) => wettest switch
    {
        ApplicationMethod.DryWipe => "Anything wet",
        ApplicationMethod.DampWipe => "Anything wetter than a well wrung cloth",
        ApplicationMethod.WetWipe => "Spraying, rinsing, soaking",
        ApplicationMethod.Spray => "Rinsing, soaking",
        _ => "Soaking",
    };

    private static string Act(Act act) => act switch
    {
        Model.Act.Brush => "a brush",
        Model.Act.HeatDrying => "warm air or heat",
        Model.Act.CompressedAir => "compressed air",
        Model.Act.SoftCloth => "a cloth to dry it",
        _ => "rubbing or scrubbing",
    };

    private static string Joined(IEnumerable<string> texts) => string.Join(", ", texts);
}

/// <summary>Says the steps of a plan as a card does: what to use on which parts, how, how long wet, and what follows.</summary>
internal sealed class UseLines(CardNames words, NeverList never, Names names)
{
    public IEnumerable<CardLine> Of(IReadOnlyList<PlanStep> steps)
    {
        if (steps.Count == 0) yield break;
        yield return new("First:", string.Join(" ", steps.Where(step => step.Order < StepOrder.Clean).Select(Before)));
        foreach (var step in steps.Where(step => step.Order is >= StepOrder.Clean and <= StepOrder.TakeDisinfectantOff))
        {
            if (step.Order is StepOrder.TakeCleanerOff or StepOrder.TakeDisinfectantOff)
            {
                var duties = Duties(step).ToArray();
                yield return new($"Take {words.Product(step.Product!)} off:", (duties.All(duty => duty.NamesParts) ? "" : words.Parts(step.Parts) + ": ")
                    + Joined(duties));
                continue;
            }

            yield return new($"{(step.Order == StepOrder.Clean ? "Clean" : step.OneStep ? "Clean and disinfect in one step" : "Disinfect")} with "
                + $"{words.Product(step.Product!)}:", words.Parts(step.Parts));
            foreach (var detail in Details(step)) yield return new("", detail, IsDetail: true);
        }

        var last = steps.Where(step => step.Order == StepOrder.Dry).Select(Drying);
        yield return new("Last:", string.Join(" ", last.Append("Look it over, check that it works, label it: done, not done, date, initials.")));
    }

    private string Before(PlanStep step) => step.Order switch
    {
        StepOrder.PowerOff => "Switch off, unplug, take it off the patient, let it cool.",
        StepOrder.Protect => "Protect yourself as the label says" + (step.Gloves.Count > 0 ? $"; gloves of {string.Join(" or ", step.Gloves)}." : "."),
        StepOrder.TakeOffCovers => "Discard covers and single-use items.",
        _ => $"Take gel and loose soil off with a dry cloth: {words.Parts(step.Parts)}.",
    };

    private string Drying(PlanStep step)
    {
        var ways = Joined(Duties(step));
        return $"{(ways.Length == 0 ? "Dry" : char.ToUpperInvariant(ways[0]) + ways[1..])}; "
            + $"{(step.BeforePower is { } wait ? $"no power for {FigureWording.Duration(wait)}." : "no power before it is dry.")}";
    }

    private IEnumerable<string> Details(PlanStep step)
    {
        if (step.Setting is { } setting) yield return string.Join("; ", How(setting, step));
        var duties = Joined(Duties(step));
        if (duties.Length > 0) yield return duties;
        var former = step.Hazards.Where(hazard => hazard.Where == MeetingPlace.FormerResidue && !IsNever(step.Product!, hazard.Other!))
            .Select(hazard => words.Product(hazard.Other!)).Distinct().ToArray();
        if (former.Length > 0) yield return $"never onto what is left of {string.Join(", ", former)}: take that off with water first";
    }

    /// <summary>Whether two stand among what never meets, residue included, so that it need not be said twice.</summary>
    private bool IsNever(ProductId one, ProductId other) => never.NeverTogether.Any(
        pair => (pair.One == one && pair.Other == other) || (pair.One == other && pair.Other == one));

    /// <summary>What accompanies a step. What can be kept to on every part is said of every part, the strictest figure of all; only ways that differ name their
    /// parts.</summary>
    private IEnumerable<(string Text, bool NamesParts)> Duties(PlanStep step)
    {
        var off = step.Duties.Where(duty => duty.Duty.Kind == DutyKind.KeepOff).SelectMany(duty => duty.Duty.Parts).Distinct().Select(names.PartName).ToArray();
        if (off.Length > 0) yield return ("keep it off " + string.Join(", ", off), false);
        var takesOff = step.Order is StepOrder.TakeCleanerOff or StepOrder.TakeDisinfectantOff;
        var said = step.Duties.Where(duty => duty.Duty.Kind is not DutyKind.KeepOff).GroupBy(duty => DutyWording.Of(duty.Duty with { Within = null }, names))
            .Select(group =>
        {
            var duty = group.First().Duty with { Within = group.Min(one => one.Duty.Within) };
            var parts = group.SelectMany(one => one.Parts).Distinct().ToArray();
            var text = DutyWording.Of(duty, names);
            return (Parts: duty.Ways.Count > 0 && step.Parts.Except(parts).Any() ? words.Parts(parts) : "", Text: takesOff && duty.Kind == DutyKind.TakeOff
                ? text[DutyWording.TakeItOff.Length..] : text);
        });
        foreach (var same in said.GroupBy(one => one.Parts, one => one.Text))
            yield return same.Key.Length == 0 ? (string.Join("; ", same), false) : ($"{same.Key}: {string.Join(", and ", same)}", true);
    }

    private static string Joined(IEnumerable<(string Text, bool NamesParts)> duties) => string.Join("; ", duties.Select(duty => duty.Text));

    private static IEnumerable<string> How(StepSetting setting, PlanStep step)
    {
        if (step.Dilute) yield return $"mix {FigureWording.Number(decimal.Round(setting.Dilution * 1000m, 3))}\u00a0mL with water, made up to 1\u00a0L";
        yield return Method(setting.Method) + (step.Cloth is { } cloth ? $" (cloth of {cloth})" : "");
        if (setting.ContactTime > 0m)
        {
            var time = FigureWording.Duration(setting.ContactTime);
            yield return setting.Reached switch
            {
                ContactTimeReached.ByItself when setting.Method >= ApplicationMethod.Rinse => $"leave it in for {time} or more",
                ContactTimeReached.ByItself => $"keep visibly wet for {time}",
                ContactTimeReached.WipeAgain => $"keep visibly wet for {time}: wipe again as often as it takes",
                _ => $"keep visibly wet for {time}: time it",
            };
        }

        if (setting.ExposureTime.Upper is { } last && last != Interval.WithoutEnd) yield return "off again "
            + $"{(setting.ExposureTime.UpperIncluded ? "by" : "before")} {FigureWording.Duration(last)} after first wetting";
        if (setting.MeasureTemperature) yield return $"at {FigureWording.Temperature(setting.Temperature)}: measure it";
    }

    private static string Method(ApplicationMethod method) => method switch
    {
        ApplicationMethod.DampWipe => "wipe damp, no drop comes out of the cloth",
        ApplicationMethod.WetWipe => "wipe wet, nothing runs off",
        ApplicationMethod.Spray => "spray it",
        ApplicationMethod.Rinse => "rinse with it",
        ApplicationMethod.Immerse => "soak in it",
        _ => "by " + Words.Of(method).Spaced(),
    };
}
