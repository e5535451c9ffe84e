using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>
/// Whether two trees mean the same: the same keys whatever their order, the same items in their order, the same texts, and measured texts that measure the
/// same.
/// </summary>
internal static class SameMeaning
{
    /// <summary>Compares two values that stand at one place of a schema.</summary>
    public static bool Of(YamlNode one, YamlNode other, SchemaShape shape)
    {
        shape = shape.For(one);
        return (one, other) switch
        {
            (YamlScalar a, YamlScalar b) => Scalars(a, b, shape),
            (YamlSequence a, YamlSequence b) => a.Items.Count == b.Items.Count
                && a.Items.Zip(b.Items).All(pair => Of(pair.First, pair.Second, shape.Items ?? SchemaShape.Nothing)),
            (YamlMapping a, YamlMapping b) => a.Entries.Count == b.Entries.Count
                && a.Entries.All(entry => b.Find(entry.Key.Text) is { } same && Of(entry.Value, same.Value, shape.Of(entry.Key.Text))),
            _ => false,
        };
    }

    private static bool Scalars(YamlScalar one, YamlScalar other, SchemaShape shape)
    {
        if (shape.Type is "boolean" or "integer" or "number" && one.IsPlain != other.IsPlain) return false;
        return one.Text == other.Text || (MeasuredText.Takes(shape) && MeasuredText.AreSame(one.Text, other.Text));
    }
}
