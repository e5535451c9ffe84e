namespace Compat.Planning;

/// <summary>Sets the steps of a choice in working order.</summary>
internal sealed class StepMaker(KnowledgeBase knowledge, CompiledBase kb, PlanShelf shelf, Meetings meetings, OptionMaker maker)
{
    private static readonly DutyKind[] TakingOff = [DutyKind.TakeOff, DutyKind.WipeDry];

    public IReadOnlyList<PlanStep> Of(IReadOnlyList<PartCase> cases, IReadOnlyList<PlanOption> chosen)
    {
        if (chosen.Count == 0) return [];
        var groups = chosen.SelectMany(option => option.Uses.Select(use => (Option: option, Use: use))).GroupBy(one => one.Use.Setting)
            .OrderBy(group => group.Key.Role).ThenBy(group => group.Key.Product.Rank).ThenBy(group => group.Key.Key)
            .Select(group => group.OrderBy(one => one.Option.Case.Ordinal).ToArray()).ToArray();
        var used = groups.Select(group => group[0].Use.Setting.Product).Distinct().ToArray();
        var protect = Plain(StepOrder.Protect) with
        {
            Protection = used.SelectMany(one => one.Protection).Distinct().OrderBy(one => one.Id).ToArray(),
            Gloves = used.SelectMany(one => one.Gloves).Distinct().ToArray(),
        };
        var steps = new List<PlanStep> { Plain(StepOrder.PowerOff), protect, Plain(StepOrder.TakeOffCovers) };
        var soiled = chosen.Where(option => option.Case.Need.Soil.Count > 0).Select(option => option.Case.Part.Id).ToArray();
        if (soiled.Length > 0) steps.Add(Plain(StepOrder.DryWipe) with { Parts = soiled });
        foreach (var role in new[] { PlanRole.Clean, PlanRole.Disinfect })
        {
            var ofRole = groups.Where(group => group[0].Use.Setting.Role == role).ToArray();
            steps.AddRange(ofRole.Select(group => WithProduct(group, used)));
            steps.AddRange(ofRole.Select(TakeOff).OfType<PlanStep>());
        }

        steps.Add(Drying(chosen));
        steps.Add(Inspecting(chosen));
        var checks = chosen.SelectMany(option => Checks(option.Case)).ToArray();
        if (checks.Length > 0) steps.Add(Plain(StepOrder.CheckFunction) with { Parts = checks.Select(one => one.Key).Distinct().ToArray(), Checks = checks });
        steps.Add(Plain(StepOrder.Store));
        steps.Add(Plain(StepOrder.Label));
        return steps.Select((step, place) => step with { Number = place + 1 }).ToArray();
    }

    private static PlanStep Plain(StepOrder order) => new() { Number = 0, Order = order };

    private PlanStep WithProduct((PlanOption Option, Use Use)[] group, IReadOnlyList<ShelfProduct> used)
    {
        var setting = group[0].Use.Setting;
        var product = setting.Product;
        var boxes = group.Select(one => one.Use.Box.Box).ToArray();
        var temperature = boxes.Aggregate(Interval.Whole, (held, box) => held.Intersect(box.Temperature));
        var kept = new StepSetting
        {
            Method = setting.Method,
            Dilution = setting.Dilution,
            ContactTime = setting.ContactTime,
            ExposureTime = boxes.Aggregate(
                setting.ContactTime > 0m ? Interval.AtLeast(setting.ContactTime) : Interval.Above(0m), (held, box) => held.Intersect(box.ExposureTime)),
            Temperature = temperature,
            MeasureTemperature = boxes.Any(box => box.MeasureTemperature) || boxes.Any(box => !box.Temperature.Equals(temperature)),
            Reached = WindowMaker.Reached(product.Product, setting.Method, setting.ContactTime),
        };
        var parts = group.Select(one => one.Option.Case.Part.Id).ToArray();
        var (hazards, options) = (new StepHazards(meetings, shelf), group.Select(one => one.Option).ToArray());
        return new PlanStep
        {
            Number = 0,
            Order = setting.Role == PlanRole.Clean ? StepOrder.Clean : StepOrder.Disinfect,
            Parts = parts,
            Product = product.Product.Id,
            Setting = kept,
            Dilute = product.Product.StrengthOf == Model.StrengthOf.Concentrate,
            OneStep = group.Any(one => one.Option.OneStep),
            Cloth = setting.Method <= ApplicationMethod.WetWipe ? product.Cloth : null,
            Gloves = product.Gloves,
            Protection = product.Protection,
            Duties = Duties(group, duty => !TakingOff.Contains(duty.Kind)
                && duty.Kind is not (DutyKind.CleanFirst or DutyKind.Inspect or DutyKind.Discard or DutyKind.Dry or DutyKind.PowerOff)),
            Hazards = [.. hazards.Of(product.Product.Id, options, used)],
            AtOtherStrengths = [.. hazards.AtOtherStrengths(product.Product.Id, options, used)],
            Answers = group.Select(one => Answer(one.Option.Case, setting, kept, one.Use)).ToArray(),
        };
    }

