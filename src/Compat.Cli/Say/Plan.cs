using System.Text;

namespace Compat.Cli.Say;

/// <summary>Writes a plan: what stands in it and in which order; how it is laid out say its kinds.</summary>
internal abstract class PlanLayout(Names names)
{
    private const string WhoWasTold = "Who was told: ____________ date and time: ____________ held by: ____________";

    public void Write(PlanSheet sheet, StatusDeclaration? declaration)
    {
        var words = new PlanWording(sheet, names);
        var steps = new PlanStepWording(sheet, words, names);
        Title(words.Title);
        if (sheet.Prions) Stop(KillWording.Prions, isWhole: true);
        else if (sheet.Hold)
        {
            Stop("No plan: the device is kept as it is", isWhole: false);
            foreach (var add in steps.Adds) Tick(add);
            Item(WhoWasTold);
        }
        else Whole(sheet, words, steps);

        if (declaration is not null)
        {
            HeadDeclaration();
            foreach (var line in new DeclarationWording(words).Of(declaration)) Item(line);
        }

        Heading("Cautions", VerdictWording.Cautions.Count);
        foreach (var caution in VerdictWording.Cautions) Item(caution);
        Heading("Data", sheet.Identity.Count);
        foreach (var state in sheet.Identity) Item(EvidenceWording.Of(state));
        End();
    }

    protected abstract string StepsHeading { get; }

    protected abstract void Title(string title);

    /// <summary>Why there is no plan; the whole of it, or with items behind it.</summary>
    protected abstract void Stop(string why, bool isWhole);

    protected abstract void Heading(string text, int with = 2);

    protected abstract void HeadDeclaration();

    /// <summary>A line that is no item of a list in text.</summary>
    protected abstract void Note(string text, int hanging);

    protected abstract void Item(string text);

    /// <summary>An item to be ticked off.</summary>
    protected abstract void Tick(string text);

    /// <summary>A part: the first line names it.</summary>
    protected abstract void Part(IReadOnlyList<string> lines);

    protected abstract void Step(int number, string line, IReadOnlyList<string> details);

    protected virtual void End()
    {
    }

    private void Whole(PlanSheet sheet, PlanWording words, PlanStepWording steps)
    {
        foreach (var line in words.Asked()) Note(line, 4);
        foreach (var heading in Enum.GetValues<PlanHeading>().Where(heading => sheet.Under(heading).Any()))
        {
            Heading(PlanWording.Of(heading));
            if (words.Everywhere(heading) is { Count: > 0 } everywhere) Part(everywhere);
            foreach (var part in sheet.Under(heading)) Part([.. words.Of(part)]);
        }

        if (sheet.Steps.Count > 0) Heading(StepsHeading);
        foreach (var step in sheet.Steps) Step(step.Number, steps.Line(step), [.. steps.Details(step)]);
        if (steps.Adds.Count > 0) Heading("The occasion adds");
        foreach (var add in steps.Adds) Tick(add);
        if (words.Fewer() is not { } fewer) return;
        Heading("What one product fewer would cost");
        Note(fewer, 2);
    }
}

/// <summary>Writes a plan as text.</summary>
internal sealed class PlanText(Page page, Names names) : PlanLayout(names)
{
    protected override string StepsHeading => "Steps";
    protected override void Title(string title) => Line(title, 0, -1);
    protected override void Stop(string why, bool isWhole) => Line(isWhole ? why : why + ".", isWhole ? 0 : 2, -1);

    protected override void Heading(string text, int with = 2) => page.Heading(text);

    protected override void HeadDeclaration() => page.Heading("Decontamination status");
    protected override void Note(string text, int hanging) => Line(text, 2, hanging);
    protected override void Item(string text) => page.Item(Printable.Of(text));
    protected override void Tick(string text) => Item(text);

    protected override void Part(IReadOnlyList<string> lines)
    {
        Item(lines[0]);
        foreach (var line in lines.Skip(1)) Line(line, 6, 8);
    }

