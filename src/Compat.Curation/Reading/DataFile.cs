using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using NJsonSchema.Validation;

namespace Compat.Curation.Reading;

/// <summary>One file brought to a tree and held against its schema; its records are read afterwards.</summary>
internal sealed class DataFile
{
    private readonly ICollection<ValidationError> _refusals;

    private DataFile(FileKind kind, YamlNode? root, DiagnosticList faults, ICollection<ValidationError> refusals)
    {
        Kind = kind;
        Root = root;
        Faults = faults;
        _refusals = refusals;
    }

    /// <summary>The kind of file.</summary>
    public FileKind Kind { get; }

    /// <summary>Its tree; null where it could not be read.</summary>
    public YamlNode? Root { get; }

    /// <summary>Its faults.</summary>
    public DiagnosticList Faults { get; }

    /// <summary>Whether it could be read, and something in it could not.</summary>
    public bool HasGaps => Root is not YamlMapping and not YamlSequence || (Root is YamlSequence list && list.Items.Any(item => item is not YamlMapping));

    /// <summary>Its records, of a file that is a list.</summary>
    public IEnumerable<RecordFields> Records =>
        (Root as YamlSequence)?.Items.OfType<YamlMapping>().Select(item => new RecordFields(item, Faults)) ?? [];

    /// <summary>Reads a text and holds it against the schema of its kind.</summary>
    /// <param name="kind">The kind of file.</param>
    /// <param name="source">The text.</param>
    /// <param name="memory">Trees of texts that were read without a fault; null where nothing is remembered.</param>
    public static DataFile Read(FileKind kind, SourceText source, FileMemory? memory = null)
    {
        var faults = new DiagnosticList(source);
        if (memory?.Find(kind, source.Text) is { } known) return new(kind, known, faults, []);
        var root = YamlReader.Read(faults);
        var file = new DataFile(kind, root, faults, root is null ? [] : FileSchema.Of(kind).Check(root, faults));
        if (root is not null && faults.Found.Count == 0 && file._refusals.Count == 0) memory?.Keep(kind, source.Text, root);
        return file;
    }

    /// <summary>Reads bytes; null where they are no text, which is reported.</summary>
    public static DataFile? Read(FileKind kind, byte[]? bytes, string shownAs, List<Diagnostic> faults, FileMemory? memory = null) =>
        bytes is not null && SourceReader.Decode(bytes, shownAs, faults) is { } source ? Read(kind, source, memory) : null;

    /// <summary>Adds what the validator refuses and nobody has worded, and hands all faults over.</summary>
    public void Finish(List<Diagnostic> faults)
    {
        if (Root is not null) FileSchema.AddRefusals(Root, _refusals, Faults);
        faults.AddRange(Faults.Found);
    }
}
