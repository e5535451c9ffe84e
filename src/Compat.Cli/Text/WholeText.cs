using Compat.Cli.Wording;
using Compat.Serialization;

namespace Compat.Cli.Text;

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

    /// <summary>What the part needs.</summary>
    public void Need(Answer answer)
    {
        if (answer.Kill is { } kill) Section("What it needs", NeedWording.Of(kill.Need, names));
    }

    /// <summary>How it works, or what closes it.</summary>
    public void Window(Answer answer, StrengthUnit? unit)
    {
        if (answer.Window is not { } window) return;
        if (window.Closure is { } closure)
        {
            if (!Said(answer, closure)) Section("What closes it", [WindowWording.Of(closure, window, answer.Question, names)]);
            return;
        }

        page.Heading((window.BoxCount == 1 ? "Do it inside this" : "Do it inside one of these") + Shown(window.BoxCount));
        page.Line(WindowWording.Summary(window), 2);
        foreach (var box in window.Boxes.Take(AnswerText.MostBoxes)) page.Item(WindowWording.Of(box, unit));
        if (NeedWording.Gap(window) is { } gap) Section("Its gap", [gap]);
    }

    /// <summary>What must go with it: of the boxes shown, where there is a window; else of the part.</summary>
    public static IEnumerable<Duty> Duties(Answer answer) =>
        answer.Window is { IsOpen: true } window ? window.Boxes.Take(AnswerText.MostBoxes).SelectMany(box => box.Duties) : answer.Duties;

    /// <summary>The claims and the person rules that were used, with their sources.</summary>
    public void Evidence(IReadOnlyList<Answer> answers)
    {
        var claims = answers.SelectMany(answer => answer.Kill?.Claims ?? []).DistinctBy(claim => claim.Id).OrderBy(claim => claim.Id, StringComparer.Ordinal).ToArray();
        var rules = answers.SelectMany(answer => answer.People?.Rules ?? []).DistinctBy(rule => rule.Id).ToArray();
        Section("Claims used", claims.Select(claim => KillWording.Of(claim, names)));
        Section("Rules on people", rules.Select(rule => PeopleWording.Of(rule, names)));
        var listed = answers.SelectMany(answer => answer.Sources).Select(source => source.Id).ToArray();
        var sources = claims.SelectMany(claim => claim.Sources).Concat(rules.SelectMany(rule => rule.Sources)).Distinct().Except(listed);
        Section("Sources of the claims and of the rules on people", sources.Select(names.FindSource).OfType<Source>().Select(EvidenceWording.Of));
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

    private void Section(string heading, IEnumerable<string> items)
    {
        var list = items.ToArray();
        if (list.Length == 0) return;
        page.Heading(heading);
        foreach (var item in list) page.Item(item);
    }
}
