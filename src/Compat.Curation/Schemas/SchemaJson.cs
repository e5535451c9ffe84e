using Compat.Curation.Yaml;
using Newtonsoft.Json.Linq;

namespace Compat.Curation.Schemas;

/// <summary>A file as JSON for the validator: its values typed as the schema expects them.</summary>
internal static class SchemaJson
{
    /// <summary>The JSON of a value; one of the wrong kind stays what it is, so that the validator refuses it too.</summary>
    public static JToken Of(YamlNode node, SchemaShape shape)
    {
        shape = shape.For(node);
        switch (node)
        {
            case YamlMapping mapping:
                var json = new JObject();
                foreach (var entry in mapping.Entries) json[entry.Key.Text] = Of(entry.Value, shape.Of(entry.Key.Text));
                return json;
            case YamlSequence sequence:
                return new JArray(sequence.Items.Select(item => Of(item, shape.Items ?? SchemaShape.Nothing)));
            case YamlScalar scalar:
                return Scalar(scalar, shape);
            default:
                return JValue.CreateNull();
        }
    }

    private static JValue Scalar(YamlScalar scalar, SchemaShape shape)
    {
        if (shape.Type == "boolean" && ScalarText.TruthOf(scalar) is { } truth) return new JValue(truth);
        if (shape.Type is "integer" or "number" && ScalarText.NumberOf(scalar, shape.Type == "integer") is { } number)
            return shape.Type == "integer" && Math.Abs(number) < long.MaxValue ? new JValue((long)number) : new JValue(number);
        return new JValue(scalar.Text);
    }
}