    protected override void Step(int number, string line, IReadOnlyList<string> details)
    {
        Line($"{number}. {line}", 2, 6);
        foreach (var detail in details) Line("- " + detail, 6, 8);
    }

    private void Line(string text, int indent, int hanging) => page.Line(Printable.Of(text), indent, hanging);
}

/// <summary>Writes a plan as a sheet for the ward: pages of short lines that fit A4, each headed, with a blank at every step.</summary>
/// <remarks>Whatever comes from data is escaped: it can neither end a table nor make a link.</remarks>
internal sealed class PlanMarkdown(TextWriter output, Names names) : PlanLayout(names)
{
    /// <summary>The most lines on a page; a line of a table takes about as many lines as its text is long.</summary>
    internal const int LinesOnPage = 55;

    private const int ColumnsOfText = 85;
    private readonly StringBuilder _page = new();
    private string _title = "";
    private int _lines;
    private int _pages;

    protected override string StepsHeading => "Steps: done or not done, and initials, at each";

    protected override void Title(string title)
    {
        _title = title;
        NewPage();
    }

    protected override void Stop(string why, bool isWhole) => Heading(why);

    protected override void Heading(string text, int with = 2)
    {
        Room(with + 3);
        Add($"\n## {Markdown.Plain(text)}\n", 3);
    }

    protected override void HeadDeclaration()
    {
        NewPage();
        Heading("Declaration of the decontamination status");
    }

    protected override void Note(string text, int hanging) => Item(text);
    protected override void Item(string text) => Item(text, 0);
    protected override void Tick(string text) => Item("[  ] " + text);

    protected override void Part(IReadOnlyList<string> lines)
    {
        Room(lines.Take(2).Sum(Lines));
        Item(lines[0]);
        foreach (var line in lines.Skip(1)) Item(line, 1);
    }

    protected override void Step(int number, string line, IReadOnlyList<string> details)
    {
        Room(Lines(line) + 1 + Math.Min(6, details.Sum(Lines)));
        Item($"**{number}.** {Markdown.Plain(line)} — done [  ] not done [  ] initials ______", 0, escaped: true);
        foreach (var detail in details) Item(detail, 1);
    }

    protected override void End() => output.Write(_page.ToString());

    private void Item(string text, int depth, bool escaped = false)
    {
        Room(Lines(text));
        Add(new string(' ', depth * 2) + "- " + (escaped ? text : Markdown.Plain(text)), Lines(text));
    }

    private void Room(int lines)
    {
        if (_lines + lines > LinesOnPage && _lines > 4) NewPage();
    }

    private void NewPage()
    {
        if (_pages > 0) _page.Append("\n<div style=\"page-break-after: always\"></div>\n\n");
        _lines = 0;
        Add($"# {Markdown.Plain(_title)} (page {++_pages})\n", 3);
    }

    private void Add(string text, int lines)
    {
        _page.Append(text).Append('\n');
        _lines += lines;
    }

    private static int Lines(string text) => 1 + (text.Length / ColumnsOfText);
}

/// <summary>Says a plan: its headings, its parts and why they stand there.</summary>
internal sealed class PlanWording(PlanSheet sheet, Names names)
{
    private readonly Device _device = names.FindDevice(sheet.Question.Device.Value)!;
    private readonly Dictionary<PlanHeading, ClosedWording> _closed = [];

    public string Title => $"Plan for {names.Device(sheet.Question.Device.Value)}" + (sheet.Question.Serial is { } serial ? $", serial number {serial}" : "")
        + (sheet.Occasion is { } occasion ? $": {occasion.Name}" : "");

