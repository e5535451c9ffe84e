using System.Text;

namespace Compat.Cli.Say;

/// <summary>Writes text of data so that a forge shows it as it stands: no markup, no table broken, nobody called by name.</summary>
internal static class Markdown
{
    /// <summary>What is written behind a sign that calls a person or an issue by name: a forge undoes entities before it looks for names, but not
    /// this.</summary>
    private const string Apart = "<!-- -->";

    /// <summary>A text in which what stands in backticks is shown as code and all else as plain words.</summary>
    public static string Text(string text)
    {
        var pieces = OneLine(text).Split('`');
        var shown = new StringBuilder();
        for (var i = 0; i < pieces.Length; i++)
        {
            var isCode = i % 2 == 1 && i < pieces.Length - 1;
            if (i % 2 == 1 && !isCode) shown.Append("\\`");
            shown.Append(isCode ? Code(pieces[i]) : Escaped(pieces[i]));
        }

        return shown.ToString();
    }

    /// <summary>A text as code, in a fence longer than any in it; a bar is escaped, for it ends a cell even there.</summary>
    public static string Code(string text)
    {
        var line = OneLine(text);
        if (line.Length == 0) return "";
        var fence = new string('`', Longest(line) + 1);
        var pad = line[0] == '`' || line[^1] == '`' ? " " : "";
        return fence + pad + line.Replace("|", "\\|", StringComparison.Ordinal) + pad + fence;
    }

    public static string Block(string line)
    {
        var fence = new string('`', Math.Max(3, Longest(line) + 1));
        return $"{fence}sh\n{OneLine(line)}\n{fence}\n";
    }

    /// <summary>Several lines as they stand, in a fence longer than any in them.</summary>
    public static string Lines(string text)
    {
        var fence = new string('`', Math.Max(3, Longest(text) + 1));
        return $"{fence}text\n{string.Join("\n", text.TrimEnd().Split('\n').Select(OneLine))}\n{fence}\n";
    }

    /// <summary>A table of cells that are escaped already.</summary>
    public static void Table(TextWriter output, IEnumerable<string> headings, IEnumerable<IEnumerable<string>> rows)
    {
        var columns = headings.ToArray();
        output.Write($"| {string.Join(" | ", columns)} |\n|{string.Concat(columns.Select(_ => " --- |"))}\n");
        foreach (var row in rows) output.Write($"| {string.Join(" | ", row)} |\n");
    }

    /// <summary>A text as plain words, backticks and all, on one line: it can neither end a table nor start a list, a heading, a quotation or a link.</summary>
    public static string Plain(string text) => Escaped(OneLine(text));

    private static string Escaped(string text)
    {
        var shown = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            if (c == '<') shown.Append("&lt;");
            else if (c == '&') shown.Append("&amp;");
            else if (c is '@' or '#') shown.Append(c).Append(Apart);
            else if (c is '\\' or '`' or '*' or '_' or '{' or '}' or '[' or ']' or '|' or '~' or '$' or '!' || (c == '>' && shown.Length == 0)) shown.Append(
                '\\').Append(c);
            else shown.Append(c);
        }

        return shown.ToString().Replace("://", ":&#47;/", StringComparison.Ordinal);
    }

    private static string OneLine(string text) => Printable.Of(text.Replace('\r', ' ').Replace('\n', ' '));

    private static int Longest(string text)
    {
        int longest = 0, run = 0;
        foreach (var c in text) longest = Math.Max(longest, run = c == '`' ? run + 1 : 0);
        return longest;
    }
}
