using Compat.Cli.Input;
using Compat.Cli.Wording;
using Compat.Serialization;

namespace Compat.Cli.Text;

/// <summary>Writes answers for people: the verdict and the reason that decides first, the cautions last.</summary>
public sealed class AnswerText(Page page, Names names)
{
    private readonly WholeText _whole = new(page, names);

    /// <summary>How many boxes are shown; the rest is counted.</summary>
    public const int MostBoxes = 8;

    /// <summary>One answer, whole.</summary>
    public void Write(Answer answer, Serving serving)
    {
        Lead(answer, Subject(answer.Question));
        page.Line(VerdictWording.Scope(answer), 2);
        _whole.Judged(answer);
        Section("Asked", [ExposureWording.Asked(answer.Question, ExposureWording.Unit(answer.Question, names))]);
        Body(answer);
        if (answer.Verdict <= Verdict.NotEstablished && !Deciders.IsOutside(answer)) Section("Taken for what was left out", Assumed(answer));
        Section("What would establish it", EstablishWording.Of(answer, names));
        Serves(answer, serving);
        Evidence([answer]);
        End(answer.Identity);
    }

    private void Serves(Answer answer, Serving serving)
    {
        var judged = answer.Kill is not null;
        Products(serving);
        Section(
            judged ? "Agents on record that do it all, each at a strength and within limits of its own" : "Agents on record that it stands, each within limits of its own",
            Few(serving.Agents.Select(id => names.Agent(id.Value)).ToArray()));
        if (judged && serving is { Products.Count: 0, Agents.Count: 0 } && answer.Verdict <= Verdict.NotEstablished && !Deciders.IsOutside(answer))
            Section("What does it all", ["nothing that is on record" + (answer.Question.Method is { } method ? $" by {Words.Of(method)}" : "")]);
    }

    /// <summary>A device: every part that needs something, worst first, then those that need nothing.</summary>
    public void WriteDevice(Question question, IReadOnlyList<DevicePartAnswer> parts, IReadOnlyDictionary<DevicePartId, Serving> serving, IReadOnlyList<DataIdentity> identity)
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
            Section("What would establish it", EstablishWording.Of(part.Answer!, names));
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
            Section("Taken for what was left out", Assumed(answered[0].Answer!));
        }

        Evidence(answered.Select(part => part.Answer!).ToArray());
        End(identity);
    }

    private void Products(Serving serving) =>
        Section("Products of the site that do it all, each within limits of its own", Few(serving.Products.Select(id => names.Product(id.Value)).ToArray()));

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
        if (elsewhere) page.Line($"It depends on what was left out: {string.Join("; or ", answer.WouldBeAllowed.Select(part => ExposureWording.WouldBeAllowed(part, ExposureWording.Unit(answer.Question, names))))}.", 2);
        page.Line((elsewhere ? "Elsewhere: " : "") + VerdictWording.Decisive(answer, names), 2);
        if (answer.Kill is null && VerdictWording.JudgedBy(answer) is { } by) page.Line(by, 2);
    }

    private IEnumerable<string> Assumed(Answer answer) =>
        answer.Assumptions.Select(taken => ExposureWording.Of(taken, ExposureWording.Unit(answer.Question, names))).OfType<string>();

    private void Body(Answer answer)
    {
        var unit = ExposureWording.Unit(answer.Question, names);
        _whole.Need(answer);
        if (Deciders.IsOutside(answer)) return;
        _whole.Window(answer, unit);
        var useful = answer.Kill is null || answer.Verdict >= Verdict.AllowedWithinLimits;
        if (useful) Section("Limits", answer.Limits.Select(limit => LimitWording.Of(limit, answer, names)));
        Boxes(answer, unit);
        if (useful) Section("What must go with it", WholeText.Duties(answer).Select(duty => DutyWording.Of(duty, names)).Distinct());
        Section("Damage to expect", answer.Damage.Select(EvidenceWording.Of));
        if (answer.PartVerdict != Verdict.NotEstablished)
            Section("State it, and more is allowed", answer.WouldBeAllowed.Select(part => ExposureWording.WouldBeAllowed(part, unit)));
        var decisive = ReasonWording.Of(answer.Decisive, answer.Question, names);
        Section("Also found", Few(answer.Reasons.Select(reason => ReasonWording.Of(reason, answer.Question, names)).Distinct().Where(text => text != decisive).ToArray()));
    }

    private void Boxes(Answer answer, StrengthUnit? unit)
    {
        if (answer.Boxes.Count > 0 && answer.Window is not { IsOpen: true })
        {
            Section(
                Inside(answer) + Shown(answer.BoxCount),
                answer.Boxes.Take(MostBoxes).Select(box => ExposureWording.Of(box, unit)));
        }

        if (answer.ForbiddenBoxes.Count > 0)
        {
            Section(
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
        Section("Rules that decided", answers.SelectMany(answer => answer.DecidedBy).DistinctBy(rule => rule.Id).Select(EvidenceWording.Of));
        _whole.Evidence(answers);
        Section("Rules set aside by others", answers.SelectMany(answer => answer.SetAside).DistinctBy(rule => rule.Id).Select(EvidenceWording.Of));
        Section("Sources, the weakest first", answers.SelectMany(answer => answer.Sources).DistinctBy(source => source.Id).Select(EvidenceWording.Of));
    }

    private void End(IReadOnlyList<DataIdentity> identity)
    {
        Section("Data", identity.Select(EvidenceWording.Of));
        Section("Cautions", VerdictWording.Cautions);
    }

    private void Section(string heading, IEnumerable<string> items)
    {
        var list = items.ToArray();
        if (list.Length == 0) return;
        page.Heading(heading);
        foreach (var item in list) page.Item(item);
    }
}
