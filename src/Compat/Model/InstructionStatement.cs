namespace Compat.Model;

/// <summary>Words of an edition that permit or forbid, read by the table of instruction words.</summary>
public sealed record InstructionPhrase
{
    /// <summary>The words as they stand, one phrase of the table (letters of either case).</summary>
    public required string Words { get; init; }

    /// <summary>Whether the edition forbids what they name; else it permits it.</summary>
    public bool Forbids { get; init; }

    /// <summary>How it is to be done: further phrases of the table, such as 'wipe and let dry'.</summary>
    public IReadOnlyList<string> How { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The parts it speaks of; empty for all.</summary>
    public IReadOnlyList<DevicePartId> Parts { get; init => field = Frozen.Of(value); } = [];
}

/// <summary>A level that an edition says is reached on parts of its device.</summary>
public sealed record InstructedLevel
{
    /// <summary>The parts it speaks of; empty for all.</summary>
    public IReadOnlyList<DevicePartId> Parts { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The agent, with all below; exactly one of this and <see cref="Product"/>.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The product.</summary>
    public ProductId? Product { get; init; }

    /// <summary>The exposures at which it is reached: with a strength for an agent, a dilution for a product.</summary>
    public ClaimBox When { get; init; } = new();

    /// <summary>The level; null where only groups are named.</summary>
    [Key("level")]
    public Level? Reaches { get; init; }

    /// <summary>What is killed; empty where only a level is named.</summary>
    public IReadOnlyList<OrganismTarget> Kills { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What must be done first.</summary>
    public IReadOnlyList<ClaimNeed> Needs { get; init => field = Frozen.Of(value); } = [];
}

/// <summary>What a part is like once it has been taken apart.</summary>
public sealed record DismantledPart
{
    /// <summary>Its shape then.</summary>
    public required Model.Geometry Geometry { get; init; }

    /// <summary>The wettest method it stands then; null where that of the whole part holds.</summary>
    public ApplicationMethod? Wettest { get; init; }

    /// <summary>The edition of the instructions that says so; needed where it stands wetter than the type does.</summary>
    public EditionId? From { get; init; }

    /// <summary>How it comes apart, in words.</summary>
    public required string How { get; init; }
}
