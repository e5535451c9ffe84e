namespace Compat.Model;

/// <summary>A place with a shelf of products, devices and rules of its own: an overlay on a knowledge base.</summary>
[Record(Validation.RecordKind.Site)]
public sealed record Site
{
    /// <summary>Its id.</summary>
    public required SiteId Id { get; init; }

    /// <summary>What it is called.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>The sources its rules cite.</summary>
    [Unordered]
    public IReadOnlyList<Source> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What is at hand there.</summary>
    public SiteConditions Here { get; init; } = new();

    /// <summary>The levels it has decided.</summary>
    [Unordered]
    public IReadOnlyList<LevelDecision> Levels { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Its products.</summary>
    [Unordered]
    public IReadOnlyList<Product> Products { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Its devices.</summary>
    [Unordered]
    public IReadOnlyList<Device> Devices { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Its rules, those of its devices' instructions included.</summary>
    [Unordered]
    public IReadOnlyList<Rule> Rules { get; init => field = Frozen.Of(value); } = [];
}
