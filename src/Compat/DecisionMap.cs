namespace Compat;

/// <summary>The whole decision map of a part and an agent: boxes that do not overlap and together hold every exposure.</summary>
public sealed record DecisionMap
{
    /// <summary>The part, or null where materials were asked.</summary>
    public required PartId? Part { get; init; }

    /// <summary>The agent.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The cells, worst verdict first, then by method.</summary>
    public required IReadOnlyList<MapCell> Cells { get; init; }

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }
}

/// <summary>Exposures with one and the same decision.</summary>
public sealed record MapCell
{
    /// <summary>The verdict at every point inside: not allowed, not established or allowed.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The method.</summary>
    public required ApplicationMethod Method { get; init; }

    /// <summary>Strength in percent of the agent's basis; whole where it has none.</summary>
    public required Interval Strength { get; init; }

    /// <summary>Exposure time in seconds.</summary>
    public required Interval ExposureTime { get; init; }

    /// <summary>Temperature in °C.</summary>
    public required Interval Temperature { get; init; }

    /// <summary>pH.</summary>
    public required Interval Ph { get; init; }

    /// <summary>Uses.</summary>
    public required Interval Uses { get; init; }

    /// <summary>The rules that decide, by id; empty where a barrier or silence decides.</summary>
    public required IReadOnlyList<RuleId> DecidedBy { get; init; }

    /// <summary>The reason that decides.</summary>
    public required Answers.Reason Reason { get; init; }
}
