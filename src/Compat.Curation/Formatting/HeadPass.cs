using System.Text.RegularExpressions;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>Brings line ends and the head of a file into the canonical form: LF, no document marks, the line that names the schema first.</summary>
internal static partial class HeadPass
{
    /// <summary>Line ends as LF.</summary>
    public static string LineEnds(string text) => text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');

    /// <summary>The name of the schema that a file says it keeps to; null where it says nothing.</summary>
    public static string? SchemaOf(string text) =>
        Modeline().Match(text) is { Success: true } found && SchemaName().Match(found.Value) is { Success: true } name ? name.Groups[1].Value : null;

    /// <summary>Leaves document marks out and puts the line that names the schema first.</summary>
    /// <param name="text">The text; its lines end by LF.</param>
    /// <param name="root">Where the values stand in it.</param>
    /// <param name="modeline">The line to put in where there is none; null where it is not known.</param>
    public static string Run(string text, TextSpan root, string? modeline)
    {
        var edits = new List<TextEdit>();
        string? found = null;
        for (var at = 0; at < text.Length;)
        {
            var end = text.IndexOf('\n', at) is var feed and >= 0 ? feed : text.Length;
            var line = text[at..end];
            if (at < root.Start)
            {
                if (line.StartsWith('%')) edits.Add(new(TextSpan.Between(at, end), ""));
                else if (line.StartsWith("---", StringComparison.Ordinal)) edits.Add(new(new(at, 3), ""));
                else if (found is null && Modeline().IsMatch(line))
                {
                    found = line.Trim(' ');
                    edits.Add(new(TextSpan.Between(at, Math.Min(text.Length, end + 1)), ""));
                }
            }
            else if (at >= root.End && line.StartsWith("...", StringComparison.Ordinal))
            {
                edits.Add(new(new(at, 3), ""));
            }

            at = end + 1;
        }

        var first = found ?? modeline;
        return (first is null ? "" : first + "\n") + TextEdit.Apply(text, edits);
    }

    [GeneratedRegex(@"^ *# *yaml-language-server *:.*$", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex Modeline();

    [GeneratedRegex(@"\$schema=(?:[^ ]*/)?([a-z-]+)\.schema\.json *\r?$", RegexOptions.CultureInvariant)]
    private static partial Regex SchemaName();
}
