namespace Compat.Cli.Say;

/// <summary>Writes answers for people: the verdict and the reason that decides first, the cautions last.</summary>
internal sealed class AnswerText(Page page, Names names)
{
    private readonly WholeText _whole = new(page, names);

    /// <summary>How many boxes are shown; the rest is counted.</summary>
    public const int MostBoxes = 8;

    public void Write(Answer answer, Serving serving)
    {
        Lead(answer, Subject(answer.Question));
        page.Line(VerdictWording.Scope(answer), 2);
        _whole.Judged(answer);
        page.Section("Asked", [ExposureWording.Asked(answer.Question, ExposureWording.Unit(answer.Question, names))]);
        Body(answer);
        if (answer.Verdict <= Verdict.NotEstablished && !Deciders.IsOutside(answer)) page.Section("Taken for what was left out", Assumed(answer));
        page.Section("What would establish it", EstablishWording.Of(answer, names));
        Serves(answer, serving);
        Evidence([answer]);
        End(answer.Identity);
    }

    private void Serves(Answer answer, Serving serving)
    {
        var judged = answer.Kill is not null;
        Products(serving);
        page.Section(
            judged ? "Agents on record that do it all, each at a strength and within limits of its own"
                : "Agents on record that it stands, each within limits of its own",
            Few(serving.Agents.Select(id => names.Agent(id.Value)).ToArray()));
        if (judged && serving is { Products.Count: 0, Agents.Count: 0 } && answer.Verdict <= Verdict.NotEstablished && !Deciders.IsOutside(answer))
            page.Section("What does it all", ["nothing that is on record" + (answer.Question.Method is { } method ? $" by {Words.Of(method)}" : "")]);
    }

    /// <summary>A device: every part that needs something, worst first, then those that need nothing.</summary>
    public void WriteDevice(Question question, IReadOnlyList<DevicePartAnswer> parts, IReadOnlyDictionary<DevicePartId, Serving> serving,
        IReadOnlyList<DataIdentity> identity)
    {
        var answered = parts.Where(part => part is { NeedsNothing: false, Answer: not null }).ToArray();
        page.Line($"{names.Device(question.Device!.Value)}: {Substance(question)}");
        page.Line("Asked: " + ExposureWording.Asked(question, ExposureWording.Unit(question, names)), 2, 4);
        foreach (var part in answered)
        {
            page.Blank();
            page.Line(new string('-', Page.Width));
            Lead(part.Answer!, PartName(part));
            _whole.Judged(part.Answer!);
            Body(part.Answer!);
            page.Section("What would establish it", EstablishWording.Of(part.Answer!, names));
            Products(serving[part.Part.Id]);
        }

        page.Blank();
        page.Line(new string('-', Page.Width));
        var nothing = parts.Where(part => part.NeedsNothing).ToArray();
        if (nothing.Length > 0)
        {
            page.Line("Needs nothing (nobody touches it; keep it dry)");
            foreach (var part in nothing) page.Item(PartName(part));
        }

        if (answered.Length > 0)
        {
            page.Heading("What was judged");
            page.Line(VerdictWording.ScopeOfParts(question), 2);
            page.Section("Taken for what was left out", Assumed(answered[0].Answer!));
        }

        Evidence(answered.Select(part => part.Answer!).ToArray());
        End(identity);
    }

    private void Products(Serving serving) =>
        page.Section("Products of the site that do it all, each within limits of its own",
            Few(serving.Products.Select(id => names.Product(id.Value)).ToArray()));

    private static string PartName(DevicePartAnswer part) =>
        part.Part.Name is { } name ? $"{name} ({part.Part.Id}, {part.Type.Id})" : $"{part.Part.Id} ({part.Type.Name}, {part.Type.Id})";

    private string Substance(Question question) =>
        question.Agent is { } agent ? names.Agent(agent.Value) : names.Product(question.Product!.Value);

    private string Subject(Question question)
    {
        var target = question.Part is { } part ? names.Part(part)
            : question.Device is { } device ? names.Device(device.Value) + (question.DevicePart is null ? "" : $", part {question.DevicePart}")
            : null;
        return $"{Substance(question)} on {SubjectWording.Of(target, question, names)}";
    }

    private void Lead(Answer answer, string subject)
    {
        page.Line($"{VerdictWording.Heading(answer.Verdict)}: {subject}", 0, 2);
        var elsewhere = answer is { Verdict: Verdict.NotEstablished, PartVerdict: Verdict.NotEstablished, WouldBeAllowed.Count: > 0 };
        if (elsewhere) page.Line($"It depends on what was left out: {string.Join("; or ", MoreAllowed(answer))}.", 2);
        page.Line((elsewhere ? "Elsewhere: " : "") + VerdictWording.Decisive(answer, names), 2);
        if (answer.Kill is null && VerdictWording.JudgedBy(answer) is { } by) page.Line(by, 2);
    }

