namespace Compat.Model;

/// <summary>What a product's label says it reaches or kills. A product with label claims is judged by these alone.</summary>
public sealed record LabelClaim
{
    /// <summary>Its id, unique within the product.</summary>
    public required LabelClaimId Id { get; init; }

    /// <summary>The exposures in which it holds; in place of a strength the dilution. A dilution or pH it does not name: as the product is used.</summary>
    public ClaimBox When { get; init; } = new();

    /// <summary>The level reached, never <see cref="Level.Cleaned"/>; null where only groups are claimed.</summary>
    public Level? Reaches { get; init; }

    /// <summary>What is killed; empty where only a level is claimed.</summary>
    public IReadOnlyList<OrganismTarget> Kills { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What is not killed, by the same label.</summary>
    public IReadOnlyList<OrganismTarget> DoesNotKill { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The part types it speaks of, with all below; empty where it is general.</summary>
    public IReadOnlyList<PartId> For { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What must be done first.</summary>
    public IReadOnlyList<ClaimNeed> Needs { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The soil in which it was shown.</summary>
    public IReadOnlyList<SoilKind> StandsSoil { get; init => field = Frozen.Of(value); } = [];

    /// <summary>
    /// The tests it rests on, as the label names them: it reaches no further than they do. A claim that names neither tests nor a registration is none.
    /// </summary>
    public IReadOnlyList<TestCode> ShownBy { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The registration it rests on, where the label shows no tests; null where it names them.</summary>
    public Registration? Registration { get; init; }

    /// <summary>Whether it rests on anything.</summary>
    internal bool IsShown => ShownBy.Count > 0 || Registration is not null;
}

/// <summary>The entry of a product in a register of an authority: it has seen tests, and which is not known.</summary>
/// <param name="Authority">The authority.</param>
/// <param name="Number">The number of the entry, as the label shows it.</param>
public sealed record Registration(string Authority, string Number);

/// <summary>How long a surface stays wet by a method, without wetting it again.</summary>
/// <param name="Method">The method.</param>
/// <param name="Time">The contact time in seconds: from the least to the most that was seen.</param>
public sealed record AchievedContactTime(ApplicationMethod Method, [property: Measured("ContactTime")] Interval Time);

/// <summary>How long a product is good, in seconds; a null is not stated.</summary>
public sealed record ProductLife
{
    /// <summary>After activation.</summary>
    [Measured("Life")]
    public decimal? Activated { get; init; }

    /// <summary>After dilution.</summary>
    [Measured("Life")]
    public decimal? Diluted { get; init; }

    /// <summary>After opening of the tub, bottle or packet.</summary>
    [Measured("Life")]
    public decimal? Opened { get; init; }

    /// <summary>Whether its container may be filled again.</summary>
    public bool MayBeRefilled { get; init; }
}

/// <summary>How a bath of a product is kept.</summary>
public sealed record ProductBath
{
    /// <summary>The ingredient whose strength is tested.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The least strength, reuse and test that the label gives.</summary>
    public required BathUse Use { get; init; }
}
