using Compat.Curation.Schemas;

namespace Compat.Curation.Tests.Schemas;

/// <summary>The schema files as two validators take them: one reads them as editors do, the other the form that is made of them.</summary>
internal static class SchemaFiles
{
    private static readonly Uri Folder = new("https://compat.test/schemas/");

    /// <summary>A schema file with its <c>if</c> and <c>then</c> and its references into other files.</summary>
    public static Json.Schema.JsonSchema ForEditors(string name)
    {
        var options = new Json.Schema.BuildOptions { SchemaRegistry = new() };
        foreach (var file in FilesFrom(name).Append(name).Distinct())
        {
            var schema = Json.Schema.JsonSchema.FromText(SchemaPlace.Root(file).Schema.GetRawText(), options, new Uri(Folder, $"{file}.schema.json"));
            if (file == name) return schema;
        }

        throw new InvalidOperationException(name);
    }

    /// <summary>The form that the program enforces.</summary>
    public static Task<NJsonSchema.JsonSchema> Enforced(string name) => NJsonSchema.JsonSchema.FromJsonAsync(EnforcedSchema.Of(name));

    /// <summary>What both validators have against a document; empty where nothing.</summary>
    public static async Task<string> Refusals(string name, string json)
    {
        using var document = System.Text.Json.JsonDocument.Parse(json);
        var result = ForEditors(name).Evaluate(document.RootElement, new() { OutputFormat = Json.Schema.OutputFormat.List });
        var first = result.IsValid ? [] : (result.Details ?? [])
            .SelectMany(detail => detail.Errors?.Select(error => $"{detail.InstanceLocation}: {error.Value}") ?? []);
        return string.Join('\n', first.Concat((await Enforced(name)).Validate(json).Select(error => error.ToString())));
    }

    /// <summary>The files that a file refers to, each behind those that it refers to itself.</summary>
    private static IEnumerable<string> FilesFrom(string name) =>
        System.Text.RegularExpressions.Regex.Matches(SchemaPlace.Root(name).Schema.GetRawText(), "\"\\$ref\": \"([a-z-]+)\\.schema\\.json#")
            .Select(match => match.Groups[1].Value).Distinct()
            .SelectMany(file => FilesFrom(file).Append(file));
}
