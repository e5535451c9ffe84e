using System.CommandLine;
using System.Text.Json;
using Compat.Cli.Json;

namespace Compat.Cli.Commands;

/// <summary><c>compat find</c>: anything by id, name, everyday name, CAS or EC number.</summary>
internal sealed class FindCommand : DataCommand
{
    private readonly Argument<string> _word;

    public FindCommand()
        : base(
            "find",
            "Finds parts, materials, agents, organisms, products and devices by id, name, everyday name, CAS or EC number, or a name misspelt; nearest "
                + "first, with why each matched.",
            new("By a CAS number", "compat find 67-63-0"),
            new("By an everyday name", "compat find bleach"))
    {
        _word = new Argument<string>("word") { HelpName = "WORD|NUMBER", Description = "A word, part of a word, or a CAS or EC number" };
        Arguments.Add(_word);
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 found", "1 nothing is called that; the nearest names are shown"];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var word = call.Parsed.GetResult(_word) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_word)!.Trim() : "";
        if (word.Length == 0 && call.Problems.Count == 0) call.Note("no-word", "there is no word to look for");
        if (RegistryNumbers.Fault(word) is { } fault) call.Note(RegistryNumbers.LooksLikeCas(word) ? "bad-cas"
            : "bad-ec", fault, "look for a slip in its digits");
        if (call.Problems.Count > 0) return call.Report();

        var found = new Finder(kb).Of(word);
        if (WantsJson(call))
        {
            JsonDocuments.Write(call.Stdout, json =>
            {
                json.WriteStartObject();
                json.WriteString("word", word);
                json.WriteList("found", found, one => one.Entry.Write(json, one.Why));
                json.WriteIdentity(kb.Identity);
                json.WriteEndObject();
            });
        }
        else if (call.IsTerminal && found.Count > 0)
        {
            TerminalTable.Write(call.Stdout, ["id", "name", "kind", "why"], found.Select(
                one => new[] { one.Entry.Id, one.Entry.Name, one.Entry.Kind, one.Why }));
        }
        else
        {
            var page = new Page(call.Stdout);
            foreach (var one in found) page.Columns(one.Entry.Id, $"{one.Entry.Name} ({one.Entry.Kind}): {one.Why}", 0, 32);
        }

        if (found.Count > 0 && found[0].Rank < Finder.BySlip) return ExitCode.Done;
        var help = found.Count > 0 ? "; what is near it is listed" : EcNumber.HasShape(word) ? "; try the CAS number beside it" : "";
        new Page(call.Stderr).Line($"note: nothing is called `{word}`{help}", 0, 2);
        return ExitCode.NotAllowed;
    }
}

/// <summary><c>compat list</c>: what there is.</summary>
internal sealed class ListCommand : DataCommand
{
    private readonly Argument<string> _kind;

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

    public static IReadOnlyList<string> Kinds { get; } = Catalogue.Kinds;

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var kind = call.Parsed.GetResult(_kind) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_kind)! : "";
        if (kind.Length > 0 && !Kinds.Contains(kind))
            call.Note("unknown-kind", $"there is no list of `{kind}`", $"write one of {string.Join(", ", Kinds)}");
        if (call.Problems.Count > 0) return call.Report();
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
        TerminalTable.Write(stdout, ["id", "name", "detail"], entries.Select(entry =>
            new[] { new string(' ', 2 * entry.Depth) + entry.Id, entry.Name, entry.Detail ?? "" }));

    private static void WriteJson(Utf8JsonWriter json, string kind, IReadOnlyList<Catalogue.Entry> entries, IReadOnlyList<DataIdentity> identity)
    {
        json.WriteStartObject();
        json.WriteList(kind, entries, entry => entry.Write(json, null));
        json.WriteIdentity(identity);
        json.WriteEndObject();
    }
}
