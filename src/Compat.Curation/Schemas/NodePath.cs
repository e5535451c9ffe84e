using System.Globalization;
using Compat.Curation.Yaml;

namespace Compat.Curation.Schemas;

/// <summary>Finds the node that a path of the validator names, for example <c>#/[3].when.strength</c>.</summary>
internal static class NodePath
{
    /// <summary>The place of a path: the stretch to point at and the record (item of the top list or of a list below a top key) it lies in.</summary>
    public static (TextSpan At, YamlNode Record) Find(YamlNode root, string path)
    {
        var node = root;
        var record = root;
        var at = PointAt(root);
        var depth = 0;
        foreach (var step in Steps(path))
        {
            if (node is YamlSequence list && int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < list.Items.Count)
            {
                node = list.Items[index];
                at = PointAt(node);
                if (depth <= 1) record = node;
            }
            else if (node is YamlMapping mapping && mapping.Find(step) is { } entry)
            {
                node = entry.Value;
                at = node is YamlScalar { IsNothing: false } ? node.Span : entry.Key.Span;
            }
            else
            {
                break;
            }

            depth++;
        }

        return (at, record);
    }

    /// <summary>What to point at for a whole node: the first key of a mapping, the first item of a list.</summary>
    public static TextSpan PointAt(YamlNode node) => node switch
    {
        YamlMapping { Entries.Count: > 0 } mapping => mapping.Entries[0].Key.Span,
        YamlSequence { Items.Count: > 0 } list => PointAt(list.Items[0]),
        _ => node.Span,
    };

    private static IEnumerable<string> Steps(string path) =>
        path.Replace("#/", "", StringComparison.Ordinal).Split(['.', '[', ']'], StringSplitOptions.RemoveEmptyEntries);
}