    /// <summary>Asks the step of one part again. A cleaner is asked of the part alone: it need not kill.</summary>
    private StepAnswer Answer(PartCase one, Setting setting, StepSetting kept, Use use)
    {
        var question = one.Question with
        {
            Product = setting.Product.Product.Id,
            Method = setting.Method,
            Dilution = setting.Product.Product.StrengthOf == Model.StrengthOf.Concentrate ? Interval.Exactly(setting.Dilution) : null,
            ExposureTime = kept.ExposureTime,
            Temperature = kept.Temperature,
            Uses = use.Box.Box.Uses.Upper is { } upper && upper != Interval.WithoutEnd ? (int)Math.Min(upper, int.MaxValue) : 1,
            Cloth = setting.Method <= ApplicationMethod.WetWipe ? setting.Product.Cloth : null,
            OnlyPart = setting.Role == PlanRole.Clean,
        };
        var answer = knowledge.Ask(question);
        return new(one.Part.Id, question, answer.PartVerdict, answer.Verdict);
    }

    private static PlanStep? TakeOff((PlanOption Option, Use Use)[] group)
    {
        var setting = group[0].Use.Setting;
        var duties = Duties(group, duty => TakingOff.Contains(duty.Kind));
        if (duties.Count == 0) return null;
        return new PlanStep
        {
            Number = 0,
            Order = setting.Role == PlanRole.Clean ? StepOrder.TakeCleanerOff : StepOrder.TakeDisinfectantOff,
            Parts = group.Select(one => one.Option.Case.Part.Id).Where(id => duties.Any(duty => duty.Parts.Contains(id))).ToArray(),
            Product = setting.Product.Product.Id,
            Duties = duties,
        };
    }

    private PlanStep Drying(IReadOnlyList<PlanOption> chosen)
    {
        var waits = chosen.SelectMany(option => option.Case.Part.OneOfTypes).Select(type => kb.Part(kb.Parts[type.Value]).DryBeforePower).ToArray();
        return Plain(StepOrder.Dry) with
        {
            Parts = chosen.Select(option => option.Case.Part.Id).ToArray(),
            Duties = Duties(All(chosen), duty => duty.Kind == DutyKind.Dry),
            BeforePower = waits.Max(),
        };
    }

    private PlanStep Inspecting(IReadOnlyList<PlanOption> chosen) => Plain(StepOrder.Inspect) with
    {
        Parts = chosen.Select(option => option.Case.Part.Id).ToArray(),
        Duties = Duties(All(chosen), duty => duty.Kind is DutyKind.Inspect or DutyKind.Discard),
        LookFor = All(chosen).SelectMany(one => maker.DamageOf(one.Use).Select(damage => (damage, one.Option.Case.Part.Id))).GroupBy(pair => pair.damage)
            .Select(group => new ExpectedDamage(group.Key, group.Select(pair => pair.Id).Distinct().ToArray())).ToArray(),
    };

    private IEnumerable<KeyValuePair<DevicePartId, string>> Checks(PartCase one) =>
        one.Part.OneOfTypes.Select(type => kb.Part(kb.Parts[type.Value]).FunctionCheck)
            .OfType<string>().Distinct().Select(check => new KeyValuePair<DevicePartId, string>(one.Part.Id, check));

