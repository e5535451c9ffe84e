using System.Text;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>One change of a text: what takes the place of a stretch of it.</summary>
/// <param name="Span">The stretch; of length 0 for something put in.</param>
/// <param name="Text">What takes its place.</param>
internal readonly record struct TextEdit(TextSpan Span, string Text)
{
    /// <summary>Makes changes, which stand in the order of the text and do not overlap.</summary>
    public static string Apply(string text, IReadOnlyList<TextEdit> edits)
    {
        if (edits.Count == 0) return text;
        var changed = new StringBuilder(text.Length + 64);
        var at = 0;
        foreach (var edit in edits)
        {
            if (edit.Span.Start < at) throw new InvalidOperationException("two changes of one stretch");
            changed.Append(text, at, edit.Span.Start - at).Append(edit.Text);
            at = edit.Span.End;
        }

        return changed.Append(text, at, text.Length - at).ToString();
    }
}
