namespace Compat.Cli.Wording;

/// <summary>Says whether what is needed is killed, and why.</summary>
public static class KillWording
{
    /// <summary>The fixed text for prions.</summary>
    public const string Prions = "Stop, quarantine, ask infection prevention.";

    /// <summary>All reasons as one text, the deciding one first.</summary>
    public static string Of(KillJudgement kill, Answer answer, Names names)
    {
        var text = string.Join(" ", kill.Reasons.Select(reason => Of(reason, answer.Window, answer.Question, names)).Distinct());
        if (kill.Reasons is not [{ Code: KillReasonCode.ClaimsMeet }, ..]) return text;
        if (answer.Window?.NoLabelClaim == true) text += " It has no label claim: published claims for an ingredient are used.";
        if (!kill.WellFounded) text += " They rest on recalled sources or on practice alone.";
        return text;
    }

    /// <summary>One reason as a sentence.</summary>
    public static string Of(KillReason reason, Window? window, Question question, Names names)
    {
        string Argument(int index) => index < reason.Arguments.Count ? reason.Arguments[index] : "";
        string Target(int index) => Meet(Argument(index), names);
        return reason.Code switch
        {
            KillReasonCode.Prions => Prions + " Prions are outside what is computed here.",
            KillReasonCode.ContactNotKnown => "What touches the part is not on record, so the level it needs is not known.",
            KillReasonCode.SoiledWhereDry => "Soil on a part that is kept dry: take the device out of use and call the engineer.",
            KillReasonCode.NothingToKill => "Nothing need be killed on it.",
            KillReasonCode.NoClaim => $"Nothing on record shows that it {Target(0)}.",
            KillReasonCode.LabelClaimsLess => $"No label claim of {names.Product(Argument(0))} says that it {Target(1)}, and a product with label claims is judged by these alone.",
            KillReasonCode.TestsShowLess => $"The label claim `{Argument(2)}` says that it {Target(1)}, but the tests it names do not show that it kills {Missing(Argument(3), names)}."
                + string.Concat(reason.Arguments.Skip(4).Select(code => names.FindTest(code) is { } test ? $" {code} is a test {TestWording.For(test)}: it shows nothing on a medical device." : "")),
            KillReasonCode.RegisteredOnly => $"The label claim `{Argument(0)}` rests on a registration ({Argument(1)} {Argument(2)}). Which tests it rests on is not known.",
            KillReasonCode.SuspensionOnly => $"The label claim `{Argument(0)}` names no test on a surface. Its tests were made in suspension, and wiping a surface is harder.",
            KillReasonCode.NeverAbove => $"More than {Argument(1)} level is never ascribed to {names.Agent(Argument(0))}: {Because(names.FindStandingRule(Argument(2))?.Reason, Argument(2))}",
            KillReasonCode.DoesNotKill => $"{Upper(names.Agent(Argument(0)))} is on record as not killing {names.Target(Argument(1))}: {Because(names.FindClaim(Argument(2))?.Why, Argument(2))}",
            KillReasonCode.Refuted => $"A claim that {names.Agent(Argument(0))} {Target(1)} was refuted: {Because(names.FindClaim(Argument(2))?.Refuted, Argument(2))}",
            KillReasonCode.HighNeedsMore => "High level takes the device's instructions, a guideline that names this kind of part, or a product's label claim; a claim of the bare agent is not enough.",
            KillReasonCode.SterileNeedsInstructions => "Sterile takes the device's own instructions; else send it to sterile services.",
            KillReasonCode.NotReached => $"Wiping or spraying does not reach into {Inside(Argument(0))}.",
            KillReasonCode.OutsideClaims => $"On record it {Target(0)}{Elsewhere(Argument(1), question)} ({WindowWording.Named(reason.Arguments.Skip(2))}).",
            KillReasonCode.LabelAlone => $"{Upper(names.Product(Argument(0)))} has label claims and is judged by these alone.",
            KillReasonCode.CompositionNotFull => $"{Upper(names.Product(Argument(0)))} has no label claim on record, and its composition is not known in full: what is published of an ingredient does not count for it.",
            KillReasonCode.UnknownIngredient => $"It has no label claim on record, and what is published of an ingredient does not count beside the unknown ingredient `{Argument(0)}`.",
            KillReasonCode.Inactivated => $"It has no label claim on record, and its {names.Agent(Argument(1))} binds or destroys its {names.Agent(Argument(0))}.",
            KillReasonCode.ClothBinds => $"A cloth of {question.Cloth} binds what kills.",
            KillReasonCode.WaterTooHard => $"The water at hand is harder than the label of {names.Product(Argument(0))} allows.",
            KillReasonCode.NotCovered => $"It does not cover {names.Target(Argument(0))}: a claim used (`{Argument(1)}`) says that it is not killed.",
            KillReasonCode.MachineOnly => $"A claim on record holds in a machine only, not in a bath by hand or by wiping ({WindowWording.Named(reason.Arguments)}).",
            KillReasonCode.WindowClosed => "It kills, and the part stands it, but not both at once" + (window?.Closure is { } closure ? ": " + WindowWording.Of(closure, window, question, names) + "." : "."),
            _ => "Claims on record meet what is needed.",
        };
    }

