namespace Compat.Space;

/// <summary>How an agent is brought onto a part. The members up to <see cref="Immerse"/> form a ladder of wetness, each wetter than the one before.</summary>
public enum ApplicationMethod
{
    /// <summary>A dry cloth: below the ladder; it carries no agent.</summary>
    DryWipe = 0,

    /// <summary>No drop can be squeezed out of the cloth and the film on the part does not run.</summary>
    DampWipe = 1,

    /// <summary>The part is left visibly wet; nothing runs off.</summary>
    WetWipe = 2,

    /// <summary>Droplets on the part itself.</summary>
    Spray = 3,

    /// <summary>Liquid runs over the part.</summary>
    Rinse = 4,

    /// <summary>The part lies in the liquid.</summary>
    Immerse = 5,

    /// <summary>Gas, vapour, ultraviolet light or steam in a chamber: outside the ladder.</summary>
    Chamber = 6,
}
