namespace Compat.Knowledge;

/// <summary>The records of a knowledge base before they are checked and compiled. The order of the lists means nothing.</summary>
public sealed record KnowledgeData
{
    /// <summary>What names this state of the data, for people: a date or version.</summary>
    public string Version { get; init; } = "unversioned";

    /// <summary>Materials.</summary>
    public IReadOnlyList<Material> Materials { get; init; } = [];

    /// <summary>Part types.</summary>
    public IReadOnlyList<PartType> Parts { get; init; } = [];

    /// <summary>Agent classes.</summary>
    public IReadOnlyList<AgentClass> Agents { get; init; } = [];

    /// <summary>Sources.</summary>
    public IReadOnlyList<Source> Sources { get; init; } = [];

    /// <summary>Rules.</summary>
    public IReadOnlyList<Rule> Rules { get; init; } = [];

    /// <summary>Conventions.</summary>
    public IReadOnlyList<Convention> Conventions { get; init; } = [];

    /// <summary>Standing rules.</summary>
    public IReadOnlyList<StandingRule> StandingRules { get; init; } = [];
}
