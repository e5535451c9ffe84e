namespace Compat.Answers;

/// <summary>What keeps an 'allowed' within limits.</summary>
public enum LimitCode
{
    /// <summary>The instructions of the device were not seen. Arguments: device.</summary>
    InstructionsNotSeen,

    /// <summary>Asked on materials alone: seals and construction are not judged. Arguments: none.</summary>
    SealsNotJudged,

    /// <summary>An axis the question left out. Arguments: axis, what was assumed or 'free'.</summary>
    AxisLeftOut,

    /// <summary>The source does not say the axis. Arguments: axis, what the convention fills in, rule.</summary>
    SourceDoesNotSay,

    /// <summary>Rests on practice or recalled sources alone. Arguments: none.</summary>
    WeakEvidence,
}

/// <summary>One limit with its arguments.</summary>
/// <param name="Code">Which.</param>
/// <param name="Arguments">What the code's description lists.</param>
public sealed record Limit(LimitCode Code, IReadOnlyList<string> Arguments);
