using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Validation;

namespace Compat.Curation;

/// <summary>What was read from a data folder and site files.</summary>
/// <remarks>Where there are diagnostics, the records are incomplete and hold stand-ins: they are then only good for showing.</remarks>
public sealed record ReadResult
{
    /// <summary>The records of the data folder.</summary>
    public required KnowledgeData Data { get; init; }

    /// <summary>The sites, in the order they were named; one that could not be read is left out.</summary>
    public IReadOnlyList<Site> Sites { get; init; } = [];

    /// <summary>All that is wrong, by file, line and column; empty where nothing is.</summary>
    public required IReadOnlyList<Diagnostic> Diagnostics { get; init; }

    /// <summary>Where each record stands.</summary>
    public required SourceMap Places { get; init; }

    /// <summary>The knowledge base with the sites laid over it; null where anything is wrong or only reading was asked for.</summary>
    public KnowledgeBase? KnowledgeBase { get; init; }

    /// <summary>Whether nothing is wrong.</summary>
    public bool IsClean => Diagnostics.Count == 0;

    /// <summary>The kinds of which some record is missing from the lists, so that references to them cannot be judged.</summary>
    internal IReadOnlySet<RecordKind> Gaps { get; init; } = new HashSet<RecordKind>();
}
