using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>What a field of a record says on both sides, as it stands in the files.</summary>
/// <param name="Field">The field, nested by dots.</param>
/// <param name="Before">What BASE says; null where it does not write it.</param>
/// <param name="After">What HEAD says; null where it does not write it.</param>
public sealed record FieldChange(string Field, string? Before, string? After);

/// <summary>Where edited records stand, and how their fields were written. Immutable and safe to share between threads.</summary>
/// <param name="Base">The places of BASE.</param>
/// <param name="Head">The places of HEAD.</param>
public sealed record EditPlaces(SourceMap Base, SourceMap Head)
{
    private const int Longest = 120;

    /// <summary>Fields that a file spells otherwise than a record names them.</summary>
    private static readonly Dictionary<string, string> Spelled = new()
    {
        ["recalled"] = "basis",
        ["allows"] = "verdict",
        ["target.part"] = "part",
        ["target.material"] = "material",
        ["range"] = "value",
        ["methods"] = "value",
    };

    /// <summary>The place of an edited record: in HEAD, of a removed one in BASE; at the field, where one field alone differs.</summary>
    public SourcePlace? Of(RecordEdit edit)
    {
        var field = edit.Fields.Count == 1 ? Name(edit.Fields[0]) : "";
        return edit.Action == EditAction.Removed ? Base.Find(new ProblemPlace(edit.Kind, edit.Id)) : Head.Find(new ProblemPlace(edit.Kind, edit.Id, field));
    }

    /// <summary>What the fields of an edited record say on both sides.</summary>
    public IReadOnlyList<FieldChange> FieldsOf(RecordEdit edit) => edit.Fields.Select(Name).Distinct().Select(field => new FieldChange(
        field,
        Short(Base.WrittenAt(new ProblemPlace(edit.Kind, edit.FormerId ?? edit.Id, field))),
        Short(Head.WrittenAt(new ProblemPlace(edit.Kind, edit.Id, field))))).ToArray();

    private static string Name(string field) => Spelled.GetValueOrDefault(field, field);

    private static string? Short(string? text)
    {
        if (text is null) return null;
        var line = string.Join(" ", text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= Longest ? line : line[..Longest] + " …";
    }
}
