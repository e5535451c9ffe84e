namespace Compat.Space;

/// <summary>What a strength counts: which quantity of the agent in which quantity of the liquid.</summary>
public enum StrengthBasis
{
    /// <summary>Volume of agent in volume of liquid (% v/v) at 20 °C.</summary>
    VolumePerVolume,

    /// <summary>Mass of agent in mass of liquid (% w/w, ppm w/w).</summary>
    MassPerMass,

    /// <summary>Mass of agent in volume of liquid (% w/v: 1 % is 10 g/L; g/L, mg/L, ppm w/v).</summary>
    MassPerVolume,

    /// <summary>Mass of available chlorine in mass of liquid.</summary>
    AvailableChlorineMassPerMass,

    /// <summary>Mass of available chlorine in volume of liquid.</summary>
    AvailableChlorineMassPerVolume,
}
