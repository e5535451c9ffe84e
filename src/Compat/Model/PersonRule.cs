namespace Compat.Model;

/// <summary>What a person rule says.</summary>
public enum PersonVerdict
{
    /// <summary>Not on anything that meets such a patient.</summary>
    NotAllowed,

    /// <summary>Only with the duties.</summary>
    WithDuties,
}

/// <summary>What the residue or vapour of an agent means for a kind of patient. It stands beside the rules on parts and nothing sets it aside.</summary>
[Record(Validation.RecordKind.PersonRule)]
public sealed record PersonRule
{
    /// <summary>Its id.</summary>
    public required PersonRuleId Id { get; init; }

    /// <summary>The agent, with all below it.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The kinds of patient; at least one, or none where it is <see cref="Occupied"/>: then it holds for all.</summary>
    public IReadOnlyList<PatientGroup> Patients { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether it speaks only of a device that is occupied: a patient in it or in reach.</summary>
    public bool Occupied { get; init; }

    /// <summary>The exposures it speaks of; an axis it does not name is unbounded in it.</summary>
    public ExposureBox When { get; init; } = ExposureBox.Unbounded;

    /// <summary>What it says.</summary>
    public required PersonVerdict Verdict { get; init; }

    /// <summary>The duties of a <see cref="PersonVerdict.WithDuties"/>.</summary>
    public IReadOnlyList<Duty> Duties { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The part types it holds for, with all below; empty where it holds for all.</summary>
    public IReadOnlyList<PartId> For { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The harm, in words.</summary>
    public required string Harm { get; init; }

    /// <summary>Why, in one sentence.</summary>
    [Remark]
    public required string Why { get; init; }

    /// <summary>Its sources; at least one.</summary>
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>When it was last looked at.</summary>
    [Remark]
    public required CalendarDate Reviewed { get; init; }
}
