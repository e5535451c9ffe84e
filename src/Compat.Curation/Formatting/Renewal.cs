using System.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>
/// Writes renamed keys and words anew where they stand, and nothing else. Where a word stands and what it means there is read, not searched for.
/// </summary>
internal sealed class Renewal
{
    private readonly List<TextEdit> _edits = [];

    /// <summary>The bytes of a file with the new words; the same bytes where it has none of the old ones or cannot be read.</summary>
    /// <param name="kind">The kind of file; null for answers that describe a product.</param>
    /// <param name="bytes">The file.</param>
    public static byte[] Of(FileKind? kind, byte[] bytes)
    {
        if (Tree(bytes, out var text) is not { } root) return bytes;
        var renewal = new Renewal();
        if (kind is { } one) renewal.Walk(root, FileSchema.Of(one).Shape);
        else foreach (var section in Sections(root)) renewal.Walk(section.Value, FileSchema.Of(FileKind.Site).Shape.Of("products").Items!);
        return renewal._edits.Count == 0 ? bytes : Encoding.UTF8.GetBytes(TextEdit.Apply(text, renewal._edits));
    }

    /// <summary>Whether a file is one of answers that describe a product.</summary>
    public static bool IsOfAnswers(byte[] bytes) => Tree(bytes, out _) is { } root && Sections(root).Any();

    private static IEnumerable<YamlEntry> Sections(YamlNode root) =>
        root is YamlMapping mapping ? mapping.Entries.Where(entry => ProductAnswers.Sections.Contains(entry.Key.Text)) : [];

    private static YamlNode? Tree(byte[] bytes, out string text)
    {
        text = "";
        if (SourceReader.Decode(bytes, "", []) is not { } source) return null;
        text = source.Text;
        var faults = new DiagnosticList(source);
        return YamlReader.Read(faults) is { } root && faults.Found.Count == 0 ? root : null;
    }

    private void Walk(YamlNode node, SchemaShape shape)
    {
        shape = shape.For(node);
        switch (node)
        {
            case YamlMapping mapping:
                foreach (var (key, value) in mapping.Entries)
                {
                    // Beside the new key the old one is a fault that its writer must solve: the reader says so.
                    var now = shape.Properties.ContainsKey(key.Text) ? null : RenamedWords.OfKey(key.Text, shape.Keys.Where(one => mapping.Find(one) is null));
                    if (now is not null) _edits.Add(new(key.Span, now));
                    Walk(value, shape.Of(now ?? key.Text));
                }

                break;
            case YamlSequence sequence:
                foreach (var item in sequence.Items) Walk(item, shape.Items ?? SchemaShape.Nothing);
                break;
            case YamlScalar scalar when shape.Words is { } words && !words.Contains(scalar.Text) && RenamedWords.OfValue(scalar.Text, words) is { } word:
                _edits.Add(new(scalar.Span, word));
                break;
        }
    }
}
