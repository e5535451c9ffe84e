using System.CommandLine;
using Compat.Cli.Json;

namespace Compat.Cli.Commands;

/// <summary><c>compat shelf</c>: all parts of all devices against all products.</summary>
internal sealed class ShelfCommand : DataCommand
{
    private static readonly string[] Formats = ["text", "markdown", "csv"];
    private readonly Option<string?> _format;
    private readonly Option<string[]> _replace;

    public ShelfCommand()
        : base(
            "shelf",
            "Holds every part of a site's devices against every product on its shelf: which does it, which does it with more, which harms. Parts that no "
                + "product serves come first.",
            new("The shelf of a site", "compat shelf --site data/demo/eye-screening-clinic.yaml"),
            new("What a new product would mean", "compat shelf --site data/demo/eye-screening-clinic.yaml --replace grey-tub-wipe peroxide-wipe"))
    {
        _format = Format(Formats);
        _replace = new Option<string[]>("--replace")
        {
            HelpName = "OLD NEW",
            Description = "What it means to put product NEW in place of OLD",
            Arity = new ArgumentArity(2, 2),
            AllowMultipleArgumentsPerToken = true
        };
        Options.Add(_replace);
    }

    public override IReadOnlyList<string> ExitCodes { get; } =
    [
        "0 every part is served; with --replace: nothing is lost",
        "1 a part is not served; with --replace: something is lost",
    ];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var format = FormatOf(call, _format, Formats);
        var products = kb.Sites.SelectMany(site => site.Products).Select(product => product.Id.Value).ToArray();
        var replace = call.Parsed.GetResult(_replace) is { Tokens.Count: 2 } ? call.Parsed.GetValue(_replace)! : [];
        foreach (var id in replace.Where(id => !products.Contains(id)))
            call.Note("unknown-product", $"there is no product `{id}`", NearestNames.Help(id, products) ?? "products are in a site's own file, `--site FILE`",
                "replace");
        if (call.Problems.Count == 0 && (products.Length == 0 || !kb.Sites.Any(site => site.Devices.Count > 0)))
            call.Note("empty-shelf", products.Length == 0 ? "there are no products" : "there are no devices", "they are in a site's own file, `--site FILE`");
        if (replace.Length > 0 && format != "text") call.Note("replace-format", "a replacement is written as text or JSON", null, "format");
        if (call.Problems.Count > 0) return call.Report();

        Shelf shelf;
        using (var progress = TerminalProgress.Of(call.Stderr, "asking")) shelf = Shelf.Of(kb, progress.Count);
        var change = replace.Length == 0 ? null : Replacement.Of(kb, shelf, new ProductId(replace[0]), new ProductId(replace[1]));
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new ShelfJson(json, NamesOf(kb)).Write(shelf, change));
        else if (change is not null) new ReplacementText(new Page(call.Stdout), NamesOf(kb)).Write(change);
        else if (format == "markdown") ShelfTable.Markdown(call.Stdout, shelf);
        else if (format == "csv") ShelfTable.Csv(call.Stdout, shelf);
        else ShelfTable.Text(new Page(call.Stdout), shelf);
        return (change is null ? shelf.Rows.Any(row => row.IsUnserved) : change.Lost.Count > 0) ? ExitCode.NotAllowed : ExitCode.Done;
    }
}