    public IEnumerable<string> Asked()
    {
        var question = sheet.Question;
        if (question.Level is { } level) yield return $"at least {NeedWording.Of(level)}";
        if (question.Against.Count > 0) yield return "against " + string.Join(", ", question.Against.Select(names.Target));
        yield return question.Soil is { } soil ? "soil: " + NeedWording.Soils(soil) : "soil: what is usual on each part, assumed; state it with --soil";
        foreach (var pair in question.SoilOn.OrderBy(pair => pair.Key)) yield return $"soil on {Part(pair.Key)}: {NeedWording.Soils(pair.Value)}";
        if (question.Occupied) yield return "a patient is in the device or in reach";
        if (question.Accept.Count > 0) yield return "harm to " + string.Join(" and ", question.Accept.Select(Words.Of))
            + " is accepted, where nothing else serves";
        yield return $"at most {sheet.MaxProducts} products, cleaners included";
    }

    public static string Of(PlanHeading heading) => heading switch
    {
        PlanHeading.CannotBeDone => "Cannot be done",
        PlanHeading.GapNotShown => "Open surfaces reached, the gap not shown",
        PlanHeading.HarmsThePart => "Harms the part",
        PlanHeading.Done => "Done by the steps",
        _ => "Needs nothing",
    };

    public string Part(DevicePartId id) => _device.Parts.FirstOrDefault(part => part.Id == id)?.Name is { } name ? $"{name} ({id})" : id.Value;

    public string Product(ProductId id) => names.FindProduct(id.Value)?.Name ?? id.Value;

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
        foreach (var accepted in part.Accepted) yield return $"harms the part: {Damage(accepted)}; accepted by ____________ (infection prevention), date "
            + "____________. The verdict stays: not allowed";
        if (part.NotCovered.Count > 0) yield return "does not cover " + string.Join(
            ", ", part.NotCovered.Select(one => names.Target(one.Organism.Value)).Distinct());
        foreach (var line in Closed(part.Heading).Of(part)) yield return line;
        foreach (var group in part.WaysOut.GroupBy(way => (way.Code, Against: way.Rules.Count > 0))) yield return "way out: " + Of([.. group]);
        foreach (var budget in part.Budgets) yield return Of(budget);
        if (part.Runs is { } runs) yield return $"stands this plan {runs} times" + (
            sheet.Question.UsesPerDay is { } daily ? $": {runs / daily} days at {daily} a day" : "");
    }

    private string Why(PlannedPart part) => part.Reason switch
    {
        PlanReason.Served => With(part) + (part.WorkIntoGap ? "; the cloth is worked into the gap, open and closed" : ""),
        PlanReason.KeptDry => "nothing touches it; keep it dry",
        PlanReason.NotOnThisOccasion => "not taken in on this occasion; touched by "
            + (part.Need.TouchedBy is { } contact ? NeedWording.Contact(contact) : "nobody knows what"),
        PlanReason.SoiledWhereDry => $"soil ({NeedWording.Soils(part.Need.Soil)}) on a part that is kept dry: take the device out of use, call the engineer",
        PlanReason.ContactNotKnown => "what touches it is not on record, so nobody knows what it needs",
        PlanReason.NothingServes => "nothing on the shelf reaches what it needs and spares it",
        PlanReason.NoCleaner => "something disinfects it, but it must be cleaned first, and nothing on the shelf "
            + (part.Need.Soil.Count == 0 ? "that cleans is known to spare it"
            : "is on record as taking off "
            + $"{NeedWording.Soils(part.Need.Soil)}{(part.Need.SoilIsUsual ? " (usual on it, assumed: state what is there)" : "")} and sparing it"),
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
            PlanWayOutCode.TakeApart => "take it apart" + (ways[0].How is { } how ? $" ({how})" : "")
                + (ways[0].Opens.Count > 0 ? "; then it is reached with " + string.Join(", ", ways[0].Opens.Select(id => Product(id))) : ways[0].How is null
                ? "; what lies open then is not on record" : "; even then nothing on the shelf serves it"),
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
        $"each run takes one of the {string.Join(" and one of the ", budget.Limits.Select(limit => $"{limit.Uses} uses with {Product(limit.Product)}"))} "
            + $"that it stands ({Words.Of(budget.Mechanism).Spaced()})";

    public static string Damage(Damage damage) =>
        Words.Of(damage.Mechanism).Spaced() + (damage.LookFor is { } look ? $", look for {look}" : "")
            + (damage.WithdrawIf is { } when ? $"; withdraw it if {when}" : "");

    /// <summary>What one product fewer would cost; null where the plan uses none.</summary>
    public string? Fewer()
    {
        if (sheet.Fewer is not { } fewer) return null;
        var costs = new List<string>();
        if (fewer.Lost.Count > 0) costs.Add("no longer done: " + Parts(fewer.Lost));
        if (fewer.Gained.Count > 0) costs.Add("done instead: " + Parts(fewer.Gained));
        if (fewer.Harsher.Count > 0) costs.Add("harsher treated: " + Parts(fewer.Harsher));
        if (fewer.MoreContactTime != 0m) costs.Add(
            $"{FigureWording.Duration(Math.Abs(fewer.MoreContactTime))} {(fewer.MoreContactTime > 0m ? "more" : "less")} contact time over all parts");
        if (fewer.MoreSteps != 0) costs.Add(
            $"{Math.Abs(fewer.MoreSteps)} {(Math.Abs(fewer.MoreSteps) == 1 ? "step" : "steps")} with a product {(fewer.MoreSteps > 0 ? "more" : "fewer")}");
        var with = fewer.Products.Count == 0 ? "With no product" : "With " + string.Join(", ", fewer.Products.Select(id => Product(id))) + " alone";
        return $"{with}: {(costs.Count == 0 ? "nothing would be lost" : string.Join("; ", costs))}.";
    }
}

