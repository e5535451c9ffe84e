namespace Compat.Cli.Say;

/// <summary>Says what a part needs.</summary>
internal static class NeedWording
{
    public static IEnumerable<string> Asked(Question question)
    {
        if (question.TouchedBy is { } contact) yield return "touched by " + Contact(contact);
        if (question.Soil is { } soil) yield return "soil: " + Soils(soil);
        if (question.Level is { } level) yield return "at least " + Words.Of(level) + "\u00a0level";
        if (question.Against.Count > 0) yield return "against " + string.Join(", ",
            question.Against.Select(target => target.Group is { } group ? Group(group) : target.ToString().Spaced()));
        if (question.Patients.Count > 0) yield return "patients: " + Patients(question.Patients);
        if (question.Occupied) yield return "a patient in the device or in reach";
        if (question.Cloth is { } cloth) yield return "cloth of " + cloth;
    }

    public static IEnumerable<string> Of(Need need, Names names)
    {
        yield return Level(need, names);
        if (need.Prions) yield break;
        yield return (need.Soil.Count == 0 ? "nothing on it" : "on it: " + Soils(need.Soil))
            + (need.SoilIsUsual ? " (assumed: what is usual; state it with --soil)" : " (as stated)");
        if (need.Patients.Count > 0) yield return "judged for these patients or contacts: " + Patients(need.Patients)
            + (need.Occupied ? "; one is in the device or in reach" : "");
        else if (need.Occupied) yield return "a patient is in the device or in reach";
        if (need.TouchedBy >= TouchedBy.IntactSkin && !need.KeptDry) yield return "a single-use cover over it does not change the level";
        if (need.Geometry != Geometry.Open) yield return $"its shape is hard to reach: {Shape(need.Geometry)}";
    }

    /// <summary>What a gap means for a window; null where there is none.</summary>
    public static string? Gap(Window window) =>
        window.GapNotShown
            ? $"open surfaces are reached, the {Shape(window.Need.Geometry)} is not shown to be: open or dismantle it, brush-clean it twice, work the cloth in"
        : window.WorkIntoGap ? $"work the cloth into the {Shape(window.Need.Geometry)}, open and closed"
        : null;

    public static string Of(Level level) => level switch
    {
        Model.Level.Cleaned => "cleaned",
        Model.Level.Sterile => "sterile",
        _ => Words.Of(level) + "-level disinfection",
    };

    public static string Group(OrganismGroup group) => group == OrganismGroup.NonEnvelopedViruses ? "non-enveloped viruses" : Words.Of(group).Spaced();

    public static string Contact(TouchedBy contact) => contact switch
    {
        TouchedBy.Nobody => "nobody",
        TouchedBy.Internal => "nobody: it lies inside",
        TouchedBy.Floor => "the floor",
        TouchedBy.Hand => "hands",
        _ => Words.Of(contact).Spaced(),
    };

    public static string Shape(Geometry geometry) => geometry switch
    {
        Geometry.Lumen => "bore",
        Geometry.Porous => "pores",
        _ => Words.Of(geometry),
    };

    public static string Soils(IReadOnlyList<SoilKind> soils) => soils.Count == 0 ? "none" : string.Join(", ", soils.Select(Words.Of));

    private static string Level(Need need, Names names)
    {
        if (need.Prions) return "prions are named: nothing is computed";
        var touched = need.TouchedBy is { } contact ? $"touched by {Contact(contact)}" : "what touches it is not on record";
        if (need.KeptDry) return $"nothing, it is kept dry: {touched}" + Also(need, names);
        if (need.Level is not { } level) return $"not known: {touched}" + Also(need, names);
        var why = need.Origin switch
        {
            NeedOrigin.Asked => $"as asked; {touched}",
            NeedOrigin.SiteDecision => $"decided by the site, {need.DecidedBy}; {touched}",
            NeedOrigin.Occasion => $"by the occasion; {touched}",
            _ => $"{touched}, published classification",
        };
        var groups = need.Groups.Count == 0 ? "" : ". It includes " + string.Join(", ", need.Groups.Select(Group));
        return $"{(need.CleanFirst ? "cleaned first in a step of its own, then " : "")}{Of(level)} ({why}){Also(need, names)}{groups}";
    }

