using System.CommandLine;
using System.Text.Json;
using Compat.Cli.Json;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Serialization;

namespace Compat.Cli.Commands;

/// <summary><c>compat list</c>: what there is.</summary>
internal sealed class ListCommand : DataCommand
{
    private readonly Argument<string> _kind;

    /// <summary>Makes the command.</summary>
    public ListCommand()
        : base(
            "list",
            "Lists the part types, materials, agent classes, organisms, tests, products or devices there are; trees are shown by indentation.",
            new("The agent classes and their units of strength", "compat list agents"),
            new("The products of a site, as JSON", "compat list products --site site.yaml --json"))
    {
        _kind = new Argument<string>("kind") { HelpName = "parts|materials|agents|organisms|tests|products|devices", Description = "What to list" };
        Arguments.Add(_kind);
    }

    /// <summary>What can be listed.</summary>
    public static IReadOnlyList<string> Kinds { get; } = Catalogue.Kinds;

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var kind = call.Parsed.GetResult(_kind) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_kind)! : "";
        if (kind.Length > 0 && !Kinds.Contains(kind))
            call.Problems.Add(BadInput.Of("unknown-kind", $"there is no list of `{kind}`", $"write one of {string.Join(", ", Kinds)}"));
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        var entries = Catalogue.Of(kb, kind);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => WriteJson(json, kind, entries, kb.Identity));
        else if (call.IsTerminal) WriteTable(call.Stdout, entries);
        else WriteText(new Page(call.Stdout), entries);
        if (entries.Count == 0 && kind is "products" or "devices")
            new Page(call.Stderr).Line($"note: there are no {kind}: they are in a site's own file, `--site FILE`", 0, 2);
        return ExitCode.Done;
    }

    private static void WriteText(Page page, IReadOnlyList<Catalogue.Entry> entries)
    {
        foreach (var entry in entries)
            page.Columns(new string(' ', 2 * entry.Depth) + entry.Id, entry.Name + (entry.Detail is null ? "" : " - " + entry.Detail), 0, 36);
    }

    private static void WriteTable(TextWriter stdout, IReadOnlyList<Catalogue.Entry> entries) =>
        TerminalTable.Write(stdout, ["id", "name", "detail"], entries.Select(entry => new[] { new string(' ', 2 * entry.Depth) + entry.Id, entry.Name, entry.Detail ?? "" }));

    private static void WriteJson(Utf8JsonWriter json, string kind, IReadOnlyList<Catalogue.Entry> entries, IReadOnlyList<DataIdentity> identity)
    {
        json.WriteStartObject();
        json.WriteList(kind, entries, entry => entry.Write(json, null));
        json.WriteIdentity(identity);
        json.WriteEndObject();
    }
}
