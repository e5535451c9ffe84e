using System.Runtime.CompilerServices;
using Spectre.Console;

namespace Compat.Cli.Say;

/// <summary>Writes text for people, at most 80 columns wide, without colour.</summary>
/// <remarks>A no-break space keeps a figure and its unit on one line; it is written as a plain space.</remarks>
internal sealed class Page(TextWriter writer)
{
    public const int Width = 80;

    public void Blank() => writer.Write('\n');

    public void Heading(string text)
    {
        Blank();
        Line(text);
    }

    public void Item(string text) => Line("- " + text, 2, 4);

    /// <summary>A list under its heading; nothing where it is empty.</summary>
    public void Section(string heading, IEnumerable<string> items)
    {
        var first = true;
        foreach (var item in items)
        {
            if (first) Heading(heading);
            Item(item);
            first = false;
        }
    }

    public void Cautions() => Section("Cautions", VerdictWording.Cautions);

    public void Data(IEnumerable<DataIdentity> identity) => Section("Data", identity.Select(EvidenceWording.Of));

    /// <param name="hanging">Columns before the lines after it; the same where left out.</param>
    public void Line(string text, int indent = 0, int hanging = -1)
    {
        var column = indent;
        Spaces(indent);
        var first = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!first && column + 1 + word.Length > Width)
            {
                column = hanging < 0 ? indent : hanging;
                writer.Write('\n');
                Spaces(column);
            }
            else if (!first)
            {
                writer.Write(' ');
                column++;
            }

            writer.Write(word.Replace('\u00a0', ' '));
            column += word.Length;
            first = false;
        }

        writer.Write('\n');
    }

    private void Spaces(int count)
    {
        for (; count > 0; count--) writer.Write(' ');
    }

    /// <summary>A name and what it means, in two columns; the second one is wrapped.</summary>
    public void Columns(string left, string right, int indent, int leftWidth)
    {
        var second = indent + leftWidth + 2;
        if (left.Length > leftWidth)
        {
            Line(left.Replace(' ', '\u00a0'), indent);
            Line(right, second);
        }
        else
        {
            Line(left.PadRight(leftWidth + 1).Replace(' ', '\u00a0') + " " + right, indent, second);
        }
    }
}

/// <summary>Keeps text of a file from moving or hiding what stands on a screen.</summary>
/// <remarks>The no-break space of the wordings is kept: <see cref="Page"/> writes it as a plain one.</remarks>
internal static class Printable
{
    public static string Of(string text) => string.Join('\u00a0', text.Split('\u00a0').Select(HiddenText.Shown));
}

/// <summary>Writes a table for a terminal: as wide as it is, a column left out where it holds nothing. No colour, no boldness: not one control sequence,
/// whatever the terminal can do.</summary>
/// <remarks>What is read in a pipe is written by <see cref="Page"/>.</remarks>
internal static class TerminalTable
{
    [MethodImpl(MethodImplOptions.NoInlining)]
    public static void Write(TextWriter output, string[] headings, IEnumerable<string[]> rows)
    {
        var cells = rows.ToArray();
        var table = new Table().Border(TableBorder.Simple);
        var shown = Enumerable.Range(0, headings.Length).Where(column => cells.Any(row => row[column].Length > 0)).ToArray();
        if (shown.Length == 0) return;
        foreach (var column in shown)
        {
            var heading = new TableColumn(new Spectre.Console.Text(headings[column]));
            table.AddColumn(column == 0 ? heading.NoWrap() : heading);
        }

        foreach (var row in cells) table.AddRow(shown.Select(column => new Spectre.Console.Text(row[column].Replace('\u00a0', ' '))));
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Out = new AnsiConsoleOutput(output)
        });
        console.Write(table);
    }
}

/// <summary>Small forms of English that all outputs share.</summary>
internal static class English
{
    /// <summary>A word of a schema as words of a sentence.</summary>
    public static string Spaced(this string word) => word.Replace('-', ' ');

    /// <summary>A text without the no-break spaces that keep a figure and its unit on one line.</summary>
    public static string Unjoined(this string text) => text.Replace('\u00a0', ' ');

    public static string Capital(this string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A sentence as it goes on within another one; abbreviations and symbols keep their capitals.</summary>
    public static string Lower(this string sentence) =>
        sentence.Length > 1 && char.IsUpper(sentence[0]) && (char.IsLower(sentence[1]) || sentence[1] == ' ')
            ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;

    /// <summary>So many of a thing: <c>1 box</c>, <c>2 boxes</c>, <c>3 parts of a device</c>.</summary>
    public static string Count(int count, string what)
    {
        if (count == 1) return $"1 {what}";
        var words = what.Split(' ', 2);
        var many = words[0].EndsWith('x') ? words[0] + "es" : words[0] + "s";
        return words.Length == 1 ? $"{count} {many}"
            : words[1] == "alone" || words[1].StartsWith("of ", StringComparison.Ordinal) ? $"{count} {many} {words[1]}" : $"{count} {what}s";
    }

    /// <summary>The first few of a list; the rest is counted.</summary>
    public static string Few(IReadOnlyCollection<string> all, int most) =>
        string.Join(", ", all.Take(most)) + (all.Count > most ? $" and {all.Count - most} more" : "");

    /// <summary>One argument of a reason; empty where it has fewer.</summary>
    public static string At(this IReadOnlyList<string> arguments, int index) => index < arguments.Count ? arguments[index] : "";
}
