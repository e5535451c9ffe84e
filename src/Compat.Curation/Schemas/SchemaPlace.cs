using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;

namespace Compat.Curation.Schemas;

/// <summary>A place in one of the schema files; a reference may lead into another file.</summary>
/// <param name="File">The name of the file, without <c>.schema.json</c>.</param>
/// <param name="Schema">What is written there.</param>
internal readonly record struct SchemaPlace(string File, JsonElement Schema)
{
    private const string Ending = ".schema.json";
    private static readonly ConcurrentDictionary<string, JsonElement> Roots = new(StringComparer.Ordinal);

    /// <summary>Where the place refers to, as it is written; null where it refers to nothing.</summary>
    public string? Reference => Schema.ValueKind == JsonValueKind.Object && Schema.TryGetProperty("$ref", out var reference) ? reference.GetString() : null;

    /// <summary>The whole of a schema file.</summary>
    public static SchemaPlace Root(string file) => new(file, Roots.GetOrAdd(file, Read));

    /// <summary>The place that a reference of this place leads to, with the one name it has wherever it is referred to.</summary>
    public (string Name, SchemaPlace Place) Target()
    {
        var reference = Reference!.Split('#');
        var file = reference[0].Length == 0 ? File : reference[0][..^Ending.Length];
        var place = Root(file);
        foreach (var step in reference[1].Split('/', StringSplitOptions.RemoveEmptyEntries)) place = place.Below(place.Schema.GetProperty(step));
        return (file + reference[1].Replace('/', '.'), place);
    }

    /// <summary>A place below this one.</summary>
    public SchemaPlace Below(JsonElement schema) => this with { Schema = schema };

    private static JsonElement Read(string file)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"schemas/{file}{Ending}")
            ?? throw new InvalidOperationException($"no schema `{file}` is compiled in");
        using var document = JsonDocument.Parse(stream);
        return document.RootElement.Clone();
    }
}
