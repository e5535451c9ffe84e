using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Shelving;

/// <summary>Writes a shelf for people: text, markdown, or CSV that a spreadsheet opens without running anything.</summary>
internal static class ShelfTable
{
    /// <summary>Text: each part with its products by what they are to it.</summary>
    public static void Text(Page page, Shelf shelf)
    {
        foreach (var row in shelf.Rows)
        {
            page.Line($"{row.Device}/{row.Part.Id} ({string.Join(" or ", row.Part.OneOfTypes)}; needs {ShelfWording.Need(row.Need)}){(row.IsUnserved ? ": no product serves it" : "")}", 0, 2);
            if (row.NeedsNothing) page.Line(ShelfWording.Of(ShelfWord.NothingNeeded), 2, 4);
            else foreach (var group in row.Cells.GroupBy(ShelfWording.Of).OrderByDescending(group => group.First().Word)) page.Line($"{group.Key}: {string.Join(", ", group.Select(cell => cell.Product))}", 2, 4);
        }

        page.Blank();
        page.Line(Sum(shelf), 0, 2);
        Cautions(page);
    }

    /// <summary>A markdown table, a column a product.</summary>
    public static void Markdown(TextWriter output, Shelf shelf)
    {
        foreach (var cells in Cells(shelf, headings: true).Select((cells, i) => (cells, i)))
        {
            output.Write("| " + string.Join(" | ", cells.cells.Select(Cli.Text.Markdown.Plain)) + " |\n");
            if (cells.i == 0) output.Write("|" + string.Concat(Enumerable.Repeat(" --- |", cells.cells.Length)) + "\n");
        }

        output.Write("\n" + Sum(shelf) + "\n\n");
        foreach (var caution in VerdictWording.Cautions) output.Write("- " + caution + "\n");
    }

    /// <summary>CSV: every cell in quotes; what a spreadsheet would take for a formula starts with a tab.</summary>
    public static void Csv(TextWriter output, Shelf shelf)
    {
        foreach (var cells in Cells(shelf, headings: true)) output.Write(string.Join(",", cells.Select(Quoted)) + "\r\n");
    }

    /// <summary>A cell that no spreadsheet runs.</summary>
    public static string Quoted(string text)
    {
        var safe = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? "\t" + text : text;
        return "\"" + Printable.Of(safe.TrimStart('\t')).Insert(0, safe.StartsWith('\t') ? "\t" : "").Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
    }

    /// <summary>The cautions that end what tells someone what to do.</summary>
    public static void Cautions(Page page)
    {
        page.Heading("Cautions");
        foreach (var caution in VerdictWording.Cautions) page.Item(caution);
    }

    private static IEnumerable<string[]> Cells(Shelf shelf, bool headings)
    {
        if (headings) yield return ["device", "part", "needs", .. shelf.Products.Select(product => product.Value)];
        foreach (var row in shelf.Rows)
            yield return [row.Device.Value, row.Part.Id.Value, ShelfWording.Need(row.Need), .. row.Cells.Select(ShelfWording.Of)];
    }

    private static string Sum(Shelf shelf) =>
        FormattableString.Invariant($"{shelf.Rows.Count} parts, {shelf.Products.Count} products; no product serves {shelf.Rows.Count(row => row.IsUnserved)} of the parts; {shelf.Rows.Count(row => row.NeedsNothing)} need nothing.");
}
