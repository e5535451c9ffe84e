namespace Compat.Cli.Say;

/// <summary>Names verdicts and says what was judged.</summary>
internal static class VerdictWording
{
    public static string Heading(Verdict verdict) => verdict switch
    {
        Verdict.NotAllowed => "NOT ALLOWED",
        Verdict.NotEstablished => "NOT ESTABLISHED",
        Verdict.AllowedWithinLimits => "ALLOWED WITHIN LIMITS",
        _ => "ALLOWED",
    };

    public static string Scope(Answer answer)
    {
        if (answer.Kill is not null)
        {
            return answer.People is null
                ? "What the part stands and whether it kills were judged; what it means for people was not."
                : "What the part stands, whether it kills what is needed, and what it means for people were judged; the worst of the three is the answer.";
        }

        if (answer.Question.OnlyPart)
            return "Only the part was asked about. Whether it disinfects, and whether its residue harms, is another question.";
        return answer.Verdict is Verdict.Allowed or Verdict.AllowedWithinLimits
            ? "The part stands it. Whether it disinfects, and whether its residue harms, was not asked."
            : "Only the part was judged. Whether it disinfects, and whether its residue harms, was not asked.";
    }

    public static string ScopeOfParts(Question question) => question.JudgesKillAndPeople
        ? "Of every part that needs something: what it stands, whether what it needs is killed, and what it means for people. The worst of the three is the "
            + "part's answer."
        : "Only the parts were judged. Whether it disinfects, and whether its residue harms, is another question.";

    public static string Plain(Verdict verdict) => Space.Words.Of(verdict).Spaced();

    public static string Decisive(Answer answer, Names names)
    {
        var part = ReasonWording.Of(answer.Decisive, answer.Question, names);
        if (answer.Kill is not { } kill) return part;
        if (answer.Verdict >= Verdict.AllowedWithinLimits)
        {
            var kills = kill.Reasons is [{ Code: Compat.Answers.KillReasonCode.NothingToKill }] ? "nothing need be killed on it" : "what is needed is killed";
            return $"The part stands it, {kills}, and no rule on people forbids it.";
        }

        var deciders = Deciders.Of(answer);
        var also = deciders.Count == 1 ? "" : $" ({string.Join(" and ", deciders.Skip(1))} too)";
        return deciders[0] switch
        {
            "part" => $"The part decides{also}: {part}",
            "kill" => $"Kill decides{also}: {KillWording.Of(kill, answer, names)}",
            _ => $"People decide: {PeopleWording.Of(answer.People!, names)}",
        };
    }

    /// <summary>By whose evidence an 'allowed' holds; null for the other verdicts.</summary>
    public static string? JudgedBy(Answer answer)
    {
        if (answer.PartVerdict < Verdict.AllowedWithinLimits) return null;
        return answer.JudgedByPart
            ? "Judged by the part."
            : "Judged by its materials: weaker than evidence on the part itself.";
    }

    public static IReadOnlyList<string> Cautions { get; } = Enum.GetValues<Caution>().Select(Of).ToArray();

    public static string Of(Caution caution) => caution switch
    {
        Caution.InstructionsAndLabelFirst => "The device's own instructions for use and the product's label and safety data sheet come first.",
        Caution.PolicyAndPracticeDecide => "Local infection-prevention policy and licensed practice decide.",
        Caution.SpotTestIsNoProof => "A test on an inconspicuous spot is not proof.",
        Caution.NeverMix => "Never mix agents.",
        Caution.WearProtection => "Wear the protective equipment.",
        _ => "What is 'not established' is not permission.",
    };
}

/// <summary>Says why an answer is as it is.</summary>
internal static class ReasonWording
{
    public static string Of(Reason reason, Question question, Names names)
    {
        var text = Core(reason, names);
        if (reason.Component is { } component) text = Cause(component, question, names) + ": " + text;
        if (Decides(reason, names) is { } member) text += $" It is not known which of several it is; {member} decides.";
        return text.Capital();
    }

    /// <summary>The member of a one-of that decides; null where the reason would be the same for every member.</summary>
    /// <remarks>A reason names the whole choice that was made, its pieces joined by <c> + </c>; only those that the reason turns on are said.</remarks>
    internal static string? Decides(Reason reason, Names names)
    {
        var deciding = (reason.Member ?? "").Split(" + ").Where(piece => TurnsOn(reason, piece, names)).Select(names.Anything).ToArray();
        return deciding.Length == 0 ? null : string.Join(" and ", deciding);
    }

