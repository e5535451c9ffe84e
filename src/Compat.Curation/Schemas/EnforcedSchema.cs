using System.Text.Json;
using System.Text.Json.Nodes;

namespace Compat.Curation.Schemas;

/// <summary>Makes of a schema file, as editors get it, one document that every validator enforces.</summary>
/// <remarks>
/// What other files define is taken in, and a condition is written without <c>if</c> and <c>then</c>, which NJsonSchema passes over without a word:
/// 'if A, then B' becomes 'not A, or B', and a key that must not stand (<c>"key": false</c>) becomes 'not required'. What only describes is left out.
/// </remarks>
internal sealed class EnforcedSchema
{
    private readonly JsonObject _definitions = [];

    private EnforcedSchema()
    {
    }

    /// <summary>The text of the document that a file becomes.</summary>
    public static string Of(string file) => Of(SchemaPlace.Root(file));

    /// <summary>The text of the document that a schema becomes.</summary>
    /// <exception cref="NotSupportedException">It uses a keyword that is not enforced.</exception>
    public static string Of(SchemaPlace place)
    {
        var whole = new EnforcedSchema();
        var root = whole.Enforced(place);
        if (whole._definitions.Count > 0) root["definitions"] = whole._definitions;
        return root.ToJsonString();
    }

    private JsonObject Enforced(SchemaPlace place)
    {
        if (place.Reference is not null) return new() { ["$ref"] = Defined(place) };
        var made = new JsonObject();
        foreach (var keyword in place.Schema.EnumerateObject())
        {
            var value = keyword.Value;
            switch (keyword.Name)
            {
                case "$schema" or "title" or "description" or "enumDescriptions" or "definitions" or "then":
                    break;
                case "if":
                    made["anyOf"] = new JsonArray(
                        new JsonObject { ["not"] = Enforced(place.Below(value)) },
                        Enforced(place.Below(place.Schema.GetProperty("then"))));
                    break;
                case "items" or "not":
                    made[keyword.Name] = Enforced(place.Below(value));
                    break;
                case "allOf" or "anyOf" or "oneOf":
                    made[keyword.Name] = new JsonArray([.. value.EnumerateArray().Select(one => Enforced(place.Below(one)))]);
                    break;
                case "properties":
                    Properties(place, value, made);
                    break;
                case "type" or "required" or "additionalProperties" or "enum" or "pattern" or "minLength" or "maxLength" or "minimum" or "maximum"
                    or "minItems" or "maxItems" or "minProperties" or "uniqueItems":
                    made[keyword.Name] = JsonNode.Parse(value.GetRawText());
                    break;
                default:
                    throw new NotSupportedException($"the keyword `{keyword.Name}` of a schema is not enforced");
            }
        }

        return made;
    }

    private void Properties(SchemaPlace place, JsonElement properties, JsonObject made)
    {
        var (some, never) = (new JsonObject(), new JsonArray());
        foreach (var property in properties.EnumerateObject())
        {
            if (property.Value.ValueKind == JsonValueKind.False) never.Add(new JsonObject
            {
                ["not"] = new JsonObject { ["required"] = new JsonArray(property.Name) },
            });
            else some[property.Name] = Enforced(place.Below(property.Value));
        }

        if (some.Count > 0) made["properties"] = some;
        if (never.Count > 0) made["allOf"] = never;
    }

    private string Defined(SchemaPlace place)
    {
        var (name, target) = place.Target();
        if (_definitions.TryAdd(name, null)) _definitions[name] = Enforced(target);
        return "#/definitions/" + name;
    }
}
