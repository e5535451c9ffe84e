namespace Compat.Model;

/// <summary>What happens where two meet.</summary>
public enum MixingEffect
{
    /// <summary>A toxic gas forms.</summary>
    ToxicGas,

    /// <summary>A toxic vapour forms.</summary>
    ToxicVapour,

    /// <summary>A toxic residue stays.</summary>
    ToxicResidue,

    /// <summary>A gas that burns forms.</summary>
    FlammableGas,

    /// <summary>It catches fire or feeds one.</summary>
    Fire,

    /// <summary>It explodes.</summary>
    Explosion,

    /// <summary>It becomes hot.</summary>
    Heat,

    /// <summary>It reacts violently.</summary>
    ViolentReaction,

    /// <summary>Gas builds up pressure.</summary>
    GasPressure,

    /// <summary>It polymerises.</summary>
    Polymerisation,

    /// <summary>What it touches corrodes.</summary>
    Corrosion,

    /// <summary>One takes the other's effect away.</summary>
    Inactivation,

    /// <summary>A solid falls out.</summary>
    Precipitate,

    /// <summary>Soil is fixed to the surface.</summary>
    FixesSoil,

    /// <summary>A stain forms.</summary>
    Staining,

    /// <summary>Something that can cause cancer forms.</summary>
    Carcinogen,
}

/// <summary>How much a mixing hazard forbids.</summary>
public enum MixingSeverity
{
    /// <summary>The two never meet.</summary>
    Never,

    /// <summary>The two are kept apart where it can be done.</summary>
    Avoid,

    /// <summary>Nobody is harmed, but the effect is lost.</summary>
    LosesActivity,
}

/// <summary>What lets the two follow each other safely.</summary>
public enum Separation
{
    /// <summary>Rinsing between them.</summary>
    Rinse,

    /// <summary>Drying between them.</summary>
    Dry,

    /// <summary>Ventilating between them.</summary>
    Ventilate,

    /// <summary>Wiping off with water between them.</summary>
    WipeOff,

    /// <summary>Another cloth.</summary>
    OtherCloth,

    /// <summary>Other gloves.</summary>
    OtherGloves,

    /// <summary>Another bucket or bottle.</summary>
    OtherContainer,

    /// <summary>Neutralising between them.</summary>
    Neutralise,

    /// <summary>Nothing that is on record.</summary>
    Nothing,
}

/// <summary>Why a hazard stands on one member of a class and not on the class.</summary>
public enum MemberGround
{
    /// <summary>What reacts is in this member and not in the others.</summary>
    OwnChemistry,

    /// <summary>Every other member has a hazard on record with the same partner, above it or of its own.</summary>
    EachRecorded,

    /// <summary>The source speaks of this member alone, and nothing is known of the others.</summary>
    SourceNamesIt,
}

/// <summary>What is on record where two meet, in one word.</summary>
public enum MixingOutcome
{
    /// <summary>A hazard.</summary>
    Hazard,

    /// <summary>No hazard, and of every pair in them it is on record that nothing harmful happens.</summary>
    Harmless,

    /// <summary>Neither: nobody knows.</summary>
    NothingOnRecord,
}
