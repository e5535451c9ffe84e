using System.CommandLine;
using System.Globalization;
using Compat.Cli.Input;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;
using Compat.Curation.Imports;

namespace Compat.Cli.Commands;

/// <summary><c>compat site</c>: starts and fills a site file.</summary>
internal sealed class SiteCommand : CliCommand
{
    public SiteCommand()
        : base(
            "site",
            "Starts a site file and fills it: products off their safety data sheets, devices off an asset list. The file is replaced whole or not at all.",
            new("A new file that passes as it stands", "compat site new --out my-site.yaml"),
            new("Devices off an asset list", "compat site import my-site.yaml devices.csv --columns device=Description"))
    {
        Subcommands.Add(new SiteNewCommand());
        Subcommands.Add(new SiteProductCommand());
        Subcommands.Add(new SiteImportCommand());
    }

    public override int Execute(Call call)
    {
        if (call.Problems.Count == 0) call.Note("no-command", "`site` needs new, add-product or import", "see `compat site --help`");
        return call.Report();
    }
}

/// <summary><c>compat site new</c>: a commented site file that passes as it stands.</summary>
internal sealed class SiteNewCommand : CliCommand
{
    private readonly Option<string?> _out;
    private readonly Option<string?> _id;
    private readonly Option<string?> _name;

    public SiteNewCommand()
        : base(
            "new",
            "Writes a new site file with comments that say what to write where. It passes as it stands; a file that is there is never written over.",
            new("A file to fill", "compat site new --out my-site.yaml"),
            new("With its id and name", "compat site new --out ward.yaml --id ward-three --name \"ward three\""))
    {
        _out = One("--out", "FILE", "The file to write");
        _id = One("--id", "ID", "The id of the site; `my-site` where left out");
        _name = One("--name", "NAME", "What it is called; the id where left out");
    }

    public override int Execute(Call call)
    {
        var path = call.Parsed.GetValue(_out);
        var id = call.Parsed.GetValue(_id) ?? "my-site";
        if (path is null && call.Problems.Count == 0) call.Note("missing-out", "`site new` needs --out FILE");
        if (!Id.IsWellFormed(id)) call.Note("id", $"`{id}` is no id", "write lower-case words joined by single hyphens", "id");
        if (path is not null && (File.Exists(path) || Directory.Exists(path))) call.Note(
            "already-there", $"`{path}` is there already", "name another file", "out");
        if (call.Problems.Count > 0) return call.Report();
        var name = call.Parsed.GetValue(_name) is { Length: > 0 } given ? given : id;
        return call.Save(path!, () => WholeFile.Create(path!, SiteStart.Text(new SiteId(id), name)), $"{path}: written");
    }
}

/// <summary><c>compat site add-product</c>: a product off its safety data sheet.</summary>
internal sealed class SiteProductCommand : DataCommand
{
    private readonly Argument<string> _file;
    private readonly Option<string?> _from;

    public SiteProductCommand()
        : base(
            json: false,
            "add-product",
            "Adds a product to a site file: asks what its safety data sheet and label say, section by section, or reads the answers from a file; says what "
                + "each fact opens or closes on the devices so far.",
            new("Asked line by line", "compat site add-product my-site.yaml"),
            new("From a file of answers (section-1, section-3, section-9, label)", "compat site add-product my-site.yaml --from spirit-wipe.yaml"))
    {
        _file = new Argument<string>("file") { HelpName = "FILE", Description = "The site file" };
        Arguments.Add(_file);
        _from = One("--from", "ANSWERS", "Read the answers from this YAML file and ask nothing");
    }

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        if (call.Problems.Count > 0) return call.Report();
        var path = call.Parsed.GetValue(_file)!;
        var faults = new List<Diagnostic>();
        if (SiteEditor.Open(kb, path, faults) is not { } editor) return call.Refuse(faults);
        var answers = call.Parsed.GetValue(_from) is { } from ? ProductAnswers.ReadFile(from, kb.Data) : Asked(call, kb, editor.Site);
        if (answers is null) return call.Refuse("answers-ended", "the answers ended before the product was whole", "nothing was written");
        faults.AddRange(answers.Diagnostics);
        if (answers.Product is not { } product || faults.Count > 0) return call.Refuse(faults);
        if (editor.KnowledgeBase.Sites.SelectMany(site => site.Products).Any(one => one.Id == product.Id))
            return call.Refuse([At(answers, new("already-there", new(RecordKind.Product, product.Id.Value, "id"), $"there is a product `{product.Id}` already",
                "two formulations of one product are two products: give it another id"))]);
        var problems = kb.TryWith(editor.Site with { Products = [.. editor.Site.Products, product] }, out _);
        if (problems.Count > 0) return call.Refuse(problems.Select(problem => At(answers, problem)).ToList());

        var page = new Page(call.Stdout);
        if (call.Parsed.GetValue(_from) is not null) foreach (var line in new ProductEffects(kb, editor.Site).Of(product)) page.Line(line, 0, 2);
        foreach (var unknown in product.Ingredients.Where(one => one.Unknown is not null)) page.Line(
            $"no class covers `{unknown.Unknown}`: what it does is not established", 0, 2);
        return editor.Add([product], faults) ? call.Save(path, editor.Save, $"{path}: `{product.Id}` added") : call.Refuse(faults);
    }

    private static ProductAnswers? Asked(Call call, KnowledgeBase kb, Model.Site site) =>
        new ProductPrompt(call.Stdin, new Page(call.Stderr), kb, new ProductEffects(kb, site)).Ask() is { } text
            ? ProductAnswers.Read(text, "answers", kb.Data) : null;

    private static Diagnostic At(ProductAnswers answers, Problem problem) =>
        answers.Places.Find(problem.Place) is { } place ? Diagnostic.At(place, problem.Code, problem.Message, problem.Help)
            : new(problem.Code, problem.Message, problem.Help, problem.Place.Id, null);
}