/// <summary>Says the steps of a plan.</summary>
internal sealed class PlanStepWording(PlanSheet sheet, PlanWording words, Names names)
{
    public string Line(PlanStep step) => step.Order switch
    {
        StepOrder.PowerOff => "Switch off, disconnect from the mains and the patient, let it cool",
        StepOrder.Protect => "Protect yourself and the room" + (step.Gloves.Count > 0 ? ": gloves of " + string.Join("; ", step.Gloves) : ""),
        StepOrder.TakeOffCovers => "Take off covers and single-use items, and discard them",
        StepOrder.DryWipe => "Take gel and loose soil off with a dry cloth: " + words.Parts(step.Parts),
        StepOrder.Clean => $"Clean with {Product(step)}: {words.Parts(step.Parts)}",
        StepOrder.TakeCleanerOff => $"Take {Product(step)} off: {words.Parts(step.Parts)}",
        StepOrder.Disinfect => $"{(step.OneStep ? "Clean and disinfect in one step" : "Disinfect")} with {Product(step)}: {words.Parts(step.Parts)}",
        StepOrder.TakeDisinfectantOff => $"Take {Product(step)} off: {words.Parts(step.Parts)}",
        StepOrder.Dry => "Dry" + (step.BeforePower is { } wait ? $", and wait {FigureWording.Duration(wait)} before power" : ", and no power before it is dry"),
        StepOrder.Inspect => "Inspect " + words.Parts(step.Parts),
        StepOrder.CheckFunction => "Check that it does what it is for",
        StepOrder.Store => "Store it clean, dry and covered",
        _ => "Label it: what was done, what was not, date, initials",
    };

