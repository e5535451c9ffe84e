using System.Text.RegularExpressions;
using Compat.Tests.Shipped;

namespace Compat.Tests.Meaning;

/// <summary>A fenced block of a page: its words behind the fence, its lines, and the line it starts at.</summary>
internal sealed record Block(string Info, IReadOnlyList<string> Lines, int Line);

/// <summary>One clause: its number, its name, the page it stands in, and the blocks of its examples in order.</summary>
internal sealed record Clause(string Number, string Name, string Page, int Line)
{
    public List<Block> Blocks { get; } = [];

    public string Family => Number[..1];

    public int Place => int.Parse(Number[1..], System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>The pages of src/Compat/Meaning: the glossary, the common base and the clauses.</summary>
internal static partial class MeaningPages
{
    public const string Folder = "src/Compat/Meaning";

    public static IReadOnlyDictionary<string, string[]> All { get; } = Directory.EnumerateFiles(RepositoryFile.Of("src", "Compat", "Meaning"), "*.md")
        .Order(StringComparer.Ordinal).ToDictionary(path => Path.GetFileName(path), File.ReadAllLines);

    /// <summary>The clauses in the order of the pages. A block belongs to the clause above it.</summary>
    public static IReadOnlyList<Clause> Clauses { get; } = All.SelectMany(page => ClausesOf(page.Key, page.Value)).ToArray();

    /// <summary>The blocks of the workshop: what every example starts from.</summary>
    public static IReadOnlyList<Block> Workshop { get; } = BlocksOf(All["workshop.md"]).ToArray();

    /// <summary>The terms of the glossary in order, each with its line.</summary>
    public static IReadOnlyList<(string Term, string Line)> Glossary { get; } = All["README.md"]
        .SkipWhile(line => line != "## Glossary").Select(line => (Match: Term().Match(line), Line: line)).Where(one => one.Match.Success)
        .Select(one => (one.Match.Groups[1].Value, one.Line)).ToArray();

    private static IEnumerable<Clause> ClausesOf(string page, string[] lines)
    {
        var blocks = BlocksOf(lines).ToArray();
        var heads = lines.Select((text, at) => (Match: Head().Match(text), At: at)).Where(one => one.Match.Success).ToArray();
        for (var i = 0; i < heads.Length; i++)
        {
            var end = i + 1 < heads.Length ? heads[i + 1].At : lines.Length;
            var clause = new Clause(heads[i].Match.Groups[1].Value, heads[i].Match.Groups[2].Value, page, heads[i].At + 1);
            clause.Blocks.AddRange(blocks.Where(block => block.Line > heads[i].At && block.Line < end));
            yield return clause;
        }
    }

    public static IEnumerable<Block> BlocksOf(string[] lines)
    {
        for (var at = 0; at < lines.Length; at++)
        {
            if (!lines[at].StartsWith("```", StringComparison.Ordinal)) continue;
            var (info, start) = (lines[at][3..].Trim(), at);
            var end = Array.IndexOf(lines, "```", at + 1);
            yield return new(info, lines[(start + 1)..end], start);
            at = end;
        }
    }

    [GeneratedRegex(@"^\*\*([A-Z]\d+) (.+?)\.\*\*")]
    private static partial Regex Head();

    [GeneratedRegex(@"^- \*\*(.+?)\*\*:")]
    private static partial Regex Term();
}
