using System.CommandLine;
using System.Globalization;
using Compat.Cli.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;
using Compat.Curation.Imports;

namespace Compat.Cli.Commands;

/// <summary><c>compat site import</c>: devices off an asset list.</summary>
internal sealed class SiteImportCommand : DataCommand
{
    private readonly Argument<string> _file;
    private readonly Argument<string> _list;
    private readonly Option<string[]> _columns;

    /// <summary>Makes the command.</summary>
    public SiteImportCommand()
        : base(
            json: false,
            "import",
            "Makes devices of an asset list by the shipped patterns: one for each kind and model, with its usual parts. Every row that has no place is listed; running it again changes nothing.",
            new("The column is asked once and kept in the site file", "compat site import my-site.yaml devices.csv"),
            new("With its columns named", "compat site import my-site.yaml devices.csv --columns device=Description --columns model=Type"))
    {
        _file = new Argument<string>("file") { HelpName = "FILE", Description = "The site file" };
        _list = new Argument<string>("list") { HelpName = "LIST.csv", Description = "The asset list: commas, semicolons or tabs, UTF-8 or Windows-1252" };
        Arguments.Add(_file);
        Arguments.Add(_list);
        _columns = Many("--columns", "NAME=HEADING", "The heading of the column `device` (what kind it is) or `model`");
    }

    /// <inheritdoc/>
    public override IReadOnlyList<string> ExitCodes { get; } = ["0 every row is placed", "1 some rows are not placed; the others are"];

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var given = Given(call);
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        var path = call.Parsed.GetValue(_file)!;
        var list = call.Parsed.GetValue(_list)!;
        var faults = new List<Diagnostic>();
        if (SiteEditor.Open(kb, path, faults) is not { } editor) return Report(call, faults);
        if (Rows(call, list) is not { } rows) return ExitCode.BadInput;
        if (rows.Count == 0) return BadInput.Report([BadInput.Of("empty-list", $"`{list}` has no rows")], call.Stderr);
        var headings = rows[0].Cells;
        var columns = new ImportColumns(
            given.GetValueOrDefault("device") ?? editor.Columns?.Device ?? AskedFor(call, headings),
            given.GetValueOrDefault("model") ?? editor.Columns?.Model);
        if (Find(call, headings, columns.Device) is not { } device) return BadInput.Report(call.Problems, call.Stderr);
        var model = columns.Model is null ? null : Find(call, headings, columns.Model);
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);

        var import = DeviceImport.Of(rows.Skip(1), device, model, DevicePattern.Shipped, editor.KnowledgeBase.Sites.SelectMany(site => site.Devices).ToArray());
        var added = import.Placed.Where(one => one.IsNew).Select(one => one.Device).ToArray();
        var before = editor.Text;
        if (!editor.Add(added, faults) || !editor.Keep(columns, faults)) return Report(call, faults);
        Show(new Page(call.Stdout), import, rows);
        var code = editor.Text == before ? ExitCode.Done : SiteCommand.Save(call, path, editor.Save, $"{path}: {added.Length} devices added");
        return code == ExitCode.Done && import.Unplaced.Count > 0 ? ExitCode.NotAllowed : code;
    }

    private static void Show(Page page, DeviceImport import, IReadOnlyList<CsvRow> rows)
    {
        foreach (var one in import.Placed)
            page.Columns(one.Device.Id.Value, string.Create(CultureInfo.InvariantCulture, $"{one.Rows} {(one.Rows == 1 ? "row" : "rows")}{(one.IsNew ? "" : ", there already")}"), 0, 36);
        foreach (var one in import.Unplaced)
            page.Line(string.Create(CultureInfo.InvariantCulture, $"row {one.Row.Number} not placed: {one.Why}: {Printable.Of(string.Join(" | ", one.Row.Cells))}"), 0, 2);
        page.Line(string.Create(CultureInfo.InvariantCulture, $"{rows.Count - 1} rows: {import.Placed.Sum(one => one.Rows)} placed on {import.Placed.Count} devices, {import.Unplaced.Count} not placed"), 0, 2);
    }

    /// <summary>Reads the list; null where it cannot be read, which has been said then.</summary>
    private static IReadOnlyList<CsvRow>? Rows(Call call, string list)
    {
        var faults = new List<Diagnostic>();
        var rows = CsvTable.ReadFile(list, faults, out var fault);
        if (rows is null) Report(call, faults);
        if (rows is null || fault is null) return rows;
        var heading = rows.Count > 0 && fault.Column <= rows[0].Cells.Count ? $" (`{rows[0].Cells[fault.Column - 1]}`)" : "";
        BadInput.Report([BadInput.Of("bad-list", string.Create(CultureInfo.InvariantCulture, $"{list}: row {fault.Row}, column {fault.Column}{heading}: {fault.Message}"), "nothing was written")], call.Stderr);
        return null;
    }

    private Dictionary<string, string> Given(Call call)
    {
        var given = new Dictionary<string, string>();
        foreach (var text in call.Parsed.GetValue(_columns) ?? [])
        {
            var cut = text.IndexOf('=', StringComparison.Ordinal);
            var name = cut < 0 ? text : text[..cut];
            if (cut < 1 || cut == text.Length - 1 || name is not ("device" or "model"))
                call.Problems.Add(BadInput.Of("bad-column", $"`{text}` names no column", "write `device=HEADING` or `model=HEADING`", "columns"));
            else if (!given.TryAdd(name, text[(cut + 1)..]))
                call.Problems.Add(BadInput.Of("given-twice", $"the column `{name}` is given twice", null, "columns"));
        }

        return given;
    }

    private static string AskedFor(Call call, IReadOnlyList<string> headings)
    {
        new Page(call.Stderr).Line($"which column says what kind of device it is? {string.Join(", ", headings.Select(Printable.Of))}:", 0, 2);
        return call.Stdin.ReadLine()?.Trim() ?? "";
    }

    private static int? Find(Call call, IReadOnlyList<string> headings, string heading)
    {
        for (var i = 0; i < headings.Count; i++)
            if (string.Equals(headings[i], heading, StringComparison.OrdinalIgnoreCase)) return i;
        call.Problems.Add(BadInput.Of("unknown-column", $"there is no column `{heading}`", "its columns are " + string.Join(", ", headings.Take(30).Select(one => $"`{Printable.Of(one)}`")), "columns"));
        return null;
    }

    private static int Report(Call call, List<Diagnostic> faults)
    {
        call.Stderr.Write(DiagnosticText.Render(faults));
        return ExitCode.BadInput;
    }
}