    private static bool TurnsOn(Reason reason, string piece, Names names) => reason.Code switch
    {
        _ when piece.Length == 0 => false,
        ReasonCode.RuleForbids => names.FindRule(reason.Arguments[0])?.Target is { } target
            && ((target.Material?.Value ?? target.Part?.Value) is not { } on || names.IsAtOrBelow(piece, on)),
        ReasonCode.NoEvidenceOnMaterial => piece == reason.Arguments[0],
        ReasonCode.TooWet or ReasonCode.NeverActs or ReasonCode.ResidueStays or ReasonCode.DutyCannotBeMet
            or ReasonCode.MaterialsNotKnown or ReasonCode.ExposureTimeWithoutEnd => names.IsPart(piece),
        _ => false,
    };

    /// <summary>Why a product is judged so: by which ingredient, or by which class its ingredients add up to.</summary>
    private static string Cause(string component, Question question, Names names)
    {
        var product = question.Product is { } id ? names.FindProduct(id.Value) : null;
        if (product is null || product.Ingredients.Any(part => part.Agent?.Value == component || part.Unknown == component))
            return "because of its " + names.Anything(component);
        var members = product.Ingredients.Where(part => names.IsAtOrBelow(part.Agent, component)).ToArray();
        if (members.Length == 0) return "because of its " + names.Anything(component);
        var list = string.Join(" and ", members.Select(part => part.Agent!.Value));
        return $"because its {list} are together {names.Anything(component)}{Sum(members, question)}";
    }

    private static string Sum(Model.Ingredient[] members, Question question)
    {
        if (members.Any(part => part.Strength?.Percent.Upper is null)) return "";
        var bases = members.Select(part => part.Strength!.Value.Unit.Basis).Distinct().ToArray();
        if (bases.Length != 1) return "";
        var share = question.Dilution?.Upper ?? 1m;
        var most = members.Sum(part => part.Strength!.Value.Percent.Upper!.Value) * share;
        return " " + FigureWording.Strength(Interval.AtMost(most), StrengthUnit.PercentOf(bases[0]));
    }

    private static string Core(Reason reason, Names names)
    {
        string Argument(int index) => reason.Arguments.At(index);
        switch (reason.Code)
        {
            case ReasonCode.TooWet:
                return $"{Method(Argument(0))} is wetter than the part stands: the wettest is {Method(Argument(1))}.";
            case ReasonCode.NeverActs:
                return $"the part never stands {Argument(0).Spaced()}, whatever the agent.";
            case ReasonCode.RuleForbids:
                return RuleForbids(Argument(0), Argument(2), names);
            case ReasonCode.NotListed:
                return $"its instructions (`{Argument(0)}`) allow only the agents they list, and they do not list this use of it.";
            case ReasonCode.ResidueStays:
                return $"its residue could not be taken off: the part stands no way to do what is asked ({Argument(0).Spaced()}).";
            case ReasonCode.PartAllows:
                return names.FindRule(Argument(0)) is { } allowing
                    ? $"the rule `{allowing.Id}` allows it: {allowing.Why.Lower()}"
                    : $"the rule `{Argument(0)}` allows it.";
            case ReasonCode.MaterialsAllow:
                return "every material of the part stands it.";
            case ReasonCode.NoEvidenceOnMaterial:
                return $"no evidence on record speaks for {names.Material(Argument(0))}.";
            case ReasonCode.MaterialsNotKnown:
                return "the materials of the part are not fully known, and no rule speaks for the part itself.";
            case ReasonCode.DutyCannotBeMet:
                return $"there is no way on record to meet its duty on this part ({Argument(0).Spaced()}).";
            case ReasonCode.UnknownIngredient:
                return $"no agent class covers the ingredient `{Argument(0)}`.";
            case ReasonCode.CompositionNotKnown:
                return $"the composition is {Composition(Argument(0))}, and there is no evidence on the product itself.";
            case ReasonCode.EditionSilent:
                return $"the instructions `{Argument(0)}` could cover this device and neither allow nor list it.";
            case ReasonCode.NoValue:
                return "what was asked has no value that could be judged.";
            default:
                return "nothing on record ends the time the agent stays on this part: the film stays, and no evidence covers an exposure time without end.";
        }
    }

