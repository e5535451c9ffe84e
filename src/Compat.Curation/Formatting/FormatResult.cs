using Compat.Curation.Diagnostics;

namespace Compat.Curation.Formatting;

/// <summary>What formatting gave.</summary>
/// <param name="Files">The files that were read without fault, in the order of their names.</param>
/// <param name="Diagnostics">Why the others are left as they are; empty where there are no others.</param>
public sealed record FormatResult(IReadOnlyList<FormattedFile> Files, IReadOnlyList<Diagnostic> Diagnostics);
