using System.Runtime.CompilerServices;
using Spectre.Console;

namespace Compat.Cli.Text;

/// <summary>Writes a table for a terminal: as wide as it is, a column left out where it holds nothing. No colour, no boldness: not one control sequence, whatever the terminal can do.</summary>
/// <remarks>What is read in a pipe is written by <see cref="Page"/>.</remarks>
internal static class TerminalTable
{
    /// <summary>Writes rows under headings.</summary>
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
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Ansi = AnsiSupport.No, ColorSystem = ColorSystemSupport.NoColors, Out = new AnsiConsoleOutput(output) });
        console.Write(table);
    }
}
