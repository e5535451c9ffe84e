using Compat.Planning;

namespace Compat.Tests.Meaning;

/// <summary>What an answer says, by the words that the examples use. Lists are in alphabetical order.</summary>
internal sealed class Facts
{
    private readonly Dictionary<string, string> _said = [];

    /// <summary>The head of an answer: a verdict, a level, an outcome.</summary>
    public required string Head { get; init; }

    /// <summary>What may stand as that which decides: codes of reasons and ids of records.</summary>
    public HashSet<string> Deciding { get; } = [];

    public string? this[string key] => _said.GetValueOrDefault(key);

    public static Facts Refused(IEnumerable<string> codes)
    {
        var facts = new Facts { Head = "refused" };
        facts.Deciding.UnionWith(codes);
        return facts;
    }

    public static Facts Of(Answer answer)
    {
        var facts = new Facts { Head = Text(answer.Verdict) };
        facts.Decide(answer.Decisive.Code);
        facts.Deciding.UnionWith(answer.DecidedBy.Select(rule => rule.Id.Value));
        if (answer.Decisive.Component is { } component) facts.Deciding.Add(component);
        facts.Say("reasons", answer.Reasons.Select(reason => Kebab(reason.Code)));
        facts.Say("decided by", answer.DecidedBy.Select(rule => rule.Id.Value));
        facts.Say("set aside", answer.SetAside.Select(rule => rule.Id.Value));
        facts.Say("duties", answer.Duties.Select(Text));
        facts.Say("limits", answer.Limits.Select(limit => Kebab(limit.Code)));
        facts.Say("methods", answer.Boxes.Select(box => Words.Of(box.Method)));
        facts.Say("exposure times", answer.Boxes.Select(box => box.ExposureTime.ToString("s")));
        facts.Say("dilutions", answer.Boxes.Select(box => box.Dilution?.Scale(100).ToString("% v/v") ?? "-"));
        facts.Say("uses", answer.Boxes.Select(box => box.Uses.ToString()));
        facts.Say("would be allowed", answer.WouldBeAllowed.Select(one => $"{(one.Axis is { } axis ? Words.Of(axis) : "method")} {one.Range}"));
        facts.Say("judged by", [answer.JudgedByPart ? "part" : "materials"]);
        facts._said["boxes"] = answer.BoxCount.ToString(System.Globalization.CultureInfo.InvariantCulture);
        facts._said["part"] = Text(answer.PartVerdict);
        if (answer.Kill is { } kill)
        {
            facts._said["kill"] = $"{Text(kill.Verdict)} ({Kebab(kill.Reasons[0].Code)})";
            facts.Say("kill says", kill.Reasons.Select(reason => Kebab(reason.Code)));
            facts.Say("claims", kill.Claims.Select(claim => claim.Id));
        }

        if (answer.People is { } people)
        {
            facts._said["people"] = Text(people.Verdict);
            facts.Say("harms", people.Forbidding.Select(id => id.Value));
            facts.Say("silent", people.Silent.Select(one => $"{one.Ingredient} for {Words.Of(one.Patient)}"));
        }

        if (answer.Window is { } window) facts.Window(window);
        return facts;
    }

    public static Facts Of(Need need)
    {
        var facts = new Facts { Head = need.KeptDry ? "kept dry" : need.Level is { } level ? Words.Of(level) : "not known" };
        facts.Deciding.UnionWith(need.DecidedByRules.Select(rule => rule.Value));
        facts.Say("patients", need.Patients.Select(Words.Of));
        facts.Say("soil", need.Soil.Select(Words.Of));
        facts.Say("against", need.Against.Select(target => target.ToString()));
        facts._said["touched by"] = need.TouchedBy is { } contact ? Words.Of(contact) : "unknown";
        facts._said["clean first"] = need.CleanFirst ? "yes" : "no";
        return facts;
    }

    public static Facts Of(Window window)
    {
        var facts = new Facts { Head = window.IsOpen ? "open" : "closed" };
        if (window.Closure is { } closure) facts.Decide(closure.Code);
        facts.Window(window);
        return facts;
    }

    public static Facts Of(MixingAnswer answer)
    {
        var facts = new Facts { Head = Kebab(answer.Outcome).Replace('-', ' ') };
        facts.Deciding.UnionWith(answer.Hazards.Select(one => one.Hazard.Id.Value));
        facts.Say("at other strengths", answer.AtOtherStrengths.Select(one => one.Hazard.Id.Value));
        facts.Say("on record as harmless", answer.Harmless.Select(one => one.Id.Value));
        return facts;
    }

    public static Facts Of(PlanSheet plan)
    {
        var facts = new Facts { Head = plan.IsWhole ? "whole" : "not whole" };
        facts.Say("products", plan.Products.Select(id => id.Value));
        foreach (var part in plan.Parts)
        {
            facts._said[part.Part.Id.Value] = $"{Kebab(part.Heading)} ({Kebab(part.Reason)})"
                + (part.Cleaner is { } cleaner ? $", clean with {cleaner}" : "") + (part.Disinfectant is { } other ? $", disinfect with {other}" : "");
        }

        facts.Say("runs", plan.Parts.Where(part => part.Runs is not null).Select(part => $"{part.Part.Id} {part.Runs}"));
        facts.Say("answers", plan.Steps.SelectMany(step => step.Answers).Select(one => $"{one.Part} {Text(one.Verdict)}"));
        facts._said["steps"] = string.Join(", ", plan.Steps.Where(step => step.Setting is not null).Select(Text));
        return facts;
    }

    private void Window(Window window)
    {
        _said["window"] = window.IsOpen ? "open" : $"closed ({Kebab(window.Closure!.Code)})";
        Say("contact times", window.Boxes.Select(box => box.ContactTime.ToString("s")));
        Say("exposure times in the window", window.Boxes.Select(box => box.ExposureTime.ToString("s")));
        Say("temperatures in the window", window.Boxes.Select(box => box.Temperature.ToString("°C")));
        Say("duties in the window", window.Boxes.SelectMany(box => box.Duties).Select(Text));
        Say("methods in the window", window.Boxes.Select(box => Words.Of(box.Method)));
    }

    private void Decide<TEnum>(TEnum code) where TEnum : struct, Enum => Deciding.Add(Kebab(code));

    private void Say(string key, IEnumerable<string> items) =>
        _said[key] = string.Join(", ", items.Distinct().Order(StringComparer.Ordinal)) is { Length: > 0 } said ? said : "none";

    private static string Text(Verdict verdict) => verdict == Verdict.AllowedWithinLimits ? "within limits" : Kebab(verdict).Replace('-', ' ');

    private static string Text(Duty duty) => Words.Of(duty.Kind) + (duty.Ways.Count == 0 ? "" : ":" + string.Join("|", duty.Ways.Select(Text)));

    private static string Text(PlanStep step) => string.Create(System.Globalization.CultureInfo.InvariantCulture,
        $"{step.Product} on {string.Join(" + ", step.Parts)} by {Words.Of(step.Setting!.Method)} {step.Setting.ContactTime:0.###} s");

    private static string Text(DutyWay way) => way.Method is { } method ? Words.Of(method) : way.Act is { } act ? Words.Of(act) : "air";

    private static string Kebab<TEnum>(TEnum code) where TEnum : struct, Enum => Words.Of(code);
}
