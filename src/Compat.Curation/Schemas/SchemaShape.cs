using System.Text.Json;
using System.Text.RegularExpressions;
using Compat.Curation.Yaml;

namespace Compat.Curation.Schemas;

/// <summary>What a schema says of one place: what <see cref="SchemaWalk"/> words, and the conditions on keys that it leaves to the validator to word.</summary>
internal sealed class SchemaShape
{
    /// <summary>A place of which nothing is said.</summary>
    public static SchemaShape Nothing { get; } = new();

    public string? Type { get; private set; }

    public IReadOnlyList<string>? Words { get; private set; }

    public Regex? Pattern { get; private set; }

    public int MinLength { get; private set; }

    public int MaxLength { get; private set; } = int.MaxValue;

    public decimal? Minimum { get; private set; }

    public decimal? Maximum { get; private set; }

    public int MinItems { get; private set; }

    public int MinProperties { get; private set; }

    public bool Distinct { get; private set; }

    public string? Description { get; private set; }

    public SchemaShape? Items { get; private set; }

    public IReadOnlyDictionary<string, SchemaShape> Properties { get; private set; } = new Dictionary<string, SchemaShape>();

    /// <summary>The keys, in the order of the schema: the order they are written in.</summary>
    public IReadOnlyList<string> Keys { get; private set; } = [];

    public IReadOnlyList<string> Required { get; private set; } = [];

    /// <summary>The branches of a place that takes several kinds of value, one a kind.</summary>
    public IReadOnlyList<SchemaShape> AnyOf { get; private set; } = [];

    /// <summary>What must hold of the keys together.</summary>
    public IReadOnlyList<SchemaCondition> Conditions { get; private set; } = [];

    /// <summary>Whether the place takes a word (an id or one of a list), not free text.</summary>
    public bool IsWord => Words is not null || Pattern is not null;

    /// <summary>Whether the place takes free text: no word, and nothing measured, which is short.</summary>
    public bool IsFreeText => Type == "string" && !IsWord && MaxLength > Text.RangeText.MaximumLength;

    /// <summary>Whether the place takes an id.</summary>
    public bool IsId => Pattern is not null && Pattern.IsMatch("a-1b") && !Pattern.IsMatch("a/1b") && !Pattern.IsMatch("A");

    /// <summary>The branch that speaks of a value, where the schema has several.</summary>
    public SchemaShape For(YamlNode node)
    {
        if (AnyOf.Count == 0 || Type is not null) return this;
        var type = node switch { YamlMapping => "object", YamlSequence => "array", _ => "string" };
        return AnyOf.FirstOrDefault(branch => branch.Type == type) ?? AnyOf[0];
    }

    /// <summary>What is said of the value of a key.</summary>
    public SchemaShape Of(string key) => Properties.GetValueOrDefault(key) ?? Nothing;

    /// <summary>Reads a schema file. What several files share is read once.</summary>
    public static SchemaShape OfFile(string file)
    {
        lock (Builder.Named) return Builder.Build(SchemaPlace.Root(file));
    }

    private static class Builder
    {
        public static readonly Dictionary<string, SchemaShape> Named = new(StringComparer.Ordinal);

        public static SchemaShape Build(SchemaPlace place)
        {
            if (place.Reference is null) return Fill(new SchemaShape(), place);
            var (name, target) = place.Target();
            if (Named.TryGetValue(name, out var known)) return known;
            if (target.Reference is not null) return Named[name] = Build(target);
            var shape = Named[name] = new SchemaShape();
            return Fill(shape, target);
        }

        private static SchemaShape Fill(SchemaShape shape, SchemaPlace place)
        {
            foreach (var keyword in place.Schema.EnumerateObject())
            {
                var value = keyword.Value;
                switch (keyword.Name)
                {
                    case "type": shape.Type = value.GetString(); break;
                    case "description": shape.Description = value.GetString(); break;
                    case "enum":
                        shape.Words = value.EnumerateArray().Select(item => item.ValueKind == JsonValueKind.String ? item.GetString()! : item.GetRawText())
                            .ToArray();
                        break;
                    case "pattern": shape.Pattern = new Regex(value.GetString()!, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1)); break;
                    case "minLength": shape.MinLength = value.GetInt32(); break;
                    case "maxLength": shape.MaxLength = value.GetInt32(); break;
                    case "minimum": shape.Minimum = value.GetDecimal(); break;
                    case "maximum": shape.Maximum = value.GetDecimal(); break;
                    case "minItems": shape.MinItems = value.GetInt32(); break;
                    case "minProperties": shape.MinProperties = value.GetInt32(); break;
                    case "uniqueItems": shape.Distinct = value.GetBoolean(); break;
                    case "items": shape.Items = Build(place.Below(value)); break;
                    case "required": shape.Required = value.EnumerateArray().Select(item => item.GetString()!).ToArray(); break;
                    case "properties":
                        shape.Properties = value.EnumerateObject().ToDictionary(item => item.Name, item => Build(place.Below(item.Value)));
                        shape.Keys = value.EnumerateObject().Select(item => item.Name).ToArray();
                        break;
                    case "anyOf" when !place.Schema.TryGetProperty("type", out _): shape.AnyOf = Branches(place, value); break;
                    case "allOf" or "anyOf" or "oneOf" or "not": shape.Conditions = [.. shape.Conditions, SchemaCondition.Read(place.Schema, keyword)]; break;
                    case "$schema" or "title" or "definitions" or "additionalProperties" or "enumDescriptions": break;
                    default: throw new NotSupportedException($"the keyword `{keyword.Name}` of a schema is not read");
                }
            }

            return shape;
        }

        private static SchemaShape[] Branches(SchemaPlace place, JsonElement list)
        {
            var branches = list.EnumerateArray().Select(branch => Build(place.Below(branch))).ToArray();
            return branches.DistinctBy(branch => branch.Type).Count() == branches.Length
                ? branches
                : throw new NotSupportedException("two branches of a schema take one kind of value");
        }
    }
}