    /// <summary>What goes with the step, a line each.</summary>
    public IEnumerable<string> Details(PlanStep step)
    {
        if (step.Setting is { } setting) foreach (var line in Of(setting, step)) yield return line;
        if (step.Setting is not null && step.Gloves.Count > 0) yield return "gloves: " + string.Join("; ", step.Gloves);
        foreach (var duty in step.Duties) yield return DutyWording.Of(duty.Duty, names)
            + (step.Parts.Count == duty.Parts.Count ? "" : $" [{words.Parts(duty.Parts)}]");
        if (step.Order == StepOrder.Protect) foreach (var line in Protecting(step)) yield return line;
        foreach (var hazard in step.Hazards.Where(one => one.Where != MeetingPlace.FormerResidue)) yield return Of(hazard);
        foreach (var note in step.AtOtherStrengths) yield return $"only at other strengths than here ({MixingWording.Strengths(note.Found.Hazard, names)}), "
            + $"with {words.Product(note.Other!)}: {string.Join(", ", note.Found.Hazard.Effects.Select(MixingWording.Of))}";
        var former = step.Hazards.Where(one => one.Where == MeetingPlace.FormerResidue).Select(one => one.Other!).Distinct().ToArray();
        if (former.Length > 0) yield return $"never onto what was left by {string.Join(", ", former.Select(id => words.Product(id)))}: take that off with "
            + "water first";
        foreach (var look in step.LookFor) yield return $"{PlanWording.Damage(look.Damage)} [{words.Parts(look.Parts)}]";
        foreach (var check in step.Checks) yield return $"{words.Part(check.Key)}: {check.Value}";
    }

    private static IEnumerable<string> Of(StepSetting setting, PlanStep step)
    {
        if (step.Dilute) yield return $"mix {FigureWording.Number(decimal.Round(setting.Dilution * 1000m, 6))}\u00a0mL with water, made up to 1\u00a0L "
            + $"({FigureWording.Dilution(Interval.Exactly(setting.Dilution))})";
        yield return $"by {Words.Of(setting.Method)}" + (step.Cloth is { } cloth ? $", cloth of {cloth}" : "");
        if (setting.ContactTime > 0m)
        {
            var time = FigureWording.Duration(setting.ContactTime);
            yield return setting.Reached switch
            {
                ContactTimeReached.ByItself when setting.Method >= ApplicationMethod.Rinse => $"leave it in for at least {time}",
                ContactTimeReached.ByItself => $"keep visibly wet for {time}",
                ContactTimeReached.WipeAgain => $"keep visibly wet for {time}, wipe again as often as it takes",
                _ => $"keep visibly wet for {time}: time it",
            };
        }

        if (setting.ExposureTime.Upper is { } last && last != Interval.WithoutEnd) yield return "off the part "
            + $"{(setting.ExposureTime.UpperIncluded ? "by" : "before")} {FigureWording.Duration(last)} after first wetting, re-wetting included";
        if (setting.MeasureTemperature) yield return $"at {FigureWording.Temperature(setting.Temperature)}: measure it";
    }

    private string Of(StepHazard hazard)
    {
        var record = hazard.Found.Hazard;
        var other = hazard.Other is { } id ? words.Product(id) : record.WithSoil is { } soil ? Words.Of(soil) : MixingWording.Other(record);
        var place = hazard.Where switch
        {
            MeetingPlace.Part => "on the part",
            MeetingPlace.Soil => "on the part: clean it off first",
            _ => "on a cloth, a glove, in a bucket",
        };
        var separated = record.SeparatedBy.Count == 0 ? "" : "; what separates them: " + string.Join(", ", record.SeparatedBy.Select(MixingWording.Of));
        return $"{MixingWording.Of(record.Severity).ToLowerInvariant()} with {other} {place}: "
            + $"{string.Join(", ", record.Effects.Select(MixingWording.Of))}{separated}";
    }

    /// <summary>A line for each thing to protect from and the products that ask it; what all of them ask comes first and names none.</summary>
    private IEnumerable<string> Protecting(PlanStep step)
    {
        var used = sheet.Steps.Where(one => one.Product is not null && one.Setting is not null).GroupBy(one => one.Product!)
            .Select(same => (Name: words.Product(same.Key), same.First().Protection)).ToArray();
        var all = string.Join(", ", used.Select(one => one.Name));
        foreach (var (name, text) in Aspects)
        {
            var said = step.Protection.Select(record => (Text: text(record), For: string.Join(
                ", ", used.Where(one => one.Protection.Contains(record)).Select(one => one.Name))))
                .Where(one => one.Text is not null).GroupBy(one => one.For).OrderByDescending(same => same.Key == all);
            foreach (var same in said)
                yield return name + (same.Key == all ? "" : $" [{same.Key}]") + ": "
                    + string.Join(" ", same.Select(one => one.Text!.EndsWith('.') ? one.Text : one.Text + ".").Distinct());
        }
    }

