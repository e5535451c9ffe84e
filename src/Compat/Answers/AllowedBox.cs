namespace Compat.Answers;

/// <summary>Exposures at which the answer is allowed: every axis written, assumed ranges too.</summary>
public sealed record AllowedBox
{
    /// <summary>The method.</summary>
    public required ApplicationMethod Method { get; init; }

    /// <summary>Strength in percent of the agent's basis; null for a product and for an agent without basis.</summary>
    public Interval? Strength { get; init; }

    /// <summary>Dilution as a share of volume, limits rounded inward to six digits; null for an agent.</summary>
    public Interval? Dilution { get; init; }

    /// <summary>Exposure time in seconds; no upper end: it may stay.</summary>
    public required Interval ExposureTime { get; init; }

    /// <summary>Temperature in °C.</summary>
    public required Interval Temperature { get; init; }

    /// <summary>pH.</summary>
    public required Interval Ph { get; init; }

    /// <summary>Uses from 1 on; no upper end: any number.</summary>
    public required Interval Uses { get; init; }

    /// <summary>What must accompany a use inside this box.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>The rules that decide in it.</summary>
    public IReadOnlyList<RuleId> DecidedBy { get; init; } = [];
}
