namespace Compat.Answers;

/// <summary>Where a claim stands.</summary>
public enum ClaimOrigin
{
    /// <summary>In a publication on the bare agent.</summary>
    Published,

    /// <summary>On the product's label.</summary>
    Label,

    /// <summary>In the device's instructions.</summary>
    Instructions,
}

/// <summary>A claim as it was used to judge whether what is needed is killed.</summary>
public sealed record KillClaim
{
    /// <summary>Where it stands.</summary>
    public required ClaimOrigin Origin { get; init; }

    /// <summary>Its id: that of the claim; of a label <c>product: claim</c>; of instructions <c>device: edition</c>.</summary>
    public required string Id { get; init; }

    /// <summary>The level reached; null where only groups are claimed.</summary>
    public Level? Reaches { get; init; }

    /// <summary>What is killed.</summary>
    public IReadOnlyList<OrganismTarget> Kills { get; init; } = [];

    /// <summary>What is not killed.</summary>
    public IReadOnlyList<OrganismTarget> DoesNotKill { get; init; } = [];

    /// <summary>Whether it names the kind of part.</summary>
    public bool NamesThePart { get; init; }

    /// <summary>What must be done first.</summary>
    public IReadOnlyList<ClaimNeed> Needs { get; init; } = [];

    /// <summary>The tests that a label's claim rests on; empty of a registration and of every other claim.</summary>
    public IReadOnlyList<TestStandard> ShownBy { get; init; } = [];

    /// <summary>The registration that a label's claim rests on; null where it names tests, and of every other claim.</summary>
    public Model.Registration? Registration { get; init; }

    /// <summary>Its sources.</summary>
    public IReadOnlyList<SourceId> Sources { get; init; } = [];

    /// <summary>Whether it rests on a label, instructions or a publication that was read.</summary>
    public bool WellFounded { get; init; }
}
