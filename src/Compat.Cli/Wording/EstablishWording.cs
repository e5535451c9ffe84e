namespace Compat.Cli.Wording;

/// <summary>Says what would establish an answer that is not established.</summary>
public static class EstablishWording
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
        string Argument(int index) => index < reason.Arguments.Count ? reason.Arguments[index] : "";
        var target = names.Target(Argument(0));
        var product = question.Product is { } id ? names.Product(id.Value) : null;
        yield return reason.Code switch
        {
            KillReasonCode.ContactNotKnown => "what touches the part (--touched-by), or the level it needs (--level)",
            KillReasonCode.HighNeedsMore => "the device's instructions, a guideline that names this kind of part, or a product whose label claims high level",
            KillReasonCode.SterileNeedsInstructions => "the device's instructions for sterilising it",
            KillReasonCode.MachineOnly => "a claim that holds by hand, or the device's instructions for that machine",
            KillReasonCode.WaterTooHard => "softer water, or a label that allows this hardness",
            KillReasonCode.OutsideClaims when KillWording.ByOtherMethods(Argument(1), question) => $"a claim of {target} by this method, if the part stands no other; on record are {Argument(1)}",
            KillReasonCode.OutsideClaims => $"strength, temperature and pH, stated, so that a claim on record covers them; or a claim of {target} at this exposure",
            KillReasonCode.NoClaim when product is null => $"a publication or the device's instructions: {target}, at which strength and contact time",
            KillReasonCode.NoClaim => $"a label claim of {product} for {target}, with its test standard or registration",
            _ => $"a label claim of {product} for what is needed, with its test standard or registration and contact time",
        };
    }

    private static IEnumerable<string> Of(Reason reason, Names names)
    {
        var argument = reason.Arguments.Count > 0 ? reason.Arguments[0] : "";
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
                yield return $"a way on record that the part stands ({argument.Replace('-', ' ')}): its instructions may give one";
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