    private IEnumerable<string> MoreAllowed(Answer answer) =>
        answer.WouldBeAllowed.Select(part => ExposureWording.WouldBeAllowed(part, ExposureWording.Unit(answer.Question, names)));

    private IEnumerable<string> Assumed(Answer answer) =>
        answer.Assumptions.Select(taken => ExposureWording.Of(taken, ExposureWording.Unit(answer.Question, names))).OfType<string>();

    private void Body(Answer answer)
    {
        var unit = ExposureWording.Unit(answer.Question, names);
        _whole.Need(answer);
        if (Deciders.IsOutside(answer)) return;
        _whole.Window(answer, unit);
        var useful = answer.Kill is null || answer.Verdict >= Verdict.AllowedWithinLimits;
        if (useful) page.Section("Limits", answer.Limits.Select(limit => LimitWording.Of(limit, answer, names)));
        Boxes(answer, unit);
        if (useful) page.Section("What must go with it", WholeText.Duties(answer).Select(duty => DutyWording.Of(duty, names)).Distinct());
        page.Section("Damage to expect", answer.Damage.Select(EvidenceWording.Of));
        if (answer.PartVerdict != Verdict.NotEstablished)
            page.Section("State it, and more is allowed", MoreAllowed(answer));
        var decisive = ReasonWording.Of(answer.Decisive, answer.Question, names);
        page.Section("Also found", Few(answer.Reasons.Select(reason => ReasonWording.Of(reason, answer.Question, names)).Distinct()
            .Where(text => text != decisive).ToArray()));
    }

    private void Boxes(Answer answer, StrengthUnit? unit)
    {
        if (answer.Boxes.Count > 0 && answer.Window is not { IsOpen: true })
        {
            page.Section(
                Inside(answer) + Shown(answer.BoxCount),
                answer.Boxes.Take(MostBoxes).Select(box => ExposureWording.Of(box, unit)));
        }

        if (answer.ForbiddenBoxes.Count > 0)
        {
            page.Section(
                "Not allowed, whatever is found out" + Shown(answer.ForbiddenBoxes.Count),
                answer.ForbiddenBoxes.Take(MostBoxes).Select(box => ExposureWording.Of(box, unit)));
        }
    }

    private static string Inside(Answer answer) =>
        answer.Kill is not null && answer.Verdict < Verdict.AllowedWithinLimits ? "What the part alone stands"
        : answer.BoxCount == 1 ? "Allowed only inside this" : "Allowed only inside one of these";

    private static IEnumerable<string> Few(string[] all) =>
        all.Length <= MostBoxes ? all : all.Take(MostBoxes).Append($"and {all.Length - MostBoxes} more (--json has all)");

    private static string Shown(int count) => count <= MostBoxes ? "" : $" (the first {MostBoxes} of {count}; --json has more)";

    private void Evidence(IReadOnlyList<Answer> answers)
    {
        answers = answers.Where(answer => !Deciders.IsOutside(answer)).ToArray();
        page.Section("Rules that decided", answers.SelectMany(answer => answer.DecidedBy).DistinctBy(rule => rule.Id).Select(EvidenceWording.Of));
        _whole.Evidence(answers);
        page.Section("Rules set aside by others", answers.SelectMany(answer => answer.SetAside).DistinctBy(rule => rule.Id).Select(EvidenceWording.Of));
        page.Section("Sources, the weakest first", answers.SelectMany(answer => answer.Sources).DistinctBy(source => source.Id).Select(EvidenceWording.Of));
    }

    private void End(IReadOnlyList<DataIdentity> identity)
    {
        page.Data(identity);
        page.Cautions();
    }
}

/// <summary>Writes what kill and people add to an answer; nothing where they were not judged.</summary>
internal sealed class WholeText(Page page, Names names)
{
    /// <summary>Part, kill and people, each with its verdict and reason.</summary>
    public void Judged(Answer answer)
    {
        if (answer.Kill is not { } kill) return;
        page.Heading("What was judged");
        var by = VerdictWording.JudgedBy(answer);
        var decider = answer.Verdict < Verdict.AllowedWithinLimits ? Deciders.Of(answer)[0] : null;
        Item("part", answer.PartVerdict, ReasonWording.Of(answer.Decisive, answer.Question, names) + (by is null ? "" : " " + by));
        Item("kill", kill.Verdict, KillWording.Of(kill, answer, names));
        if (answer.People is { } people) Item("people", people.Verdict, PeopleWording.Of(people, names));

        void Item(string what, Verdict verdict, string why) =>
            page.Item($"{what}: {VerdictWording.Plain(verdict)}{(what == decider ? ", as said above" : ". " + why)}");
    }

    public void Need(Answer answer)
    {
        if (answer.Kill is { } kill) page.Section("What it needs", NeedWording.Of(kill.Need, names));
    }

