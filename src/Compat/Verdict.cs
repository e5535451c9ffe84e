namespace Compat;

/// <summary>What an answer says. The order is from worst to best.</summary>
public enum Verdict
{
    /// <summary>It may not be used.</summary>
    NotAllowed,

    /// <summary>No evidence on record covers it. This is not permission.</summary>
    NotEstablished,

    /// <summary>It may be used inside the boxes the answer lists.</summary>
    AllowedWithinLimits,

    /// <summary>It may be used as asked.</summary>
    Allowed,
}
