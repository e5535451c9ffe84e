using System.Net;
using System.Text.RegularExpressions;

namespace Compat.Cli.Tests.Cards;

/// <summary>What stands on a card, read back from its HTML.</summary>
internal static partial class CardPage
{
    /// <summary>The text of every line and heading, from top to bottom.</summary>
    public static string[] Lines(string html) => [.. Piece().Matches(html).Select(match => Text(match.Groups[2].Value))];

    /// <summary>The lines of the part of a class.</summary>
    public static string[] Lines(string html, string part)
    {
        var from = html.IndexOf($"<section class=\"{part}\">", StringComparison.Ordinal);
        return from < 0 ? [] : Lines(html[from..html.IndexOf("</section>", from, StringComparison.Ordinal)]);
    }

    /// <summary>The text without marks, entities read, every space one space.</summary>
    public static string Text(string html) =>
        string.Join(' ', WebUtility.HtmlDecode(Mark().Replace(html, "")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    [GeneratedRegex("<(li|h1|h2|p)(?: [^>]*)?>(.*?)(?=</\\1>|<ul>|\\n<ul>)", RegexOptions.Singleline)]
    private static partial Regex Piece();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Mark();
}
