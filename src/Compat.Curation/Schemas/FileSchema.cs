using System.Collections.Concurrent;
using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;
using NJsonSchema;
using NJsonSchema.Validation;

namespace Compat.Curation.Schemas;

/// <summary>The schema of one kind of file. Nothing passes that the JSON Schema validator refuses.</summary>
internal sealed class FileSchema
{
    private static readonly Dictionary<FileKind, Lazy<FileSchema>> All =
        Enum.GetValues<FileKind>().ToDictionary(kind => kind, kind => new Lazy<FileSchema>(() => new FileSchema(Words.Of(kind))));

    private static readonly ConcurrentDictionary<string, FileSchema> Outputs = [];

    private readonly Lazy<JsonSchema> _validator;

    private FileSchema(string name)
    {
        Shape = SchemaShape.OfFile(name);
        _validator = new(() => JsonSchema.FromJsonAsync(EnforcedSchema.Of(name)).GetAwaiter().GetResult());
    }

    /// <summary>What it says, as far as we word it.</summary>
    public SchemaShape Shape { get; }

    /// <summary>The schema of a kind.</summary>
    public static FileSchema Of(FileKind kind) => All[kind].Value;

    /// <summary>The schema of an output of the command that is read again: <c>plan</c>, <c>dossier</c>.</summary>
    public static FileSchema OfOutput(string name) => Outputs.GetOrAdd(name, one => new FileSchema(one));

    /// <summary>Checks a file: adds what is wrong in our words and returns what the validator refuses.</summary>
    /// <remarks>
    /// The refusals are added by <see cref="AddRefusals"/> once the records were read, where nothing better was said of the same record.
    /// The validator is slow to start and is not asked of a file in which the walk finds nothing: a test proves that it would pass it.
    /// </remarks>
    public ICollection<ValidationError> Check(YamlNode root, DiagnosticList faults)
    {
        if (Passes(root, faults) || faults.IsFull) return [];
        return _validator.Value.Validate(SchemaJson.Of(root, Shape));
    }

    /// <summary>Adds what is wrong in our words; whether a file without faults until now has none, and no key is missing beside another.</summary>
    internal bool Passes(YamlNode root, DiagnosticList faults)
    {
        var walk = new SchemaWalk(faults);
        walk.Walk(root, Shape, "");
        return walk.ConditionsHold && faults.Found.Count == 0;
    }

    /// <summary>Adds a refusal for every record that the validator refuses and of which nothing was said yet.</summary>
    public static void AddRefusals(YamlNode root, IEnumerable<ValidationError> refusals, DiagnosticList faults)
    {
        foreach (var refusal in refusals.SelectMany(Flat))
        {
            var place = NodePath.Find(root, refusal.Path ?? "");
            if (faults.AnyWithin(place.Record.Span)) continue;
            faults.Add(
                place.At,
                "schema",
                $"this does not fit the schema: {Sentence(refusal.Kind)}{(refusal.Property is { Length: > 0 } property ? $" at `{property}`" : "")}");
        }
    }

    private static IEnumerable<ValidationError> Flat(ValidationError error) =>
        error is ChildSchemaValidationError { Kind: not ValidationErrorKind.NotAnyOf and not ValidationErrorKind.NotOneOf } parent
            ? parent.Errors.Values.SelectMany(children => children).SelectMany(Flat).DefaultIfEmpty(error)
            : [error];

    private static string Sentence(ValidationErrorKind kind) =>
        System.Text.RegularExpressions.Regex.Replace(kind.ToString(), "(?<!^)([A-Z])", " $1").ToLowerInvariant();
}
