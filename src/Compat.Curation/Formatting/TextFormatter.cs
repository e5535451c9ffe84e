using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>
/// Brings one readable file into the canonical form. Every step changes stretches of the text and reads it anew; nothing is written out of records.
/// </summary>
internal static class TextFormatter
{
    /// <summary>The text in canonical form; null where it is left as it is, with the reason.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="source">The text, which is read without fault.</param>
    /// <param name="modeline">The first line to put in where the file names no schema; null where it is not known.</param>
    /// <param name="faults">Where the reason goes.</param>
    public static string? Run(FileKind kind, SourceText source, string? modeline, List<Diagnostic> faults)
    {
        var shape = FileSchema.Of(kind).Shape;
        var at = source;
        try
        {
            var before = Tree(source);
            at = new(source.Path, HeadPass.LineEnds(source.Text));
            at = new(source.Path, HeadPass.Run(at.Text, Tree(at).Span, modeline));
            at = new(source.Path, LayoutPass.Run(at, Tree(at), shape, out var comments));
            at = new(source.Path, KeyOrderPass.Run(at, Tree(at), shape));
            at = new(source.Path, LayoutPass.Run(at, Tree(at), shape, out var kept));
            if (SameMeaning.Of(before, Tree(at), shape)
                && comments.Order(StringComparer.Ordinal).SequenceEqual(kept.Order(StringComparer.Ordinal))
                && Reads(kind, at))
            {
                return at.Text;
            }

            faults.Add(
                new("not-formatted", "the file would not mean the same after formatting; it is left as it is", "please report this file", source.Path, null));
        }
        catch (CannotFormatException cannot)
        {
            faults.Add(
                Diagnostic.At(
                    new(at, cannot.Span), "not-formatted", "this way of writing is not formatted; the file is left as it is",
                    "write `key: value`, `- item`, `[a, b]` or `{ a: b }`"));
        }

        return null;
    }

    private static YamlNode Tree(SourceText source)
    {
        var faults = new DiagnosticList(source);
        var root = YamlReader.Read(faults);
        return root is not null && faults.Found.Count == 0 ? root : throw new CannotFormatException(faults.Found.FirstOrDefault()?.Place?.Span ?? new(0, 0));
    }

    private static bool Reads(FileKind kind, SourceText source)
    {
        var faults = new List<Diagnostic>();
        DataFile.Read(kind, source).Finish(faults);
        return faults.Count == 0;
    }
}
