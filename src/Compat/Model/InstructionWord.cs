namespace Compat.Model;

/// <summary>Agents and exposures that a word of instructions is read as.</summary>
public sealed record WordReading
{
    /// <summary>The agents; those of one reading have one basis where it names a strength.</summary>
    public IReadOnlyList<AgentId> Agents { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The exposures.</summary>
    public ExposureBox When { get; init; } = ExposureBox.Unbounded;
}

/// <summary>What a word of instructions says of how a thing is done.</summary>
public sealed record WordAct
{
    /// <summary>The methods; empty where it says nothing of them.</summary>
    public MethodSet Methods { get; init; }

    /// <summary>The exposure time in seconds; not named where it says nothing of it.</summary>
    public AxisLimit ExposureTime { get; init; }

    /// <summary>The duties it asks.</summary>
    public IReadOnlyList<Duty> Duties { get; init => field = Frozen.Of(value); } = [];
}

/// <summary>How words of instructions are read: a permission narrow, a prohibition wide.</summary>
[Record(Validation.RecordKind.InstructionWord)]
public sealed record InstructionWord
{
    /// <summary>Its id.</summary>
    public required InstructionWordId Id { get; init; }

    /// <summary>The phrases it stands for; at least one.</summary>
    public IReadOnlyList<string> Phrases { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What it is read as where instructions permit it; null where it permits nothing.</summary>
    public WordReading? Permits { get; init; }

    /// <summary>What it is read as where instructions forbid it; null where it forbids nothing.</summary>
    public WordReading? Forbids { get; init; }

    /// <summary>What it says of how; null where it says nothing of it.</summary>
    public WordAct? Act { get; init; }

    /// <summary>Whether it has no reading: it lists nothing and is shown.</summary>
    public bool ListsNothing { get; init; }

    /// <summary>Why it is read so.</summary>
    [Remark]
    public required string Reason { get; init; }

    /// <summary>Its sources.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];
}
