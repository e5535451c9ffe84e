using Compat.Curation.Yaml;

namespace Compat.Curation.Diagnostics;

/// <summary>Gathers the diagnostics of one file, up to a limit.</summary>
internal sealed class DiagnosticList(SourceText source)
{
    /// <summary>How many diagnostics one file may have; after that, one more says so.</summary>
    public const int Limit = 100;

    private readonly List<Diagnostic> _found = [];

    /// <summary>The file.</summary>
    public SourceText Source { get; } = source;

    /// <summary>What was gathered.</summary>
    public IReadOnlyList<Diagnostic> Found => _found;

    /// <summary>Whether no more are taken.</summary>
    public bool IsFull => _found.Count > Limit;

    /// <summary>Adds a fault at a stretch of the file.</summary>
    public void Add(TextSpan span, string code, string message, string? help = null, RelatedPlace? related = null)
    {
        if (IsFull) return;
        _found.Add(_found.Count == Limit
            ? new("too-many-errors", $"more than {Limit} errors in this file; the rest is not shown", null, Source.Path, new(Source, span))
            : Diagnostic.At(new(Source, span), code, message, help, related));
    }

    /// <summary>Whether a fault was found within a stretch.</summary>
    public bool AnyWithin(TextSpan span) => _found.Any(one => one.Place is { } place && span.Holds(place.Span));

    /// <summary>A further place in this file.</summary>
    public RelatedPlace Related(string label, TextSpan span) => new(label, new(Source, span));
}
