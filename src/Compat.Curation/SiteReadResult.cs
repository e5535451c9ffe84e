using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Curation;

/// <summary>What was read from a site file.</summary>
public sealed record SiteReadResult
{
    /// <summary>The site; null where it could not be read. Where there are diagnostics it is incomplete.</summary>
    public Site? Site { get; init; }

    /// <summary>All that is wrong, by line and column; empty where nothing is.</summary>
    public required IReadOnlyList<Diagnostic> Diagnostics { get; init; }

    /// <summary>Where each record stands.</summary>
    public required SourceMap Places { get; init; }

    /// <summary>Whether nothing is wrong.</summary>
    public bool IsClean => Diagnostics.Count == 0;

    internal bool HasGaps { get; init; }
}
