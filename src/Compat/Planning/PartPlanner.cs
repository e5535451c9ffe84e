namespace Compat.Planning;

/// <summary>A part of the device with what it needs, and what is clear before any product is looked at.</summary>
/// <param name="Ordinal">Its place in the device.</param>
/// <param name="Part">The part.</param>
/// <param name="Question">The question that asks it, without a product.</param>
/// <param name="Need">What it needs.</param>
/// <param name="Settled">Why nothing need be chosen for it; null where something must.</param>
/// <param name="ToBeCleaned">Whether what touches it asks that it is cleaned: a higher level that is asked comes on top of that.</param>
internal sealed record PartCase(int Ordinal, DevicePart Part, Question Question, Need Need, PlanReason? Settled, bool ToBeCleaned = false)
{
    /// <summary>Whether it is cleaned before it is disinfected, whatever the product.</summary>
    public bool NeedsCleaning => Need.CleanFirst || Need.Soil.Count > 0 || ToBeCleaned || Need.Level == Level.Cleaned;

    public static IReadOnlyList<PartCase> All(CompiledBase kb, PlanQuestion question, Occasion? occasion) =>
        kb.Devices[question.Device].Parts.Select((part, ordinal) => Of(kb, question, occasion, part, ordinal)).ToArray();

    /// <remarks>A level never makes a part that is kept dry need something, nor stands in for a contact that nobody knows: it only raises.</remarks>
    private static PartCase Of(CompiledBase kb, PlanQuestion asked, Occasion? occasion, DevicePart part, int ordinal)
    {
        var question = new Question
        {
            Device = asked.Device,
            DevicePart = part.Id,
            Serial = asked.Serial,
            Against = asked.Against,
            Occupied = asked.Occupied,
            Soil = asked.SoilOn.TryGetValue(part.Id, out var own) ? own : asked.Soil,
        };
        var plain = NeedMaker.Of(kb, question);
        if (plain.KeptDry) return new(ordinal, part, question, plain, plain.SoiledWhereDry ? PlanReason.SoiledWhereDry : PlanReason.KeptDry);
        var need = NeedMaker.Of(kb, question with { Level = asked.Level }, occasion?.AtLeast);
        question = question with { Level = need.Origin is NeedOrigin.Asked or NeedOrigin.Occasion ? need.Level : null };
        var settled = occasion is { Parts.Count: > 0 } && plain.TouchedBy is { } contact && !occasion.Parts.Contains(contact) ? PlanReason.NotOnThisOccasion
            : plain.Level is null ? PlanReason.ContactNotKnown
            : (PlanReason?)null;
        return new(ordinal, part, question, need, settled, plain.Level == Level.Cleaned);
    }
}

/// <summary>Puts each part under its heading, with why and every way out.</summary>
internal sealed class PartPlanner(CompiledBase kb, WindowFinder finder, PlanShelf shelf, OptionMaker maker, IReadOnlyList<PartCase> harmed, bool roomLeft)
{
    public PlannedPart Of(PartCase one, IReadOnlyList<CaseWindow> windows, IReadOnlyList<PlanOption> options, PlanOption? chosen)
    {
        var part = new PlannedPart
        {
            Part = one.Part,
            Heading = PlanHeading.CannotBeDone,
            Reason = PlanReason.Served,
            Need = one.Need,
            Question = one.Question
        };
        if (chosen is not null) return Served(part, one, chosen);
        if (one.Settled is PlanReason.KeptDry or PlanReason.NotOnThisOccasion)
            return part with { Heading = PlanHeading.NeedsNothing, Reason = one.Settled.Value };
        var reason = one.Settled ?? (options.Count > 0 ? roomLeft ? PlanReason.KeptApart : PlanReason.MoreProducts
            : windows.Any(window => window is { Role: PlanRole.Disinfect, Boxes.Count: > 0 })
            && !windows.Any(window => window is { Role: PlanRole.Clean, Boxes.Count: > 0 }) ? PlanReason.NoCleaner
            : PlanReason.NothingServes);
        var closed = options.Count > 0 ? [] : windows.Select(window => window.Closed).OfType<ClosedProduct>().ToArray();
        return part with { Reason = reason, Closed = closed, WaysOut = WaysOut(one, reason, closed).OrderBy(way => way.Code).ToArray() };
    }

