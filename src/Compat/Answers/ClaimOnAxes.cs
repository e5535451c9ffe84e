namespace Compat.Answers;

/// <summary>A claim with every axis filled: the exposures in which it holds.</summary>
internal sealed record ClaimOnAxes
{
    public required KillClaim Claim { get; init; }

    /// <summary>The exposures, and the contact times, at which it holds.</summary>
    public required Box<Stretch> Box { get; init; }

    public MethodSet Methods => Box.Methods;

    /// <summary>The part types it speaks of; empty for all.</summary>
    public IReadOnlyList<PartId> For { get; init; } = [];

    /// <summary>Of instructions: the edition that must speak.</summary>
    public EditionId? Edition { get; init; }

    /// <summary>Whether a published claim may count for a high level: a guideline or standard that names the kind of part.</summary>
    public bool OfGuideline { get; init; }

    public bool SpeaksOf(CompiledBase kb, PartVariant variant) =>
        Edition is { } edition ? variant.Editions.Any(e => e.Id == edition)
        : Reach.IsFor(kb, For, variant.Part);
}

/// <summary>Claims that may be used together: those of the product or device, and of one ingredient. Claims of two ingredients never add up.</summary>
/// <param name="Component">The ingredient or agent whose strength its published claims are held against; null where there is none.</param>
/// <param name="Claims">The claims.</param>
internal sealed record ClaimSet(Component? Component, IReadOnlyList<ClaimOnAxes> Claims);
