using System.CommandLine;
using Compat.Cli.Json;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Validation;

namespace Compat.Cli.Commands;

/// <summary><c>compat find</c>: anything by id, name, everyday name or CAS number.</summary>
internal sealed class FindCommand : DataCommand
{
    private readonly Argument<string> _word;

    /// <summary>Makes the command.</summary>
    public FindCommand()
        : base(
            "find",
            "Finds parts, materials, agents, products and devices by id, name, everyday name or CAS number, and says why each matched.",
            new("By a CAS number", "compat find 67-63-0"),
            new("By an everyday name", "compat find bleach"))
    {
        _word = new Argument<string>("word") { HelpName = "WORD|CAS", Description = "A word, part of a word, or a CAS number" };
        Arguments.Add(_word);
    }

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var word = call.Parsed.GetResult(_word) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_word)!.Trim() : "";
        if (word.Length == 0 && call.Problems.Count == 0) call.Problems.Add(BadInput.Of("no-word", "there is no word to look for"));
        if (IsCas(word) && !CasCheckDigitHolds(word))
            call.Problems.Add(BadInput.Of("bad-cas", $"`{word}` is no CAS number: its check digit does not hold", "look for a slip in its digits"));
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);

        var entries = ListCommand.Kinds.SelectMany(kind => Catalogue.Of(kb, kind)).ToArray();
        var found = entries
            .Select(entry => (entry, match: Match(entry, word)))
            .Where(pair => pair.match is not null)
            .OrderBy(pair => pair.match!.Value.Rank)
            .Select(pair => (pair.entry, why: pair.match!.Value.Why))
            .ToArray();
        if (WantsJson(call))
        {
            JsonWriting.Document(call.Stdout, json =>
            {
                json.WriteStartObject();
                json.WriteString("word", word);
                json.WriteList("found", found, pair => pair.entry.Write(json, pair.why));
                json.WriteIdentity(kb.Identity);
                json.WriteEndObject();
            });
        }
        else if (call.IsTerminal && found.Length > 0)
        {
            TerminalTable.Write(call.Stdout, ["id", "name", "kind", "why"], found.Select(pair => new[] { pair.entry.Id, pair.entry.Name, pair.entry.Kind, pair.why }));
        }
        else
        {
            var page = new Page(call.Stdout);
            foreach (var (entry, why) in found) page.Columns(entry.Id, $"{entry.Name} ({entry.Kind}): {why}", 0, 32);
        }

        if (found.Length > 0) return ExitCode.Done;
        var near = NearestNames.Help(word.ToLowerInvariant(), entries.SelectMany(entry => entry.AlsoCalled.Append(entry.Name).Append(entry.Id)).Select(name => name.ToLowerInvariant()));
        new Page(call.Stderr).Line($"note: nothing is called `{word}`" + (near is null ? "" : "; " + near), 0, 2);
        return ExitCode.NotAllowed;
    }

    private static (int Rank, string Why)? Match(Catalogue.Entry entry, string word)
    {
        if (entry.Cas.Contains(word)) return (0, $"its CAS number is {word}");
        if (Same(entry.Id, word)) return (0, "its id");
        if (Same(entry.Name, word)) return (1, "its name");
        if (entry.AlsoCalled.FirstOrDefault(name => Same(name, word)) is { } same) return (1, $"also called `{same}`");
        if (Holds(entry.Name, word)) return (2, $"its name holds `{word}`");
        if (entry.AlsoCalled.FirstOrDefault(name => Holds(name, word)) is { } held) return (3, $"also called `{held}`");
        return Holds(entry.Id, word) ? (4, $"its id holds `{word}`") : null;
    }

    private static bool Same(string name, string word) => string.Equals(name, word, StringComparison.OrdinalIgnoreCase);

    private static bool Holds(string name, string word) => name.Contains(word, StringComparison.OrdinalIgnoreCase);

    private static bool IsCas(string word)
    {
        var pieces = word.Split('-');
        return pieces.Length == 3 && pieces[0].Length is >= 2 and <= 7 && pieces[1].Length == 2 && pieces[2].Length == 1
            && pieces.All(piece => piece.All(char.IsAsciiDigit));
    }

    /// <summary>The last digit is the sum of the others, each times its place counted from the right, modulo 10.</summary>
    private static bool CasCheckDigitHolds(string word)
    {
        var digits = word.Where(char.IsAsciiDigit).Select(digit => digit - '0').ToArray();
        var sum = 0;
        for (var place = 1; place < digits.Length; place++) sum += place * digits[digits.Length - 1 - place];
        return sum % 10 == digits[^1];
    }
}
