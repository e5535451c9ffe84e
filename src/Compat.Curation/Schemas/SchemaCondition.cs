using System.Text.Json;
using Compat.Curation.Yaml;

namespace Compat.Curation.Schemas;

/// <summary>What a schema asks of the keys of a record together: 'one of these', 'this only beside that'.</summary>
internal sealed class SchemaCondition
{
    private readonly Func<YamlMapping, bool> _holds;

    private SchemaCondition(Func<YamlMapping, bool> holds) => _holds = holds;

    /// <summary>Whether it holds; of what has no keys nobody is sure, and it does not.</summary>
    public bool HoldsFor(YamlNode node) => node is YamlMapping mapping && _holds(mapping);

    /// <summary>Reads one keyword of a schema with its value.</summary>
    /// <exception cref="NotSupportedException">The schema uses more than is read here.</exception>
    public static SchemaCondition Read(JsonElement schema, JsonProperty keyword)
    {
        var value = keyword.Value;
        switch (keyword.Name)
        {
            case "required":
                var keys = value.EnumerateArray().Select(key => key.GetString()!).ToArray();
                return new(record => keys.All(key => record.Find(key) is not null));
            case "properties":
                var words = value.EnumerateObject().Select(property => (property.Name, Words: WordsOf(property.Value))).ToArray();
                return new(
                    record =>
                        words.All(
                            one => record.Find(one.Name)?.Value is not { } said || (said as YamlScalar is { } scalar && one.Words.Contains(scalar.Text))));
            case "if":
                var (condition, consequence) = (All(value), All(schema.GetProperty("then")));
                return new(record => !condition._holds(record) || consequence._holds(record));
            case "then":
                return new(_ => true);
            case "not":
                var not = All(value);
                return new(record => !not._holds(record));
            case "allOf":
                var all = value.EnumerateArray().Select(All).ToArray();
                return new(record => all.All(one => one._holds(record)));
            case "anyOf":
                var any = value.EnumerateArray().Select(All).ToArray();
                return new(record => any.Any(one => one._holds(record)));
            case "oneOf":
                var choices = value.EnumerateArray().Select(All).ToArray();
                return new(record => choices.Count(one => one._holds(record)) == 1);
            default:
                throw new NotSupportedException($"the keyword `{keyword.Name}` of a condition is not read");
        }
    }

    /// <summary>All keywords of one schema together.</summary>
    private static SchemaCondition All(JsonElement schema)
    {
        var parts = schema.EnumerateObject().Select(keyword => Read(schema, keyword)).ToArray();
        return new(record => parts.All(one => one._holds(record)));
    }

    /// <summary>The words that a key may have; none where it must not stand.</summary>
    private static string[] WordsOf(JsonElement property)
    {
        if (property.ValueKind == JsonValueKind.False) return [];
        var only = property.EnumerateObject().Single();
        return only.Name == "enum"
            ? only.Value.EnumerateArray().Select(word => word.GetString()!).ToArray()
            : throw new NotSupportedException($"the keyword `{only.Name}` of a condition is not read");
    }
}
