using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>What a field of a record says on both sides, as it stands in the files.</summary>
/// <param name="Field">The field, nested by dots.</param>
/// <param name="Before">What BASE says; null where it does not write it.</param>
/// <param name="After">What HEAD says; null where it does not write it.</param>
public sealed record FieldChange(string Field, string? Before, string? After)
{
    /// <summary>Both sides cut to a length around where they first differ, so that they never look alike where they are not.</summary>
    /// <param name="most">How many characters of each are shown at most.</param>
    public FieldChange Around(int most)
    {
        if (Before is null || After is null) return this with { Before = Cut(Before, 0, most), After = Cut(After, 0, most) };
        var alike = Before.Zip(After).TakeWhile(pair => pair.First == pair.Second).Count();
        var from = alike < most * 3 / 4 ? 0 : alike - (most / 4);
        return this with { Before = Cut(Before, from, most), After = Cut(After, from, most) };
    }

    private static string? Cut(string? text, int from, int most) =>
        text is null ? null
        : (from > 0 ? "… " : "") + text[Math.Min(from, text.Length)..Math.Min(text.Length, from + most)] + (from + most < text.Length ? " …" : "");
}

/// <summary>Where edited records stand, and how their fields were written. Immutable and safe to share between threads.</summary>
/// <param name="Base">The places of BASE.</param>
/// <param name="Head">The places of HEAD.</param>
public sealed record EditPlaces(SourceMap Base, SourceMap Head)
{
    /// <summary>Fields that tell what a record does, in the order in which they are shown.</summary>
    private static readonly string[] Telling = ["verdict", "overrides", "whole-class", "reaches", "kills", "refuted", "severity", "effects", "level", "damage",
        "when", "duties", "known-by", "harm", "why", "reason", "sources"];

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

    /// <summary>
    /// What the fields of an edited record say on both sides; of one that is new or gone what a reviewer must know of it. What decides comes first.
    /// </summary>
    public IReadOnlyList<FieldChange> FieldsOf(RecordEdit edit) =>
        edit.Kind == RecordKind.Site || edit.CalledAs is not null ? []
        : (edit.Action is EditAction.Added or EditAction.Removed ? Telling : edit.Fields.Select(Name)).Distinct()
        .OrderBy(field => Array.IndexOf(Telling, field) is var at && at < 0 ? Telling.Length : at).Select(field => Field(edit, field))
            .Where(field => (field.Before ?? field.After) is not null).ToArray();

    private FieldChange Field(RecordEdit edit, string field) => new(
        field,
        OneLine(Base.WrittenAt(new ProblemPlace(edit.Kind, edit.FormerId ?? edit.Id, field))),
        OneLine(Head.WrittenAt(new ProblemPlace(edit.Kind, edit.Id, field))));

    private static string Name(string field) => Spelled.GetValueOrDefault(field, field);

    private static string? OneLine(string? text) => text is null ? null : string.Join(" ", text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