    private static readonly (string Name, Func<Protection, string?> Of)[] Aspects =
    [
        ("gloves that do not hold", one => one.GlovesFail.Count > 0 ? string.Join("; ", one.GlovesFail) : null),
        ("not for", one => one.NotFor),
        ("eyes", one => one.Eyes),
        ("breathing", one => one.Breathing),
        ("air", one => one.Ventilation),
        ("fire", one => one.Fire),
        ("oxygen", one => one.Oxygen),
        ("equipment under power", one => one.Energised),
        ("disposal", one => one.Disposal),
    ];

    private string Product(PlanStep step) => words.Product(step.Product!);

    public IReadOnlyList<string> Adds => sheet.Occasion?.Adds ?? [];
}

/// <summary>Says which products of the shelf do not serve parts, and why: one reason once, with all the products it holds for, and what holds of every part
/// once for all of them.</summary>
internal sealed class ClosedWording
{
    private readonly PlanWording _words;
    private readonly Names _names;
    private readonly Said[] _everywhere;

    private sealed record Said(ProductId Product, PlanRole Role, string Reason, string? Detail);

    /// <param name="names">The names of everything else.</param>
    public ClosedWording(IEnumerable<PlannedPart> parts, PlanWording words, Names names)
    {
        _words = words;
        _names = names;
        var said = parts.Where(part => part.Closed.Count > 0).Select(All).ToArray();
        _everywhere = said.Length < 2 ? [] : said.Skip(1).Aggregate<Said[], IEnumerable<Said>>(said[0], (held, other) => held.Intersect(other)).ToArray();
    }

    /// <summary>A line for each reason that holds of every part.</summary>
    public IEnumerable<string> Everywhere => Lines(_everywhere);

    /// <summary>A line for each reason of this part that does not hold of all, in the order in which the products first give it.</summary>
    public IEnumerable<string> Of(PlannedPart part) => Lines(All(part).Except(_everywhere));

    private Said[] All(PlannedPart part) => part.Closed.Select(closed => Of(closed, part)).ToArray();

    private IEnumerable<string> Lines(IEnumerable<Said> said)
    {
        foreach (var reason in said.GroupBy(one => one.Reason))
        {
            var products = reason.GroupBy(one => one.Product).Select(OneProduct).ToArray();
            yield return products.Length == 1 ? $"{products[0]}: {reason.Key}"
                : $"these {products.Length} products: {reason.Key}: {string.Join("; ", products)}";
        }
    }

    private string OneProduct(IGrouping<ProductId, Said> of)
    {
        var name = _words.Product(of.Key) + (of.All(one => one.Role == PlanRole.Clean) ? " as cleaner" : of.Any(one => one.Role == PlanRole.Clean)
            ? ", as cleaner too" : "");
        var details = of.Select(one => one.Detail).OfType<string>().Distinct().ToArray();
        return details.Length == 0 ? name : $"{name} ({string.Join("; ", details)})";
    }

    private Said Of(ClosedProduct closed, PlannedPart part)
    {
        if (closed.Missing is { } missing) return new(closed.Product, closed.Role, Of(missing), null);
        if (closed.Closure is not { } closure) return new(closed.Product, closed.Role, "closed", null);
        var question = part.Question with { Product = closed.Product };
        var window = new Window { Need = part.Need, Closure = closure, Identity = [] };
        return closure.Code switch
        {
            ClosureCode.DoesNotKill => new(closed.Product, closed.Role, string.Join("; ", DoesNotKill(closure.Kill, window, question)), null),
            ClosureCode.PartDoesNotStandIt => new(closed.Product, closed.Role, closure.NotListed ? "the device's instructions do not list it"
                : closure.ByItsUse ? "the part does not stand how it is used or taken off" : closure.Forbidden ? "the part does not stand it"
                : "nobody knows that the part stands it", Because(closure)),
            _ => new(closed.Product, closed.Role, WindowWording.Of(closure, window, question, _names), null),
        };
    }

