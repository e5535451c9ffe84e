namespace Compat.Deciding;

/// <summary>What is decided at every point of a leaf, for the worst variant.</summary>
internal sealed record Decision
{
    /// <summary>Not allowed, not established or allowed; never within limits.</summary>
    public required Verdict Verdict { get; init; }

    public required IReadOnlyList<Reason> Reasons { get; init; }

    public required PartVariant Variant { get; init; }

    /// <summary>Rules that decide: the live 'not allowed', or the live 'allowed' of the deciding voices.</summary>
    public IReadOnlyList<CompiledRule> Deciding { get; init; } = [];

    /// <summary>Other live 'allowed' rules of the part, which permit nothing here but whose duties join.</summary>
    public IReadOnlyList<CompiledRule> Accompanying { get; init; } = [];

    public IReadOnlyList<CompiledRule> SetAside { get; init; } = [];

    /// <summary>The variants that share an 'allowed'; their duties join.</summary>
    public IReadOnlyList<PartVariant> Variants { get; init; } = [];

    public bool ByPart { get; init; }

    public bool WellFounded { get; init; }
}
