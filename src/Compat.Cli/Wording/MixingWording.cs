namespace Compat.Cli.Wording;

/// <summary>Words for what happens where two meet.</summary>
public static class MixingWording
{
    /// <summary>What harms most people soonest first.</summary>
    private static readonly MixingEffect[] WorstFirst =
    [
        MixingEffect.ToxicGas, MixingEffect.Explosion, MixingEffect.Fire, MixingEffect.ToxicVapour, MixingEffect.ViolentReaction, MixingEffect.FlammableGas, MixingEffect.GasPressure,
        MixingEffect.Heat, MixingEffect.Carcinogen, MixingEffect.ToxicResidue, MixingEffect.Polymerisation, MixingEffect.Corrosion, MixingEffect.FixesSoil, MixingEffect.Inactivation,
    ];

    /// <summary>How bad it is.</summary>
    public static string Of(MixingSeverity severity) => severity switch
    {
        MixingSeverity.Never => "Never together",
        MixingSeverity.Avoid => "To be kept apart",
        _ => "The effect is lost",
    };

    /// <summary>What happens.</summary>
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

    /// <summary>The worst of what happens.</summary>
    /// <param name="effects">At least one.</param>
    public static string Worst(IEnumerable<MixingEffect> effects) => Of(effects.OrderBy(effect => (uint)Array.IndexOf(WorstFirst, effect)).First());

    /// <summary>What separates the two.</summary>
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

    /// <summary>The other one of a record.</summary>
    public static string Other(MixingHazard hazard) => hazard.WithAgent?.Value ?? hazard.WithMaterial?.Value ?? Words.Of(hazard.WithSoil!.Value);

    /// <summary>The other one of a record.</summary>
    public static string Other(HarmlessMeeting meeting) => meeting.WithAgent?.Value ?? meeting.WithMaterial?.Value ?? Words.Of(meeting.WithSoil!.Value);

    /// <summary>The strengths at which a hazard holds; empty where it holds at every strength.</summary>
    public static string Strengths(MixingHazard hazard, Names names) => string.Join(
        " and ",
        new[] { (Of: hazard.Agent, At: hazard.Strength), (Of: hazard.WithAgent!, At: hazard.WithStrength) }.Where(one => one.At is not null)
            .Select(one => $"{FigureWording.Strength(one.At!.Value, names.Unit(one.Of))} of {names.Anything(one.Of.Value)}"));
}
