using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>Something in a readable file that the formatter does not lay out; the file is left as it is.</summary>
internal sealed class CannotFormatException(TextSpan span) : Exception
{
    /// <summary>Where it stands.</summary>
    public TextSpan Span { get; } = span;
}