    private static string Also(Need need, Names names) => need.Against.Count == 0 ? ""
        : "; and against " + string.Join(", ", need.Against.Select(names.Target));

    public static string Patients(IEnumerable<Model.PatientGroup> patients) => string.Join(", ", patients.Select(patient => Words.Of(patient).Spaced()));
}

/// <summary>Says whether what is needed is killed, and why.</summary>
internal static class KillWording
{
    public const string Prions = "Stop, quarantine, ask infection prevention.";

    public static string Of(KillJudgement kill, Answer answer, Names names)
    {
        var text = string.Join(" ", kill.Reasons.Select(reason => Of(reason, answer.Window, answer.Question, names)).Distinct());
        if (kill.Reasons is not [{ Code: KillReasonCode.ClaimsMeet }, ..]) return text;
        if (answer.Window?.NoLabelClaim == true) text += " It has no label claim: published claims for an ingredient are used.";
        if (!kill.WellFounded) text += " They rest on recalled sources or on practice alone.";
        return text;
    }

    public static string Of(KillReason reason, Window? window, Question question, Names names)
    {
        string Argument(int index) => reason.Arguments.At(index);
        string Target(int index) => Meet(Argument(index), names);
        return reason.Code switch
        {
            KillReasonCode.Prions => Prions + " Prions are outside what is computed here.",
            KillReasonCode.ContactNotKnown => "What touches the part is not on record, so the level it needs is not known.",
            KillReasonCode.SoiledWhereDry => "Soil on a part that is kept dry: take the device out of use and call the engineer.",
            KillReasonCode.NothingToKill => "Nothing need be killed on it.",
            KillReasonCode.NoClaim => $"Nothing on record shows that it {Target(0)}.",
            KillReasonCode.LabelClaimsLess =>
                $"No label claim of {names.Product(Argument(0))} says that it {Target(1)}, and a product with label claims is judged by these alone.",
            KillReasonCode.TestsShowLess =>
                $"The label claim `{Argument(2)}` says that it {Target(1)}, but the tests it names do not show that it kills {Missing(Argument(3), names)}."
                + string.Concat(reason.Arguments.Skip(4).Select(code => names.FindTest(code) is { } test
                    ? $" {code} is a test {TestWording.For(test)}: it shows nothing on a medical device." : "")),
            KillReasonCode.RegisteredOnly =>
                $"The label claim `{Argument(0)}` rests on a registration ({Argument(1)} {Argument(2)}). Which tests it rests on is not known.",
            KillReasonCode.SuspensionOnly =>
                $"The label claim `{Argument(0)}` names no test on a surface. Its tests were made in suspension, and wiping a surface is harder.",
            KillReasonCode.NeverAbove => $"More than {Argument(1)} level is never ascribed to {names.Agent(Argument(0))}: "
                + $"{Because(names.FindStandingRule(Argument(2))?.Reason, Argument(2))}",
            KillReasonCode.DoesNotKill => $"{names.Agent(Argument(0)).Capital()} is on record as not killing {names.Target(Argument(1))}: "
                + $"{Because(names.FindClaim(Argument(2))?.Why, Argument(2))}",
            KillReasonCode.Refuted =>
                $"A claim that {names.Agent(Argument(0))} {Target(1)} was refuted: {Because(names.FindClaim(Argument(2))?.Refuted, Argument(2))}",
            KillReasonCode.HighNeedsMore => "High level takes the device's instructions, a guideline that names this kind of part, or a product's label "
                + "claim; a claim of the bare agent is not enough.",
            KillReasonCode.SterileNeedsInstructions => "Sterile takes the device's own instructions; else send it to sterile services.",
            KillReasonCode.NotReached => $"Wiping or spraying does not reach into {Inside(Argument(0))}.",
            KillReasonCode.OutsideClaims => $"On record it {Target(0)}{Elsewhere(Argument(1), question)} ({WindowWording.Named(reason.Arguments.Skip(2))}).",
            KillReasonCode.LabelAlone => $"{names.Product(Argument(0)).Capital()} has label claims and is judged by these alone.",
            KillReasonCode.CompositionNotFull => $"{names.Product(Argument(0)).Capital()} has no label claim on record, and its composition is not known in "
                + "full: what is published of an ingredient does not count for it.",
            KillReasonCode.UnknownIngredient =>
                $"It has no label claim on record, and what is published of an ingredient does not count beside the unknown ingredient `{Argument(0)}`.",
            KillReasonCode.Inactivated =>
                $"It has no label claim on record, and its {names.Agent(Argument(1))} binds or destroys its {names.Agent(Argument(0))}.",
            KillReasonCode.ClothBinds => $"A cloth of {question.Cloth} binds what kills.",
            KillReasonCode.WaterTooHard => $"The water at hand is harder than the label of {names.Product(Argument(0))} allows.",
            KillReasonCode.NotCovered => $"It does not cover {names.Target(Argument(0))}: a claim used (`{Argument(1)}`) says that it is not killed.",
            KillReasonCode.MachineOnly =>
                $"A claim on record holds in a machine only, not in a bath by hand or by wiping ({WindowWording.Named(reason.Arguments)}).",
            KillReasonCode.WindowClosed => "It kills, and the part stands it, but not both at once"
                + (window?.Closure is { } closure ? ": " + WindowWording.Of(closure, window, question, names) + "." : "."),
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
        var needs = claim.Needs.Count == 0 ? "" : "; needs " + string.Join(" and ",
            claim.Needs.Select(need => need == Model.ClaimNeed.CleanFirst ? "cleaning first" : "activation"));
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

    private static string Because(string? why, string id) => (why is null ? "" : English.Lower(why).TrimEnd('.') + " ") + $"(`{id}`).";
}

/// <summary>Names tests that claims of labels rest on, and says how far they reach.</summary>
internal static class TestWording
{
    /// <summary>What a claim rests on: its tests, each with what it shows, or its registration.</summary>
    public static string Of(KillClaim claim, Names names) =>
        claim.Registration is { } registration ? Of(registration) : string.Join(", ", claim.ShownBy.Select(test => $"{test.Code} ({Shows(test, names)})"));

    public static string Of(Registration registration) => $"registered: {registration.Authority} {registration.Number}, tests not known";

    /// <summary>What a test shows and how it was made, or why it shows nothing on a device.</summary>
    public static string Shows(TestStandard test, Names names) =>
        test.Field is TestField.Medical or TestField.AnySurface && test.On.Any(on => on is TestedOn.Surfaces or TestedOn.Instruments)
            ? $"{string.Join(", ", test.Shows.Select(names.Target))}; {How(test)}"
            : $"a test {For(test)}";

    public static string For(TestStandard test) => test.Field switch
    {
        TestField.FoodAndHousehold => "for food, industrial, domestic and institutional areas",
        TestField.Veterinary => "for animals and where they are kept",
        TestField.WaterSystems => "for water in pipes, towers and pools",
        TestField.Development => "of products under development, which says nothing of a use",
        _ when test.On.All(on => on == TestedOn.Skin) => "on hands",
        TestField.Medical => "for the medical area",
        _ => "of hard surfaces",
    };

    private static string How(TestStandard test) => test.Step != TestStep.Practical ? "in suspension"
        : test.On.Contains(TestedOn.Surfaces) ? test.Wiping ? "on surfaces, wiped" : "on surfaces, without wiping"
        : "on instruments, immersed";
}

/// <summary>Says what a substance means for people.</summary>
internal static class PeopleWording
{
    /// <summary>The judgement as one text: what forbids first, else what is asked, then what nobody wrote.</summary>
    public static string Of(PeopleJudgement people, Names names)
    {
        var forbidding = people.Rules.Where(rule => people.Forbidding.Contains(rule.Id)).ToArray();
        var texts = forbidding.Select(rule => Forbids(rule, people)).ToList();
        if (forbidding.Length > 0 && people.Verdict >= Verdict.AllowedWithinLimits) texts.Add("Other exposures are left.");
        var asking = people.Rules.Count - forbidding.Length;
        if (people.Verdict >= Verdict.AllowedWithinLimits && asking > 0)
            texts.Add((asking == 1 ? "One rule on people asks duties" : $"{asking} rules on people ask duties") + ": they are among what must go with it.");
        if (people.Verdict >= Verdict.AllowedWithinLimits) texts.AddRange(Silent(people.Silent, names));
        if (texts.Count == 0) texts.Add(people.Verdict == Verdict.Allowed ? "No rule on people speaks against it."
            : "Not all that is in it is known, so what it means for people is not either.");
        return string.Join(" ", texts);
    }

    public static string Of(PersonRule rule, Names names)
    {
        var says = rule.Verdict == PersonVerdict.NotAllowed ? "not allowed" : "only with: "
            + string.Join("; ", rule.Duties.Select(duty => DutyWording.Of(duty, names)));
        return $"`{rule.Id}` ({Whom(rule)}): {says}. Harm: {rule.Harm}. {rule.Why}";
    }

    private static string Forbids(PersonRule rule, PeopleJudgement people)
    {
        var meant = rule.Patients.Where(people.Patients.Contains).ToArray();
        var whom = meant.Length == 0 ? "with a patient in reach" : "patients: " + NeedWording.Patients(meant);
        var cannot = rule.Verdict == PersonVerdict.NotAllowed ? "" : " What it asks cannot be met on this part.";
        return $"The rule `{rule.Id}` forbids it ({whom}). Harm: {rule.Harm}. {rule.Why}{cannot}";
    }

    private static string Whom(PersonRule rule)
    {
        var patients = NeedWording.Patients(rule.Patients);
        return rule.Occupied ? (patients.Length == 0 ? "" : patients + ", ") + "a patient in the device or in reach" : patients;
    }

    private static IEnumerable<string> Silent(IReadOnlyList<Answers.SilentPatient> silent, Names names)
    {
        if (silent.Count == 0) yield break;
        var each = silent.GroupBy(pair => pair.Ingredient).Select(group => (Ingredient: names.Anything(group.Key),
            Patients: NeedWording.Patients(group.Select(pair => pair.Patient))));
        var alike = each.GroupBy(pair => pair.Patients).Select(group => $"{string.Join(", ", group.Select(pair => pair.Ingredient))} for {group.Key}");
        yield return $"No rule on people is on record, which is no permission, of: {string.Join("; ", alike)}.";
    }
}

/// <summary>Says a window: how it works, or what closes it.</summary>
internal static class WindowWording
{
    private const int MostNamed = 3;

    /// <summary>The shortest contact time that works and the longest exposure time that is stood; of an open window.</summary>
    public static string Summary(Window window)
    {
        var longest = window.LongestExposureTime!.Value;
        var stands = longest == Interval.WithoutEnd ? "the part stands it for any time" : $"the part stands it up to {FigureWording.Duration(longest)}";
        return window.ShortestContactTime!.Value is var wet && wet == 0m
            ? $"no contact time is needed; {stands}"
            : $"it works from {FigureWording.Duration(wet)} wet; {stands}";
    }

    /// <summary>A box, every axis named, with what to do about each.</summary>
    public static string Of(WindowBox box, StrengthUnit? unit)
    {
        var parts = new List<string> { Words.Of(box.Method) };
        if (box.Strength is { } strength) parts.Add("strength " + FigureWording.Strength(strength, unit));
        if (box.Dilution is { } dilution) parts.Add(ExposureWording.Dilution(dilution));
        if (Wet(box) is { } wet) parts.Add(wet);
        parts.Add(box.ExposureTime.Upper is not { } last || last == Interval.WithoutEnd ? "it may stay on"
            : "off the part " + (box.ExposureTime.UpperIncluded ? "by " : "before ") + FigureWording.Duration(last));
        parts.Add(Measured(FigureWording.Temperature(box.Temperature), "any temperature", box.Temperature is { Lower: null or -40m, Upper: null or 200m },
            box.MeasureTemperature));
        parts.Add(Measured("pH " + FigureWording.Ph(box.Ph), "any pH", box.Ph is { Lower: null or -1m, Upper: null or 15m }, box.MeasurePh));
        parts.Add(FigureWording.CountOfUses(box.Uses));
        return string.Join("; ", parts);
    }

    /// <summary>What closes a window, as a sentence without a final stop, with the pair that closes it.</summary>
    public static string Of(WindowClosure closure, Window window, Question question, Names names)
    {
        string Argument(int index) => closure.Arguments.At(index);
        var text = closure.Code switch
        {
            ClosureCode.DoesNotKill => string.Join(" ", closure.Kill.Select(reason => KillWording.Of(reason, window, question, names)).Distinct()).TrimEnd('.'),
            ClosureCode.PartDoesNotStandIt when closure.NotListed => "the device's instructions do not list it",
            ClosureCode.PartDoesNotStandIt when closure.ByItsUse => "the part does not stand how it is used or taken off",
            ClosureCode.PartDoesNotStandIt => (closure.Forbidden ? "the part does not stand " : "nobody knows that the part stands ")
                + (closure.Ingredients.Count == 0 ? "it" : "its " + string.Join(", its ", closure.Ingredients.Select(names.Agent))),
            ClosureCode.HarmsPeople => "a rule on people forbids it",
            ClosureCode.KillsTooSlowly => $"kills in {Time(closure.ContactTime)}; this part stands {Time(closure.ExposureTime)}",
            ClosureCode.TooNarrow => $"kills in {Time(closure.ContactTime)}; this part stands {Time(closure.ExposureTime)}: too narrow to hit",
            ClosureCode.OtherMethods => $"kills by {Argument(0)}; this part stands {Argument(1)}",
            ClosureCode.OtherStrength => "kills at strengths or dilutions that this part does not stand",
            ClosureCode.OtherConditions => "kills at temperatures or a pH that this part does not stand",
            _ => "for high level the part's own rule or its instructions must spare it; only its materials are known to stand it",
        };
        var pair = new List<string>();
        if (closure.Claims.Count > 0) pair.Add("on the side of kill: " + Named(closure.Claims.Select(claim => claim.Id)));
        if (closure.Rules.Count > 0) pair.Add("on the side of the part: " + Named(closure.Rules.Select(rule => rule.Value)));
        if (closure.Code == ClosureCode.HarmsPeople) pair.Add(Named(closure.Arguments));
        return pair.Count == 0 ? text : $"{text} ({string.Join("; ", pair)})";
    }

    private static string? Wet(WindowBox box)
    {
        if (box.Reached == ContactTimeReached.NotNeeded) return null;
        var time = FigureWording.Duration(box.ContactTime.Lower ?? 0m);
        return box.Reached switch
        {
            ContactTimeReached.ByItself when box.Method >= ApplicationMethod.Rinse => $"for at least {time}",
            ContactTimeReached.ByItself => $"keep visibly wet for {time}, which it does by itself",
            ContactTimeReached.WipeAgain => $"keep visibly wet for {time}, wipe again as often as it takes",
            _ => $"keep visibly wet for {time}, time it: how long it stays wet is not on record",
        };
    }

    private static string Measured(string range, string any, bool isAny, bool measure) => isAny ? any : measure ? range + ", measure it" : range;

    private static string Time(decimal? seconds) =>
        seconds is not { } time ? "a time not on record" : time == Interval.WithoutEnd ? "any time" : FigureWording.Duration(time);

    /// <summary>The first few ids; the rest is counted.</summary>
    internal static string Named(IEnumerable<string> ids)
    {
        var all = ids.Distinct().Select(id => $"`{id}`").ToArray();
        return string.Join(", ", all.Take(MostNamed)) + (all.Length > MostNamed ? $" and {all.Length - MostNamed} more" : "");
    }
}