/// <summary><c>compat site import</c>: devices off an asset list.</summary>
internal sealed class SiteImportCommand : DataCommand
{
    private readonly Argument<string> _file;
    private readonly Argument<string> _list;
    private readonly Option<string[]> _columns;

    public SiteImportCommand()
        : base(
            json: false,
            "import",
            "Makes devices of an asset list by the shipped patterns: one for each kind and model, with its usual parts. Every row that has no place is "
                + "listed; running it again changes nothing.",
            new("The column is asked once and kept in the site file", "compat site import my-site.yaml devices.csv"),
            new("With its columns named", "compat site import my-site.yaml devices.csv --columns device=Description --columns model=Type"))
    {
        _file = new Argument<string>("file") { HelpName = "FILE", Description = "The site file" };
        _list = new Argument<string>("list") { HelpName = "LIST.csv", Description = "The asset list: commas, semicolons or tabs, UTF-8 or Windows-1252" };
        Arguments.Add(_file);
        Arguments.Add(_list);
        _columns = Many("--columns", "NAME=HEADING", "The heading of the column `device` (what kind it is) or `model`");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 every row is placed", "1 some rows are not placed; the others are"];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var given = Given(call);
        if (call.Problems.Count > 0) return call.Report();
        var path = call.Parsed.GetValue(_file)!;
        var list = call.Parsed.GetValue(_list)!;
        var faults = new List<Diagnostic>();
        if (SiteEditor.Open(kb, path, faults) is not { } editor) return call.Refuse(faults);
        if (Rows(call, list) is not { } rows) return ExitCode.BadInput;
        if (rows.Count == 0) return call.Refuse("empty-list", $"`{list}` has no rows");
        var headings = rows[0].Cells;
        var columns = new ImportColumns(
            given.GetValueOrDefault("device") ?? editor.Columns?.Device ?? AskedFor(call, headings),
            given.GetValueOrDefault("model") ?? editor.Columns?.Model);
        if (Find(call, headings, columns.Device) is not { } device) return call.Report();
        var model = columns.Model is null ? null : Find(call, headings, columns.Model);
        if (call.Problems.Count > 0) return call.Report();

        var import = DeviceImport.Of(rows.Skip(1), device, model, DevicePattern.Shipped, editor.KnowledgeBase.Sites.SelectMany(site => site.Devices).ToArray());
        var added = import.Placed.Where(one => one.IsNew).Select(one => one.Device).ToArray();
        var before = editor.Text;
        if (!editor.Add(added, faults) || !editor.Keep(columns, faults)) return call.Refuse(faults);
        Show(new Page(call.Stdout), import, rows);
        var code = editor.Text == before ? ExitCode.Done : call.Save(path, editor.Save, $"{path}: {added.Length} devices added");
        return code == ExitCode.Done && import.Unplaced.Count > 0 ? ExitCode.NotAllowed : code;
    }

    private static void Show(Page page, DeviceImport import, IReadOnlyList<CsvRow> rows)
    {
        foreach (var one in import.Placed)
            page.Columns(one.Device.Id.Value, string.Create(CultureInfo.InvariantCulture,
                $"{English.Count(one.Rows, "row")}{(one.IsNew ? "" : ", there already")}"), 0, 36);
        foreach (var one in import.Unplaced)
            page.Line(string.Create(CultureInfo.InvariantCulture, $"row {one.Row.Number} not placed: {one.Why}: "
                + $"{Printable.Of(string.Join(" | ", one.Row.Cells))}"), 0, 2);
        page.Line(string.Create(CultureInfo.InvariantCulture, $"{rows.Count - 1} rows: {import.Placed.Sum(one => one.Rows)} placed on {import.Placed.Count} "
            + $"devices, {import.Unplaced.Count} not placed"), 0, 2);
    }

    /// <summary>Reads the list; null where it cannot be read, which has been said then.</summary>
    private static IReadOnlyList<CsvRow>? Rows(Call call, string list)
    {
        var faults = new List<Diagnostic>();
        var rows = CsvTable.ReadFile(list, faults, out var fault);
        if (rows is null) call.Refuse(faults);
        if (rows is null || fault is null) return rows;
        var heading = rows.Count > 0 && fault.Column <= rows[0].Cells.Count ? $" (`{rows[0].Cells[fault.Column - 1]}`)" : "";
        call.Refuse("bad-list", string.Create(CultureInfo.InvariantCulture, $"{list}: row {fault.Row}, column {fault.Column}{heading}: {fault.Message}"),
            "nothing was written");
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
                call.Note("bad-column", $"`{text}` names no column", "write `device=HEADING` or `model=HEADING`", "columns");
            else if (!given.TryAdd(name, text[(cut + 1)..]))
                call.Note("given-twice", $"the column `{name}` is given twice", null, "columns");
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
        call.Note("unknown-column", $"there is no column `{heading}`", "its columns are "
            + string.Join(", ", headings.Take(30).Select(one => $"`{Printable.Of(one)}`")), "columns");
        return null;
    }
}