    /// <summary>A claim that was used, with its origin and, of a label, its standard.</summary>
    public static string Of(KillClaim claim, Names names)
    {
        var origin = claim.Origin switch
        {
            ClaimOrigin.Label => (claim.Registration is null ? "label, shown by " : "label, ") + TestWording.Of(claim, names),
            ClaimOrigin.Instructions => "the device's instructions",
            _ => "published on the bare agent",
        };
        var says = new List<string>();
        if (claim.Reaches is { } level) says.Add("reaches " + NeedWording.Of(level));
        if (claim.Kills.Count > 0) says.Add("kills " + string.Join(", ", claim.Kills.Select(names.Target)));
        if (claim.DoesNotKill.Count > 0) says.Add("does not kill " + string.Join(", ", claim.DoesNotKill.Select(names.Target)));
        var needs = claim.Needs.Count == 0 ? "" : "; needs " + string.Join(" and ", claim.Needs.Select(need => need == Model.ClaimNeed.CleanFirst ? "cleaning first" : "activation"));
        var why = claim.Origin == ClaimOrigin.Published && names.FindClaim(claim.Id) is { } published ? ". " + published.Why : "";
        return $"`{claim.Id}` ({origin}): {string.Join("; ", says)}{(claim.NamesThePart ? ", on this kind of part" : "")}{needs}{why}";
    }

    /// <summary>What is to be reached or killed, as a predicate.</summary>
    internal static string Meet(string target, Names names) =>
        Words.TryParse<Model.Level>(target, out var level) ? "reaches " + NeedWording.Of(level) : "kills " + names.Target(target);

    /// <summary>Whether the claims on record are of other methods than the one asked.</summary>
    internal static bool ByOtherMethods(string methods, Question question) =>
        question.Method is { } asked && !methods.Split(", ").Contains(Words.Of(asked));

    /// <summary>Where claims on record do not reach, as the end of a sentence.</summary>
    internal static string Elsewhere(string methods, Question question) =>
        ByOtherMethods(methods, question) ? $" by {methods}, not by {Words.Of(question.Method!.Value)}"
        : ", but not at the strength, temperature or pH asked, or not over the whole of what is uncertain";

    private static string Missing(string targets, Names names) => string.Join(", ", targets.Split(", ").Select(names.Target));

    private static string Inside(string geometry) => geometry == "lumen" ? "a bore" : geometry == "porous" ? "pores" : "a " + geometry;

    private static string Because(string? why, string id) => (why is null ? "" : ReasonWording.Lower(why).TrimEnd('.') + " ") + $"(`{id}`).";

    private static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
