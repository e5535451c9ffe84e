using System.CommandLine;
using Compat.Cli.Json;
using Compat.Cli.Lookup;
using Compat.Cli.Text;
using Compat.Serialization;
using Compat.Validation;

namespace Compat.Cli.Commands;

/// <summary><c>compat find</c>: anything by id, name, everyday name, CAS or EC number.</summary>
internal sealed class FindCommand : DataCommand
{
    private readonly Argument<string> _word;

    /// <summary>Makes the command.</summary>
    public FindCommand()
        : base(
            "find",
            "Finds parts, materials, agents, organisms, products and devices by id, name, everyday name, CAS or EC number, or a name misspelt; nearest first, with why each matched.",
            new("By a CAS number", "compat find 67-63-0"),
            new("By an everyday name", "compat find bleach"))
    {
        _word = new Argument<string>("word") { HelpName = "WORD|NUMBER", Description = "A word, part of a word, or a CAS or EC number" };
        Arguments.Add(_word);
    }

    /// <inheritdoc/>
    public override IReadOnlyList<string> ExitCodes { get; } = ["0 found", "1 nothing is called that; the nearest names are shown"];

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var word = call.Parsed.GetResult(_word) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_word)!.Trim() : "";
        if (word.Length == 0 && call.Problems.Count == 0) call.Problems.Add(BadInput.Of("no-word", "there is no word to look for"));
        if (RegistryNumbers.Fault(word) is { } fault) call.Problems.Add(BadInput.Of(RegistryNumbers.LooksLikeCas(word) ? "bad-cas" : "bad-ec", fault, "look for a slip in its digits"));
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);

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
            TerminalTable.Write(call.Stdout, ["id", "name", "kind", "why"], found.Select(one => new[] { one.Entry.Id, one.Entry.Name, one.Entry.Kind, one.Why }));
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