    private static string RuleForbids(string id, string target, Names names) =>
        names.FindRule(id) is { } rule
            ? $"the rule `{id}` on {names.Anything(rule.Target.ToString())} forbids it: {rule.Why.Lower()}"
            : $"the rule `{id}` on {names.Anything(target)} forbids it.";

    private static string Method(string word) => word.Length == 0 ? "nothing" : word;

    private static string Composition(string word) => word switch
    {
        "declared-hazardous-only" => "known only as far as a safety data sheet must declare it",
        "partial" => "known only in part",
        _ => "not fully known",
    };
}

/// <summary>Says what keeps an 'allowed' within limits.</summary>
internal static class LimitWording
{
    public static string Of(Limit limit, Answer answer, Names names)
    {
        string Argument(int index) => limit.Arguments.At(index);
        return limit.Code switch
        {
            LimitCode.InstructionsNotSeen => $"the instructions of {names.Device(Argument(0))} were not seen",
            LimitCode.SealsNotJudged => "asked on materials alone: the part's seals and construction are not judged",
            LimitCode.AxisLeftOut => Taken(Argument(0), answer, names),
            LimitCode.SourceDoesNotSay => $"the source does not say the {Axis(Argument(0))} (rule `{Argument(2)}`): "
                + $"{Argument(1)}{(Argument(0) == "strength" ? " %" : "")} is taken, a convention",
            _ => "it rests on practice or on recalled sources alone",
        };
    }

    private static string Axis(string word) => word == "ph" ? "pH" : word;

    private static string Taken(string axis, Answer answer, Names names)
    {
        var taken = answer.Assumptions.FirstOrDefault(assumption => !assumption.Stated && Word(assumption) == axis);
        var text = taken is null ? null : ExposureWording.Of(taken, ExposureWording.Unit(answer.Question, names));
        return text ?? $"{Axis(axis)}: left out";
    }

    private static string Word(Assumption assumption) => assumption.Axis is { } axis ? Words.Of(axis) : "method";
}

/// <summary>Says what would establish an answer that is not established.</summary>
internal static class EstablishWording
{
    /// <summary>What to find out, each without a final stop; empty for the other verdicts.</summary>
    public static IReadOnlyList<string> Of(Answer answer, Names names)
    {
        if (answer.Verdict != Verdict.NotEstablished) return [];
        var list = new List<string>();
        if (answer.PartVerdict == Verdict.NotEstablished) list.AddRange(OfPart(answer, names));
        if (answer.Kill is { Verdict: Verdict.NotEstablished } kill) list.AddRange(kill.Reasons.SelectMany(reason => Of(reason, answer.Question, names)));
        return list.Distinct().ToArray();
    }

    /// <summary>What to ask for where the composition is not known in full.</summary>
    private static string[] OfComposition { get; } =
    [
        "its maker's written statement that this product may be used on this part or material: how long, how often, by which method",
        "or its full composition, every ingredient with its figure",
    ];

    private static List<string> OfPart(Answer answer, Names names)
    {
        var unit = ExposureWording.Unit(answer.Question, names);
        var list = new List<string>();
        foreach (var part in answer.WouldBeAllowed) list.Add(ExposureWording.WouldBeAllowed(part, unit));
        foreach (var reason in answer.Reasons.Prepend(answer.Decisive)) list.AddRange(Of(reason, names));
        if (answer.Question.Device is { } device && names.FindDevice(device.Value) is { Instructions.Count: 0 })
            list.Add("the device's own instructions for use: put what they say in a site file");
        if (answer.Question.Product is { } id && names.FindProduct(id.Value) is { Composition: not Model.Composition.Full })
            list.AddRange(OfComposition);
        if (list.Count == 0) list.Add("a test on the part, its maker's instructions, or a publication that covers this exposure");
        return list;
    }

