namespace Compat.Cli.Wording;

/// <summary>Says why an answer is as it is.</summary>
public static class ReasonWording
{
    /// <summary>The reason as a sentence.</summary>
    public static string Of(Reason reason, Question question, Names names)
    {
        var text = Core(reason, names);
        if (reason.Component is { } component) text = Cause(component, question, names) + ": " + text;
        if (Decides(reason, names) is { } member) text += $" It is not known which of several it is; {member} decides.";
        return char.ToUpperInvariant(text[0]) + text[1..];
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
        string Argument(int index) => index < reason.Arguments.Count ? reason.Arguments[index] : "";
        switch (reason.Code)
        {
            case ReasonCode.TooWet:
                return $"{Method(Argument(0))} is wetter than the part stands: the wettest is {Method(Argument(1))}.";
            case ReasonCode.NeverActs:
                return $"the part never stands {Argument(0).Replace('-', ' ')}, whatever the agent.";
            case ReasonCode.RuleForbids:
                return RuleForbids(Argument(0), Argument(2), names);
            case ReasonCode.NotListed:
                return $"its instructions (`{Argument(0)}`) allow only the agents they list, and they do not list this use of it.";
            case ReasonCode.ResidueStays:
                return $"its residue could not be taken off: the part stands no way to do what is asked ({Argument(0).Replace('-', ' ')}).";
            case ReasonCode.PartAllows:
                return names.FindRule(Argument(0)) is { } allowing
                    ? $"the rule `{allowing.Id}` allows it: {Lower(allowing.Why)}"
                    : $"the rule `{Argument(0)}` allows it.";
            case ReasonCode.MaterialsAllow:
                return "every material of the part stands it.";
            case ReasonCode.NoEvidenceOnMaterial:
                return $"no evidence on record speaks for {names.Material(Argument(0))}.";
            case ReasonCode.MaterialsNotKnown:
                return "the materials of the part are not fully known, and no rule speaks for the part itself.";
            case ReasonCode.DutyCannotBeMet:
                return $"there is no way on record to meet its duty on this part ({Argument(0).Replace('-', ' ')}).";
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
            ? $"the rule `{id}` on {names.Anything(rule.Target.ToString())} forbids it: {Lower(rule.Why)}"
            : $"the rule `{id}` on {names.Anything(target)} forbids it.";

    private static string Method(string word) => word.Length == 0 ? "nothing" : word;

    private static string Composition(string word) => word switch
    {
        "declared-hazardous-only" => "known only as far as a safety data sheet must declare it",
        "partial" => "known only in part",
        _ => "not fully known",
    };

    internal static string Lower(string sentence) =>
        sentence.Length > 1 && char.IsUpper(sentence[0]) && (char.IsLower(sentence[1]) || sentence[1] == ' ') ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;
}