    public void Window(Answer answer, StrengthUnit? unit)
    {
        if (answer.Window is not { } window) return;
        if (window.Closure is { } closure)
        {
            if (!Said(answer, closure)) page.Section("What closes it", [WindowWording.Of(closure, window, answer.Question, names)]);
            return;
        }

        page.Heading((window.BoxCount == 1 ? "Do it inside this" : "Do it inside one of these") + Shown(window.BoxCount));
        page.Line(WindowWording.Summary(window), 2);
        foreach (var box in window.Boxes.Take(AnswerText.MostBoxes)) page.Item(WindowWording.Of(box, unit));
        if (NeedWording.Gap(window) is { } gap) page.Section("Its gap", [gap]);
    }

    /// <summary>What must go with it: of the boxes shown, where there is a window; else of the part.</summary>
    public static IEnumerable<Duty> Duties(Answer answer) =>
        answer.Window is { IsOpen: true } window ? window.Boxes.Take(AnswerText.MostBoxes).SelectMany(box => box.Duties) : answer.Duties;

    /// <summary>The claims and the person rules that were used, with their sources.</summary>
    public void Evidence(IReadOnlyList<Answer> answers)
    {
        var claims = answers.SelectMany(answer => answer.Kill?.Claims ?? []).DistinctBy(claim => claim.Id).OrderBy(claim => claim.Id, StringComparer.Ordinal)
            .ToArray();
        var rules = answers.SelectMany(answer => answer.People?.Rules ?? []).DistinctBy(rule => rule.Id).ToArray();
        page.Section("Claims used", claims.Select(claim => KillWording.Of(claim, names)));
        page.Section("Rules on people", rules.Select(rule => PeopleWording.Of(rule, names)));
        var listed = answers.SelectMany(answer => answer.Sources).Select(source => source.Id).ToArray();
        var sources = claims.SelectMany(claim => claim.Sources).Concat(rules.SelectMany(rule => rule.Sources)).Distinct().Except(listed);
        page.Section("Sources of the claims and of the rules on people", sources.Select(names.FindSource).OfType<Source>().Select(EvidenceWording.Of));
    }

    /// <summary>Whether the judgement of kill, or of people, has said already what closes the window.</summary>
    private static bool Said(Answer answer, Answers.WindowClosure closure) => closure.Code switch
    {
        Answers.ClosureCode.DoesNotKill => true,
        Answers.ClosureCode.HarmsPeople => answer.People!.Verdict == Verdict.NotAllowed,
        Answers.ClosureCode.PartDoesNotStandIt => answer.PartVerdict < Verdict.AllowedWithinLimits,
        _ => answer.Kill!.Reasons is [{ Code: Compat.Answers.KillReasonCode.WindowClosed }, ..],
    };

    private static string Shown(int count) => count <= AnswerText.MostBoxes ? "" : $" (the first {AnswerText.MostBoxes} of {count}; --json has more)";
}

/// <summary>Writes a decision map for people: the cells by verdict, the worst first.</summary>
internal sealed class MapText(Page page, Names names)
{
    public void Write(DecisionMap map, Question question)
    {
        var unit = names.Unit(map.Agent);
        var on = SubjectWording.Of(map.Part is { } part ? names.Part(part) : null, question, names);
        page.Line($"Map of {names.Agent(map.Agent.Value)} on {on}: {map.Cells.Count} boxes");
        foreach (var group in map.Cells.GroupBy(cell => cell.Verdict))
        {
            page.Heading(VerdictWording.Heading(group.Key));
            foreach (var reason in group.GroupBy(cell => ReasonWording.Of(cell.Reason, question, names)))
            {
                page.Line(reason.Key, 2);
                foreach (var cell in reason)
                {
                    var rules = cell.DecidedBy.Count == 0 ? "" : " [" + string.Join(", ", cell.DecidedBy) + "]";
                    page.Line("- " + ExposureWording.Of(cell, unit) + rules, 4, 6);
                }
            }
        }

        page.Data(map.Identity);
    }
}

/// <summary>What serves where the agent or product asked does not.</summary>
/// <param name="Agents">Agents, where no product serves.</param>
internal sealed record Serving(IReadOnlyList<ProductId> Products, IReadOnlyList<AgentId> Agents)
{
    /// <summary>Looked for only where the answer is no, or not known, and something could serve at all.</summary>
    public static Serving Of(KnowledgeBase kb, Answer answer)
    {
        if (answer.Verdict > Verdict.NotEstablished || Deciders.IsOutside(answer)) return new([], []);
        if (answer.Kill is null) return new([], kb.Alternatives(answer.Question));
        var (products, agents) = kb.Serving(answer.Question);
        return new(products, agents);
    }

    public static Serving OfPart(KnowledgeBase kb, Answer answer)
    {
        if (answer.Verdict > Verdict.NotEstablished || answer.Kill is null || Deciders.IsOutside(answer)) return new([], []);
        return new(kb.ServingProducts(answer.Question), []);
    }
}
