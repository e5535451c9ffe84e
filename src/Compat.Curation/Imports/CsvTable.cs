using System.Globalization;
using System.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;

namespace Compat.Curation.Imports;

/// <summary>A row of a table of text, with its number: the headings are row 1.</summary>
/// <param name="Number">Its number, as a spreadsheet counts.</param>
/// <param name="Cells">Its cells, as text whatever they look like.</param>
public sealed record CsvRow(int Number, IReadOnlyList<string> Cells);

/// <summary>What is wrong in a table of text.</summary>
/// <param name="Row">The row, from 1.</param>
/// <param name="Column">The column, from 1.</param>
/// <param name="Message">What is wrong.</param>
internal sealed record CsvFault(int Row, int Column, string Message);

/// <summary>Reads tables of text separated by commas, semicolons or tabs: quoted cells, line ends of every kind, UTF-8 or Windows-1252.</summary>
internal static class CsvTable
{
    private const int MostBytes = 256 * 1024 * 1024;

    /// <summary>The characters of Windows-1252 at 0x80..0x9F; where it has none, the control character itself.</summary>
    private const string Upper =
        "\u20AC\u0081\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\u008D\u017D\u008F\u0090\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\u009D\u017E\u0178";

    /// <summary>Reads the rows of a file of at most 256 MB; it may be a pipe.</summary>
    /// <param name="path">The file; it is shown by this name.</param>
    /// <param name="faults">Takes what keeps it from being read.</param>
    /// <param name="fault">What is wrong in its rows; null where nothing is.</param>
    /// <returns>The rows, up to the fault where there is one; null where the file cannot be read.</returns>
    public static IReadOnlyList<CsvRow>? ReadFile(string path, List<Diagnostic> faults, out CsvFault? fault)
    {
        fault = null;
        return SourceReader.ReadBytes(path, path, faults, MostBytes) is { } bytes ? Read(bytes, out fault) : null;
    }

    /// <summary>Reads all rows; empty ones are left out but counted.</summary>
    /// <param name="bytes">The bytes of the file.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    /// <returns>The rows; up to the fault where there is one.</returns>
    public static IReadOnlyList<CsvRow> Read(ReadOnlySpan<byte> bytes, out CsvFault? fault)
    {
        var text = Decode(bytes);
        var separator = SeparatorOf(text);
        var rows = new List<CsvRow>();
        fault = null;
        var at = 0;
        for (var number = 1; at < text.Length; number++)
        {
            var cells = ReadRow(text, separator, ref at, number, out fault);
            if (fault is not null) break;
            if (cells.Exists(cell => cell.Length > 0)) rows.Add(new(number, cells));
        }

        return rows;
    }

    /// <summary>The text of bytes: UTF-8 where they are that, else Windows-1252.</summary>
    internal static string Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith("\uFEFF"u8)) bytes = bytes[3..];
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            var text = new StringBuilder(bytes.Length);
            foreach (var one in bytes) text.Append(one is >= 0x80 and <= 0x9F ? Upper[one - 0x80] : (char)one);
            return text.ToString();
        }
    }

    /// <summary>The separator that stands most often in the first row outside quotes.</summary>
    private static char SeparatorOf(string text)
    {
        var counts = new Dictionary<char, int> { [','] = 0, [';'] = 0, ['\t'] = 0 };
        var quoted = false;
        foreach (var c in text)
        {
            if (c == '"') quoted = !quoted;
            else if (!quoted && c is '\n' or '\r') break;
            else if (!quoted && counts.TryGetValue(c, out var count)) counts[c] = count + 1;
        }

        return counts.MaxBy(pair => pair.Value).Key;
    }

    private static List<string> ReadRow(string text, char separator, ref int at, int number, out CsvFault? fault)
    {
        var cells = new List<string>();
        fault = null;
        while (true)
        {
            cells.Add(text.AsSpan(at) is ['"', ..] ? Quoted(text, separator, ref at, number, cells.Count + 1, out fault) : Bare(text, separator, ref at));
            if (fault is not null || at >= text.Length) return cells;
            if (text[at] == separator)
            {
                at++;
                if (at < text.Length) continue;
                cells.Add("");
                return cells;
            }

            at += text[at] == '\r' && at + 1 < text.Length && text[at + 1] == '\n' ? 2 : 1;
            return cells;
        }
    }

    private static string Bare(string text, char separator, ref int at)
    {
        var start = at;
        while (at < text.Length && text[at] != separator && text[at] is not ('\n' or '\r')) at++;
        return text[start..at].Trim();
    }

    private static string Quoted(string text, char separator, ref int at, int row, int column, out CsvFault? fault)
    {
        var cell = new StringBuilder();
        fault = null;
        for (at++; at < text.Length; at++)
        {
            if (text[at] != '"')
            {
                cell.Append(text[at]);
            }
            else if (at + 1 < text.Length && text[at + 1] == '"')
            {
                cell.Append('"');
                at++;
            }
            else
            {
                at++;
                if (at < text.Length && text[at] != separator && text[at] is not ('\n' or '\r'))
                    fault = new(
                        row, column,
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"there is text behind the closing quote, at `{text.Substring(at, Math.Min(12, text.Length - at)).Split('\n')[0]}`"));
                return cell.ToString().Trim();
            }
        }

        fault = new(row, column, "a quote is opened and never closed");
        return "";
    }
}
