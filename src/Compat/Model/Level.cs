namespace Compat.Model;

/// <summary>How far a part is made free of organisms; each level is above the one before.</summary>
public enum Level
{
    /// <summary>Soil and most organisms are taken off; nothing is claimed to be killed.</summary>
    Cleaned,

    /// <summary>Low-level disinfection.</summary>
    Low,

    /// <summary>Intermediate-level disinfection.</summary>
    Intermediate,

    /// <summary>High-level disinfection.</summary>
    High,

    /// <summary>Sterile.</summary>
    Sterile,
}