    private static IEnumerable<string> Of(KillReason reason, Question question, Names names)
    {
        string Argument(int index) => reason.Arguments.At(index);
        var target = names.Target(Argument(0));
        var product = question.Product is { } id ? names.Product(id.Value) : null;
        yield return reason.Code switch
        {
            KillReasonCode.ContactNotKnown => "what touches the part (--touched-by), or the level it needs (--level)",
            KillReasonCode.HighNeedsMore => "the device's instructions, a guideline that names this kind of part, or a product whose label claims high level",
            KillReasonCode.SterileNeedsInstructions => "the device's instructions for sterilising it",
            KillReasonCode.MachineOnly => "a claim that holds by hand, or the device's instructions for that machine",
            KillReasonCode.WaterTooHard => "softer water, or a label that allows this hardness",
            KillReasonCode.OutsideClaims when KillWording.ByOtherMethods(Argument(1), question) =>
                $"a claim of {target} by this method, if the part stands no other; on record are {Argument(1)}",
            KillReasonCode.OutsideClaims =>
                $"strength, temperature and pH, stated, so that a claim on record covers them; or a claim of {target} at this exposure",
            KillReasonCode.NoClaim when product is null => $"a publication or the device's instructions: {target}, at which strength and contact time",
            KillReasonCode.NoClaim => $"a label claim of {product} for {target}, with its test standard or registration",
            _ => $"a label claim of {product} for what is needed, with its test standard or registration and contact time",
        };
    }

    private static IEnumerable<string> Of(Reason reason, Names names)
    {
        var argument = reason.Arguments.At(0);
        if (ReasonWording.Decides(reason, names) is { } member) yield return $"which material or part type it is: {member} decides here";
        switch (reason.Code)
        {
            case ReasonCode.NoEvidenceOnMaterial:
                yield return $"evidence on {names.Material(argument)}, or on the part itself: a test, its maker's instructions, or a publication";
                break;
            case ReasonCode.MaterialsNotKnown:
                yield return "the full list of its materials, bonds and coatings included, or evidence on the part itself";
                break;
            case ReasonCode.DutyCannotBeMet:
                yield return $"a way on record that the part stands ({argument.Spaced()}): its instructions may give one";
                break;
            case ReasonCode.UnknownIngredient:
                yield return $"what `{argument}` is, or evidence on the product itself";
                break;
            case ReasonCode.CompositionNotKnown:
                foreach (var statement in OfComposition) yield return statement;
                break;
            case ReasonCode.EditionSilent:
                yield return "which edition of the instructions covers this device: state its serial number";
                break;
            case ReasonCode.ExposureTimeWithoutEnd:
                yield return "a way on record to take it off this part, or evidence that it may stay";
                break;
        }
    }
}

/// <summary>Says the damage to expect, a rule and a source.</summary>
internal static class EvidenceWording
{
    public static string Of(Damage damage)
    {
        var text = Words.Of(damage.Mechanism).Spaced()
            + (damage.Onset == Onset.FirstUse ? ": the first use can do it" : ": cumulative, it adds up over uses")
            + (damage.Lasting ? ", and it lasts" : ", and it does not last")
            + ". It concerns " + Words.Of(damage.Consequence).Spaced();
        if (damage.LookFor is { } look) text += ". Look for: " + look;
        if (damage.WithdrawIf is { } withdraw) text += ". Withdraw the part if " + withdraw;
        return text;
    }

    /// <summary>A rule: what it says, how it is known, when it was last looked at, and why.</summary>
    public static string Of(Rule rule)
    {
        var known = rule.KnownBy is { } by ? ", known by " + Known(by) : "";
        var tested = rule.Tested is { } test ? $" of a {Words.Of(test.On)}{(test.Strained ? " under strain" : "")}" : "";
        return $"`{rule.Id}`: {(rule.Allows ? "allowed" : "not allowed")}{known}{tested}, reviewed {rule.Reviewed}. {rule.Why}";
    }

    /// <summary>A source: its kind, title, edition, place, and whether it was read.</summary>
    public static string Of(Source source)
    {
        var parts = new[] { source.Title, source.Publisher, source.Edition, source.Section, source.Address };
        return $"{Words.Of(source.Kind).Spaced()}: {string.Join(", ", parts.Where(part => part is not null))}"
            + (source.Kind == SourceKind.CommonPractice ? "" : source.Recalled ? " (recalled, not read)" : " (read)");
    }

    public static string Of(DataIdentity identity) =>
        $"{identity.Name}, version {identity.Version}, content {identity.Hash[..Math.Min(16, identity.Hash.Length)]}";

    private static string Known(KnownBy by) => by switch
    {
        KnownBy.Test => "a test",
        KnownBy.Instructions => "the device's instructions",
        KnownBy.Published => "a publication",
        _ => "practice",
    };
}
