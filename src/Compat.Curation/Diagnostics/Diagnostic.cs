using Compat.Curation.Yaml;

namespace Compat.Curation.Diagnostics;

/// <summary>A place in a file.</summary>
/// <param name="Source">The file.</param>
/// <param name="Span">The stretch of it.</param>
public sealed record SourcePlace(SourceText Source, TextSpan Span)
{
    /// <summary>Line and column where it starts.</summary>
    public LinePosition Position => Source.Lines.At(Span.Start);
}

/// <summary>A further place that a diagnostic speaks of.</summary>
/// <param name="Label">What is there, in a few words.</param>
/// <param name="Place">The place.</param>
public sealed record RelatedPlace(string Label, SourcePlace Place);

/// <summary>One thing that is wrong in a file or folder.</summary>
/// <param name="Code">A stable name of the kind of fault, in kebab-case.</param>
/// <param name="Message">What is wrong: lower case, no final stop, text of the file in backticks.</param>
/// <param name="Help">What to do about it; null where there is nothing to add.</param>
/// <param name="File">The name of the file or folder.</param>
/// <param name="Place">The place in the file; null where the fault is the file as a whole.</param>
/// <param name="Related">A further place; null where there is none.</param>
public sealed record Diagnostic(string Code, string Message, string? Help, string File, SourcePlace? Place, RelatedPlace? Related = null)
    : IComparable<Diagnostic>
{
    /// <summary>Makes a diagnostic at a place.</summary>
    public static Diagnostic At(SourcePlace place, string code, string message, string? help = null, RelatedPlace? related = null) =>
        new(code, message, help, place.Source.Path, place, related);

    /// <summary>Orders by file, place and code, so that one set of files always gives one report.</summary>
    public int CompareTo(Diagnostic? other)
    {
        if (other is null) return 1;
        var order = string.CompareOrdinal(File, other.File);
        if (order == 0) order = (Place?.Span.Start ?? -1).CompareTo(other.Place?.Span.Start ?? -1);
        if (order == 0) order = string.CompareOrdinal(Code, other.Code);
        return order == 0 ? string.CompareOrdinal(Message, other.Message) : order;
    }

    /// <summary>The diagnostic in one line.</summary>
    public override string ToString() => DiagnosticText.Heading(this);
}
