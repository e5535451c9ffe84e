namespace Compat.Cli.Say;

/// <summary>Writes the letter that asks a maker for exactly the statement an answer lacks. It names no site, device, product or person: it describes
/// them.</summary>
internal sealed class LetterText(Page page, KnowledgeBase kb, Names names)
{
    public static bool IsNeeded(Answer answer) => answer.Verdict == Verdict.NotEstablished;

    public void Write(Answer answer)
    {
        var product = answer.Question.Product is { } id ? names.FindProduct(id.Value) : null;
        var part = answer.PartVerdict == Verdict.NotEstablished;
        var kill = answer.Kill is { Verdict: Verdict.NotEstablished };
        page.Line($"To the maker of {(part && product is not null ? "the equipment, and to the maker of the liquid" : part ? "the equipment" : "the liquid")}");
        page.Blank();
        page.Line("We ask for a written statement, dated, on the use described here. What we have does not say whether it is permitted, and we take silence "
            + "for no permission.");
        page.Heading("The part");
        foreach (var line in Part(answer.Question)) page.Item(line);
        page.Heading("The liquid");
        foreach (var line in product is null ? Agent(answer.Question) : Formulation(product)) page.Item(line);
        page.Heading("The use");
        foreach (var line in Use(answer.Question)) page.Item(line);
        page.Heading("What we ask");
        foreach (var line in (part ? OfPart(answer, product) : []).Concat(kill ? OfKill(answer) : [])) page.Item(line);
        page.Heading("Please say with it");
        page.Item("on what it rests: the test or standard, what was tested, and how often");
        page.Item("what it covers: serial numbers and edition of the instructions, or the date of the formulation");
    }

    private IEnumerable<string> Part(Question question)
    {
        var device = question.Device is { } id ? names.FindDevice(id.Value) : null;
        var part = device?.Parts.FirstOrDefault(one => one.Id == question.DevicePart);
        var types = part?.OneOfTypes ?? (question.Part is { } type ? [type] : []);
        if (types.Count > 0) yield return "kind: " + string.Join(", or ", types.Select(Name));
        var ofPart = part?.MaterialsKnown == true ? part.Materials : [.. part?.Materials ?? [], .. (types.Count == 1 ? MaterialsOf(types[0]) : null) ?? []];
        var slots = question.MaterialsKnown == true ? question.Materials : question.Materials.Concat(ofPart ?? [])
            .DistinctBy(slot => string.Join('|', slot.OneOf)).ToArray();
        yield return slots is { Count: > 0 } ? "materials, as far as we know: " + string.Join(
            "; ", slots.Select(slot => string.Join(" or ", slot.OneOf.Select(Name)))) : "materials: not known to us";
    }

    private IReadOnlyList<Model.MaterialSlot>? MaterialsOf(PartId type)
    {
        for (var record = Find(type); record is not null; record = record.Under is { } above ? Find(above) : null)
            if (record.Materials is { } slots) return slots;
        return null;
    }

    private IEnumerable<string> Agent(Question question)
    {
        yield return kb.Data.Agents.First(agent => agent.Id == question.Agent).Name;
        yield return "strength: " + (question.Strength is { } strength ? strength.ToString() : "for you to state");
        yield return "pH: " + (question.Ph is { } ph ? FigureWording.Ph(ph) : "for you to state");
    }

    private IEnumerable<string> Formulation(Product product)
    {
        foreach (var ingredient in product.Ingredients)
        {
            var name = ingredient.Agent is { } agent ? kb.Data.Agents.First(one => one.Id == agent).Name : ingredient.Unknown!;
            yield return $"{name}: {(ingredient.Strength is { } strength ? strength.ToString() : "no figure is declared")}";
        }

        if (product.Composition != Composition.Full) yield return "what else is in it is not declared to us";
        yield return "the figures are of " + product.StrengthOf switch
        {
            StrengthOf.WholeWipe => "the whole wipe, cloth included",
            StrengthOf.Concentrate =>
            "the concentrate",
            _ => "the liquid"
        };
        foreach (var ph in product.Ph) yield return $"pH {ph.Value} ({Words.Of(ph.Of).Spaced()})";
        if (product.CompositionDated is { } dated) yield return $"formulation of {dated}";
    }

    private static IEnumerable<string> Use(Question question)
    {
        const string Yours = "for you to state";
        yield return "method: " + (question.Method is { } method ? Words.Of(method).Spaced() : Yours);
        if (question.Dilution is { } dilution) yield return "dilution: " + FigureWording.Dilution(dilution);
        yield return "how long it stays on before it is taken off or gone: " + (question.ExposureTime is { } exposureTime
            ? FigureWording.ExposureTime(exposureTime) : Yours);
        yield return "temperature: " + (question.Temperature is { } temperature ? FigureWording.Temperature(temperature) : Yours);
        yield return "how often over the life of the part: " + (question.Uses is { } uses ? FigureWording.Number(uses) : Yours);
        if (question.Cloth is { } cloth) yield return "cloth: " + cloth;
    }

    private IEnumerable<string> OfPart(Answer answer, Product? product)
    {
        yield return "Does the part stand this liquid in this use? If so: up to which strength, by which methods, for how long, at which temperatures and "
            + "pH, how often, and what must follow (taking off, drying, inspection)?";
        var reasons = answer.Reasons.Prepend(answer.Decisive).ToArray();
        foreach (var material in reasons.Where(reason => reason.Code == ReasonCode.NoEvidenceOnMaterial).Select(reason => reason.Arguments[0]).Distinct())
            yield return $"In particular, does the {Name(new MaterialId(material))} of this part stand it?";
        if (reasons.Any(
            reason => reason.Code == ReasonCode.MaterialsNotKnown)) yield return "Of which materials is the part made, bonds, coatings and print included?";
        if (reasons.Any(reason => reason.Code is ReasonCode.ExposureTimeWithoutEnd or ReasonCode.DutyCannotBeMet)) yield return "How is the residue taken "
            + "off this part, or may it stay?";
        foreach (var unknown in reasons.Where(reason => reason.Code == ReasonCode.UnknownIngredient).Select(reason => reason.Arguments[0]).Distinct())
            yield return $"To the maker of the liquid: what is `{unknown}`, by CAS number?";
        if (product is { Composition: not Composition.Full }) yield return "To the maker of the liquid: its full composition with figures, or your own "
            + "statement that it may be used on this part.";
    }

    private IEnumerable<string> OfKill(Answer answer)
    {
        var need = answer.Kill!.Need;
        var wanted = (need.Level is { } level ? [Words.Of(level) + " level"] : Array.Empty<string>()).Concat(need.Against.Select(names.Target)).ToArray();
        yield return $"To the maker of the liquid: does it reach {string.Join(" and ", wanted)}, by this method, at which contact time, strength and "
            + "temperature, shown by which standard or registration?";
        if (need.Soil.Count > 0) yield return $"Does it do so where there is {string.Join(", ", need.Soil.Select(soil => Words.Of(soil)))}, or must the part "
            + "be clean?";
    }

    private Model.PartType? Find(PartId type) => kb.Data.Parts.FirstOrDefault(one => one.Id == type);

    private string Name(PartId type) => Find(type)?.Name ?? type.Value;

    private string Name(MaterialId material) => kb.Data.Materials.FirstOrDefault(one => one.Id == material)?.Name ?? material.Value;
}
