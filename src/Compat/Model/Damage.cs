namespace Compat.Model;

/// <summary>How an agent harms a part: a closed list.</summary>
public enum Mechanism
{
    /// <summary>Cracks under stress in an agent that the material stands unstrained.</summary>
    StressCracking,

    /// <summary>Fine cracks at the surface.</summary>
    Crazing,

    /// <summary>Takes the agent up and grows.</summary>
    Swelling,

    /// <summary>Becomes soft or dissolves.</summary>
    Softening,

    /// <summary>Loses its toughness.</summary>
    Embrittlement,

    /// <summary>Becomes hard as plasticiser is drawn out.</summary>
    PlasticiserLoss,

    /// <summary>Its chains are cut by water.</summary>
    Hydrolysis,

    /// <summary>Is oxidised.</summary>
    Oxidation,

    /// <summary>Changes colour.</summary>
    Discoloration,

    /// <summary>Takes a stain.</summary>
    Staining,

    /// <summary>Becomes sticky.</summary>
    Stickiness,

    /// <summary>A coating becomes milky or lifts.</summary>
    CoatingClouding,

    /// <summary>A coating comes off.</summary>
    CoatingLoss,

    /// <summary>A print or legend wears off.</summary>
    LegendWear,

    /// <summary>A bond or seal lets go.</summary>
    BondFailure,

    /// <summary>Corrodes evenly.</summary>
    Corrosion,

    /// <summary>Corrodes in pits or crevices.</summary>
    Pitting,

    /// <summary>A metal cracks under stress in an agent.</summary>
    MetalStressCracking,

    /// <summary>Tarnishes.</summary>
    Tarnish,

    /// <summary>A glass or oxide surface is etched or dissolved.</summary>
    Etching,

    /// <summary>Is scratched or worn.</summary>
    Abrasion,

    /// <summary>Liquid enters.</summary>
    LiquidEntry,

    /// <summary>A contact bridges, leaks current or corrodes.</summary>
    ContactFault,

    /// <summary>A measurement drifts or fails.</summary>
    MeasurementFault,

    /// <summary>A deposit stays.</summary>
    Deposit,

    /// <summary>Catches fire or feeds one.</summary>
    Fire,

    /// <summary>Warps or melts by heat.</summary>
    HeatDistortion,
}

/// <summary>When damage begins.</summary>
public enum Onset
{
    /// <summary>The first use can do it.</summary>
    FirstUse,

    /// <summary>It adds up over uses.</summary>
    Cumulative,
}

/// <summary>What the damage means.</summary>
public enum Consequence
{
    /// <summary>It looks worse.</summary>
    Looks,

    /// <summary>It can no longer be read.</summary>
    Legibility,

    /// <summary>It wears out early.</summary>
    Wear,

    /// <summary>It is no longer tight against liquid.</summary>
    LiquidTightness,

    /// <summary>It is no longer electrically safe.</summary>
    ElectricalSafety,

    /// <summary>It measures or images wrongly.</summary>
    Measurement,

    /// <summary>It can harm the patient.</summary>
    Patient,
}

/// <summary>The damage to expect.</summary>
public sealed record Damage
{
    /// <summary>How.</summary>
    public required Mechanism Mechanism { get; init; }

    /// <summary>When it begins.</summary>
    public required Onset Onset { get; init; }

    /// <summary>Whether it stays.</summary>
    public required bool Lasting { get; init; }

    /// <summary>What it means.</summary>
    public required Consequence Consequence { get; init; }

    /// <summary>What to look for.</summary>
    public string? LookFor { get; init; }

    /// <summary>When to withdraw the part.</summary>
    public string? WithdrawIf { get; init; }
}