    private PlannedPart Served(PlannedPart part, PartCase one, PlanOption chosen)
    {
        var limits = maker.Limits(chosen.Uses);
        var most = PlanMaker.UsesShare(kb);
        var budgets = limits.GroupBy(limit => limit.Mechanism).OrderBy(group => group.Key)
            .Select(group => new UseBudget(group.Key, group.Select(limit => limit.Limit).ToArray(), most)).ToArray();
        var runs = budgets.Select(budget => budget.Runs)
            .Concat(chosen.Uses.Where(use => use.Box.Box.Uses.Upper is { } upper && upper != Interval.WithoutEnd)
            .Select(use => (long)Math.Floor(Math.Min(use.Box.Box.Uses.Upper!.Value, long.MaxValue / 2)))).ToArray();
        var accepted = chosen.Disinfectant is { } disinfectant && harmed.Contains(one) ? maker.AcceptedAt(disinfectant).ToArray() : [];
        var heading = accepted.Length > 0 ? PlanHeading.HarmsThePart : chosen.Gap ? PlanHeading.GapNotShown : PlanHeading.Done;
        return part with
        {
            Heading = heading,
            Cleaner = chosen.Cleaner?.Setting.Product.Product.Id,
            Disinfectant = chosen.Disinfectant?.Setting.Product.Product.Id,
            WorkIntoGap = chosen.Uses.Any(use => use.Box.WorkIntoGap),
            Accepted = accepted,
            NotCovered = chosen.Disinfectant is { } used ? KillExceptions.Of(kb, one.Need, used.Box.Box.Claims, used.Box.Box.Method).Distinct().ToArray() : [],
            Budgets = budgets,
            Runs = runs.Length == 0 ? null : runs.Min(),
            WaysOut = chosen.Gap ? [.. Apart(one), new(PlanWayOutCode.WorkIn), .. OfType(one)] : [],
        };
    }

    private IEnumerable<PlanWayOut> WaysOut(PartCase one, PlanReason reason, IReadOnlyList<ClosedProduct> closed)
    {
        if (reason is PlanReason.MoreProducts or PlanReason.KeptApart) yield return new(PlanWayOutCode.MoreProducts);
        foreach (var product in closed)
        {
            if (product.Missing is { Code: not (MissingCode.Removes or MissingCode.MeetsSoil) })
                yield return new(PlanWayOutCode.GetMissing) { Product = product.Product };
            if (product.Closure is { Code: ClosureCode.DoesNotKill } kill && kill.Kill.Any(reason => reason.Code != KillReasonCode.NeverAbove)
                && finder.StandsIt(one, shelf.Products.First(p => p.Product.Id == product.Product)))
                yield return new(PlanWayOutCode.ClaimNeeded) { Product = product.Product };
            if (product.Closure is { Code: not (ClosureCode.DoesNotKill or ClosureCode.HarmsPeople) } closure && !finder.IsForbiddenByInstructions(closure))
                yield return new(PlanWayOutCode.RuleNeeded) { Product = product.Product, Rules = closure.Rules };
        }

        if (one.Settled is null) foreach (var way in Apart(one)) yield return way;
        foreach (var way in OfType(one)) yield return way;
        if (one.Need.Level == Level.Sterile && !WaysOfType(one).Contains(WayOut.SterileServices)) yield return new(PlanWayOutCode.SterileServices);
        yield return new(PlanWayOutCode.Withdraw);
    }

    /// <summary>What becomes possible once it is taken apart.</summary>
    private IEnumerable<PlanWayOut> Apart(PartCase one)
    {
        if (one.Part.WhenDismantled is null && !WaysOfType(one).Contains(WayOut.TakeApart)) yield break;
        var opens = one.Part.WhenDismantled is null ? [] : shelf.Products
            .Where(product => one.Need.NothingToKill ? finder.Cleaning(one, product, dismantled: true)?.Boxes.Count > 0
            : finder.Disinfecting(one, product, dismantled: true).Boxes.Any(box => !box.Gap))
            .Select(product => product.Product.Id).ToArray();
        yield return new(PlanWayOutCode.TakeApart) { Opens = opens, How = one.Part.WhenDismantled?.How };
    }

    private IEnumerable<PlanWayOut> OfType(PartCase one) => WaysOfType(one).Where(way => way != WayOut.TakeApart).Select(way => new PlanWayOut(way switch
    {
        WayOut.Cover => PlanWayOutCode.Cover,
        WayOut.Spare => PlanWayOutCode.Spare,
        WayOut.SingleUse => PlanWayOutCode.SingleUse,
        _ => PlanWayOutCode.SterileServices,
    }));

    private WayOut[] WaysOfType(PartCase one) => one.Part.OneOfTypes
        .SelectMany(type => kb.Part(kb.Parts[type.Value]).WaysOut).Distinct().OrderBy(way => way).ToArray();
}