    /// <summary>The reasons without the product's name, which stands beside them; what differs only in what is to be reached or killed is said once.</summary>
    private IEnumerable<string> DoesNotKill(IReadOnlyList<KillReason> reasons, Window window, Question question)
    {
        foreach (var same in reasons.GroupBy(reason => (reason.Code, How: reason.Code == KillReasonCode.OutsideClaims
            ? KillWording.Elsewhere(reason.Arguments[1], question) : null)))
        {
            string Targets(int index, string joined) => string.Join(joined, same.Select(reason => KillWording.Meet(reason.Arguments[index], _names))
                .Distinct());
            if (same.Key.Code == KillReasonCode.LabelClaimsLess) yield return $"no label claim says that it {Targets(1, " or ")}, and by its label claims "
                + "alone it is judged";
            else if (same.Key.How is { } how) yield return $"on record it {Targets(0, " and ")}{how} "
                + $"({WindowWording.Named(same.SelectMany(reason => reason.Arguments.Skip(2)).Distinct())})";
            else foreach (var text in same.Select(reason => Of(reason, window, question)).Distinct()) yield return text;
        }
    }

    private string Of(KillReason reason, Window window, Question question) => reason.Code switch
    {
        KillReasonCode.CompositionNotFull => "it has no label claim, and of what is not known in full nothing published of an ingredient counts",
        KillReasonCode.WaterTooHard => "the water at hand is harder than its label allows",
        _ => English.Lower(KillWording.Of(reason, window, question, _names)).TrimEnd('.'),
    };

    private string? Because(WindowClosure closure)
    {
        var text = string.Join(" and ", closure.Ingredients.Select(id => "its " + _names.Agent(id)));
        if (closure.Rules.Count > 0) text += (text.Length > 0 ? ": " : "") + WindowWording.Named(closure.Rules.Select(rule => rule.Value));
        return text.Length == 0 ? null : text;
    }

    private static string Of(MissingThing missing) => missing.Code switch
    {
        MissingCode.Water => $"{missing.Arguments[0]} water is not at hand",
        MissingCode.DryingAir => "clean compressed air is not at hand",
        MissingCode.Gloves => "no glove at hand holds" + (missing.Arguments.Count == 0 ? "" : ": " + string.Join(" or ", missing.Arguments) + " would"),
        MissingCode.Removes => "its label does not say that it takes off " + string.Join(", ", missing.Arguments),
        _ => $"it must never meet {missing.Arguments[0]} (`{missing.Arguments[1]}`)",
    };
}

/// <summary>Says the declaration of the decontamination status.</summary>
internal sealed class DeclarationWording(PlanWording words)
{
    public IEnumerable<string> Of(StatusDeclaration declaration)
    {
        yield return declaration.Record is { } record ? $"Filled from a record of {record.Date}, never from the plan."
            : "To be filled in by who did the work; the plan says nothing of what was done.";
        foreach (var part in declaration.Parts) yield return $"{words.Part(part.Part)}: {Of(part.Status)}"
            + (part.Steps.Count == 0 ? "" : $" (steps {string.Join(", ", part.Steps)})");
        yield return "Everything inside the device: not decontaminated.";
        yield return "Declared by: ____________ office: ____________ date: ____________";
    }

    public static string Of(PartStatus status) => status switch
    {
        PartStatus.Blank => "decontaminated: yes ____ no ____",
        PartStatus.NotDecontaminated => "not decontaminated",
        PartStatus.NotFully => "not decontaminated: a step was not done or not signed for",
        PartStatus.OpenSurfaces => "open surfaces decontaminated, the gap not shown",
        _ => "decontaminated",
    };
}