    private static (PlanOption Option, Use Use)[] All(IReadOnlyList<PlanOption> chosen) =>
        chosen.SelectMany(option => option.Uses.Select(use => (option, use))).ToArray();

    /// <summary>Each duty once, with the parts that ask it; a part does not ask what a stricter duty of its own meets as well.</summary>
    private static IReadOnlyList<StepDuty> Duties(IEnumerable<(PlanOption Option, Use Use)> group, Func<Duty, bool> which)
    {
        var each = new List<(Duty Duty, List<DevicePartId> Parts)>();
        foreach (var (option, use) in group)
        {
            foreach (var duty in use.Box.Box.Duties.Where(which).Where(duty => !use.Box.Box.Duties.Any(other => Meets(other, duty))))
            {
                var known = each.FirstOrDefault(one => Same(one.Duty, duty));
                if (known.Parts is null) each.Add((duty, [option.Case.Part.Id]));
                else if (!known.Parts.Contains(option.Case.Part.Id)) known.Parts.Add(option.Case.Part.Id);
            }
        }

        return each.OrderBy(one => one.Duty.Kind).Select(one => new StepDuty(one.Duty, one.Parts)).ToArray();
    }

    /// <summary>Whether whoever takes off or dries by one duty has met the other too, and not the other way round.</summary>
    private static bool Meets(Duty stricter, Duty duty) =>
        stricter.Kind == duty.Kind && (duty.Kind == DutyKind.Dry || TakingOff.Contains(duty.Kind)) && !Same(stricter, duty)
        && stricter.Ways.All(duty.Ways.Contains) && (duty.Within is null || stricter.Within <= duty.Within)
        && (duty.Note is null || duty.Note == stricter.Note);

    private static bool Same(Duty a, Duty b) =>
        a.Kind == b.Kind && a.Within == b.Within && a.AfterUses == b.AfterUses && a.Note == b.Note && a.Ways.SequenceEqual(b.Ways)
            && a.Parts.SequenceEqual(b.Parts);
}

/// <summary>Finds what must not meet at a step: other products of the plan, soil, what a former product left.</summary>
internal sealed class StepHazards(Meetings meetings, PlanShelf shelf)
{
    public IEnumerable<StepHazard> Of(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used)
    {
        foreach (var hazard in WithUsed(product, options, used, meetings.Of)) yield return hazard;

        foreach (var soil in options.SelectMany(option => option.Case.Need.Soil).Distinct().OrderBy(soil => soil))
        {
            foreach (var found in Worst(meetings.Of(product, soil))) yield return new(found, MeetingPlace.Soil, null);
        }

        foreach (var former in shelf.Products.Where(one => one.Product.Id != product && !used.Contains(one)))
        {
            foreach (var found in Worst(meetings.Of(product, former.Product.Id)).Where(found => found.Hazard.Severity == MixingSeverity.Never))
                yield return new(found, MeetingPlace.FormerResidue, former.Product.Id);
        }
    }

    /// <summary>What is on record between the products of the plan at other strengths than theirs: told at the step, kept from nowhere.</summary>
    public IEnumerable<StepHazard> AtOtherStrengths(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used) =>
        WithUsed(product, options, used, meetings.AtOtherStrengths);

    private static IEnumerable<StepHazard> WithUsed(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used,
        Func<ProductId, ProductId, IReadOnlyList<FoundHazard>> between)
    {
        var sharing = options.SelectMany(option => option.Uses).Select(use => use.Setting.Product.Product.Id).ToArray();
        return used.Select(one => one.Product.Id).Where(id => id != product).OrderBy(id => id).SelectMany(other => Worst(between(product, other))
            .Select(found => new StepHazard(found, sharing.Contains(other) ? MeetingPlace.Part : MeetingPlace.ClothGloveOrContainer, other)));
    }

    /// <summary>Each record once, worst first.</summary>
    private static IEnumerable<FoundHazard> Worst(IReadOnlyList<FoundHazard> found) => found.GroupBy(one => one.Hazard.Id).Select(group => group.First());
}
