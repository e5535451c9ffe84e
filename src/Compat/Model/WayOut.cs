namespace Compat.Model;

/// <summary>What helps where a part cannot be cleaned as it needs.</summary>
public enum WayOut
{
    /// <summary>It comes apart, and what lies open then can be cleaned.</summary>
    TakeApart,

    /// <summary>It is covered.</summary>
    Cover,

    /// <summary>A spare part takes its place.</summary>
    Spare,

    /// <summary>A single-use part takes its place.</summary>
    SingleUse,

    /// <summary>Sterile services treat it.</summary>
    SterileServices,
}
