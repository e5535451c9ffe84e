namespace Compat.Cli.Say;

/// <summary>Writes for people what is on record where two meet.</summary>
internal sealed class MixingText(Page page, Names names)
{
    public void Write(MixingAnswer answer)
    {
        var (first, other) = (names.Anything(answer.First.ToString()), names.Anything(answer.Other.ToString()));
        page.Line(answer.Outcome switch
        {
            MixingOutcome.Hazard => $"{MixingWording.Of(answer.Worst!.Value)}: {first} and {other}.",
            MixingOutcome.Harmless =>
                $"{first} and {other}: no hazard is on record, and it is on record that nothing harmful happens. Mix nothing that no label tells you to mix.",
            _ => $"Nothing is on record of {first} and {other}{(answer.AtOtherStrengths.Count > 0 ? " at these strengths" : "")}: nobody knows. That is not "
                + "'safe': nothing is mixed that no label tells to mix.",
        });
        foreach (var found in answer.Hazards) Hazard(found);
        page.Section("Only at other strengths than these", answer.AtOtherStrengths.Select(
            found => $"{MixingWording.Strengths(found.Hazard, names)}: {found.Hazard.Why}"));
        page.Section("On record as harmless", answer.Harmless.Select(meeting => $"{names.Anything(meeting.Agent.Value)} with "
            + $"{names.Anything(MixingWording.Other(meeting))}: {meeting.Why}"));
        foreach (var product in answer.NotFullyKnown) page.Line(
            $"Not all that is in {names.Product(product.Value)} is on record: what is not declared may meet the other too.");
        var sources = answer.Hazards.Concat(answer.AtOtherStrengths).SelectMany(found => found.Hazard.Sources)
            .Concat(answer.Harmless.SelectMany(meeting => meeting.Sources)).Distinct().Select(names.FindSource).Where(source => source is not null).ToArray();
        page.Section("Sources", sources.Select(source => EvidenceWording.Of(source!)));
        page.Cautions();
        page.Data(answer.Identity);
    }

    private void Hazard(FoundHazard found)
    {
        var hazard = found.Hazard;
        page.Heading($"{names.Anything(found.First)} with {names.Anything(found.Other)}{(found.OnlySome ? ", some of its kind" : "")}: "
            + $"{MixingWording.Of(hazard.Severity).ToLowerInvariant()}");
        page.Line(hazard.Why, 2);
        if (found.OnlySome) page.Line($"On record for: {names.Anything(hazard.Agent.Value)} and {names.Anything(MixingWording.Other(hazard))}.", 2, 4);
        if (MixingWording.Strengths(hazard, names) is { Length: > 0 } strengths) page.Line($"Only at: {strengths}.", 2, 4);
        if (hazard.OnlyWhere is { } condition) page.Line($"Only where: {condition}.", 2, 4);
        page.Line($"What happens: {string.Join(", ", hazard.Effects.Select(MixingWording.Of))}.", 2, 4);
        if (hazard.Forms.Count > 0) page.Line($"What forms: {string.Join(", ", hazard.Forms)}.", 2, 4);
        var separated = hazard.SeparatedBy.Count == 0 ? "nothing is on record" : string.Join(", ", hazard.SeparatedBy.Select(MixingWording.Of));
        page.Line($"What separates them: {separated}.{(hazard.How is { } how ? " " + how : "")}", 2, 4);
    }
}

/// <summary>Words for what happens where two meet.</summary>
internal static class MixingWording
{
    private static readonly MixingEffect[] WorstFirst =
    [
        MixingEffect.ToxicGas, MixingEffect.Explosion, MixingEffect.Fire, MixingEffect.ToxicVapour, MixingEffect.ViolentReaction, MixingEffect.FlammableGas,
            MixingEffect.GasPressure,
        MixingEffect.Heat, MixingEffect.Carcinogen, MixingEffect.ToxicResidue, MixingEffect.Polymerisation, MixingEffect.Corrosion, MixingEffect.FixesSoil,
            MixingEffect.Inactivation,
    ];

    public static string Of(MixingSeverity severity) => severity switch
    {
        MixingSeverity.Never => "Never together",
        MixingSeverity.Avoid => "To be kept apart",
        _ => "The effect is lost",
    };

    public static string Of(MixingEffect effect) => effect switch
    {
        MixingEffect.ToxicGas => "a toxic gas forms",
        MixingEffect.ToxicVapour => "a toxic vapour forms",
        MixingEffect.ToxicResidue => "a toxic residue stays",
        MixingEffect.FlammableGas => "a gas that burns forms",
        MixingEffect.Fire => "it can catch fire",
        MixingEffect.Explosion => "it can explode",
        MixingEffect.Heat => "it becomes hot",
        MixingEffect.ViolentReaction => "it reacts violently",
        MixingEffect.GasPressure => "gas builds up pressure",
        MixingEffect.Polymerisation => "it sets to a solid",
        MixingEffect.Corrosion => "what it touches corrodes",
        MixingEffect.Inactivation => "one takes the other's effect away",
        MixingEffect.Precipitate => "a solid falls out",
        MixingEffect.FixesSoil => "soil is fixed to the surface",
        MixingEffect.Staining => "a stain forms",
        _ => "something that can cause cancer forms",
    };

    public static string Worst(IEnumerable<MixingEffect> effects) => Of(effects.OrderBy(effect => (uint)Array.IndexOf(WorstFirst, effect)).First());

    public static string Of(Separation separation) => separation switch
    {
        Separation.Rinse => "rinsing between them",
        Separation.Dry => "drying between them",
        Separation.Ventilate => "airing between them",
        Separation.WipeOff => "wiping off with water between them",
        Separation.OtherCloth => "another cloth",
        Separation.OtherGloves => "other gloves",
        Separation.OtherContainer => "another bucket or bottle",
        Separation.Neutralise => "neutralising between them",
        _ => "nothing that is on record",
    };

    public static string Other(MixingHazard hazard) => hazard.WithAgent?.Value ?? hazard.WithMaterial?.Value ?? Words.Of(hazard.WithSoil!.Value);

    public static string Other(HarmlessMeeting meeting) => meeting.WithAgent?.Value ?? meeting.WithMaterial?.Value ?? Words.Of(meeting.WithSoil!.Value);

    /// <summary>The strengths at which a hazard holds; empty where it holds at every strength.</summary>
    public static string Strengths(MixingHazard hazard, Names names) => string.Join(
        " and ",
        new[] { (Of: hazard.Agent, At: hazard.Strength), (Of: hazard.WithAgent!, At: hazard.WithStrength) }.Where(one => one.At is not null)
            .Select(one => $"{FigureWording.Strength(one.At!.Value, names.Unit(one.Of))} of {names.Anything(one.Of.Value)}"));
}
