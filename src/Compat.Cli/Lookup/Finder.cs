using Compat.Cli.Wording;
using Compat.Validation;

namespace Compat.Cli.Lookup;

/// <summary>One record that was found.</summary>
/// <param name="Entry">The record.</param>
/// <param name="Rank">How near it is: smaller is nearer.</param>
/// <param name="Why">Why it matched, in words.</param>
internal sealed record Found(Catalogue.Entry Entry, int Rank, string Why);

/// <summary>Finds records by what people say: number, id, name, everyday name, a word of one, a plural, a slip of the pen; and what holds what was found.</summary>
internal sealed class Finder
{
    /// <summary>From this rank on nothing has the name: what is listed is near it.</summary>
    public const int BySlip = 7;

    private const int Exact = 1;
    private const int ByContent = 5;
    private const int ByPiece = 6;

    private readonly Names _names;
    private readonly Catalogue.Entry[] _entries;

    /// <summary>Makes a finder over all that a knowledge base and its sites hold.</summary>
    public Finder(KnowledgeBase kb)
    {
        _names = new Names(kb);
        _entries = Catalogue.Kinds.SelectMany(kind => Catalogue.Of(kb, kind)).ToArray();
    }

    /// <summary>What matches, nearest first; slips are looked for only where nothing else matches.</summary>
    public IReadOnlyList<Found> Of(string word)
    {
        var said = Plain(word);
        var found = _entries.Select(entry => Match(entry, word, said)).OfType<Found>().ToList();
        if (found.Count == 0) found = _entries.Select(entry => Slip(entry, said)).OfType<Found>().ToList();
        found.AddRange(Holding(found.Where(one => one.Rank <= Exact || one.Rank >= BySlip).Select(one => one.Entry).ToArray(), found));
        return found.OrderBy(one => one.Rank).ToArray();
    }

    private static Found? Match(Catalogue.Entry entry, string word, string said)
    {
        if (entry.Cas.Contains(word)) return new(entry, 0, $"its CAS number is {word}");
        if (entry.Ec.Contains(word)) return new(entry, 0, $"its EC number is {word}");
        if (Plain(entry.Id) == said && !Same(entry.Name, said)) return new(entry, 0, "its id");
        if (Same(entry.Name, said)) return new(entry, Exact, "its name");
        if (Named(entry, name => Same(name, said)) is { } same) return new(entry, Exact, $"also called `{same}`");
        if (HasWords(entry.Name, said)) return new(entry, 2, $"its name holds `{word}`");
        if (Named(entry, name => HasWords(name, said)) is { } held) return new(entry, 3, $"also called `{held}`");
        if (Named(entry, name => Starts(name, said)) is { } begun) return new(entry, 4, $"also called `{begun}`");
        if (Starts(entry.Name, said)) return new(entry, 4, $"its name holds `{word}`");
        return said.Length >= 3 && (Plain(entry.Name).Contains(said, StringComparison.Ordinal) || Plain(entry.Id).Contains(said, StringComparison.Ordinal))
            ? new(entry, ByPiece, $"its name holds `{word}`")
            : said.Length >= 3 && Named(entry, name => Plain(name).Contains(said, StringComparison.Ordinal)) is { } piece ? new(entry, ByPiece, $"also called `{piece}`") : null;
    }

    private static Found? Slip(Catalogue.Entry entry, string said)
    {
        if (said.Length < 4) return null;
        var names = entry.AlsoCalled.Append(entry.Name).Append(entry.Id).Select(Plain).ToArray();
        return NearestNames.Of(said, names.Concat(names.SelectMany(name => name.Split(' ').Where(word => word.Length >= 4)))) is [var near, ..]
            ? new(entry, BySlip + Distance(said, near), $"`{near}` is near what you wrote")
            : null;
    }

    /// <summary>The products that have an agent which was found, and the devices that have a part which was.</summary>
    private IEnumerable<Found> Holding(IReadOnlyList<Catalogue.Entry> named, List<Found> found)
    {
        var taken = found.Select(one => (one.Entry.Kind, one.Entry.Id)).ToHashSet();
        foreach (var entry in _entries.Where(entry => entry.Kind is "products" or "devices" && !taken.Contains((entry.Kind, entry.Id))))
        {
            var why = entry.Kind == "products"
                ? _names.FindProduct(entry.Id)!.Ingredients.Select(one => one.Agent).OfType<AgentId>()
                    .Where(agent => named.Any(one => one.Kind == "agents" && _names.IsAtOrBelow(agent, one.Id))).Select(agent => $"it holds {agent}").FirstOrDefault()
                : _names.FindDevice(entry.Id)!.Parts
                    .Where(part => part.OneOfTypes.Any(type => named.Any(one => one.Kind == "parts" && _names.IsAtOrBelow(type.Value, one.Id)))).Select(part => $"its part {part.Id} is one").FirstOrDefault();
            if (why is not null) yield return new(entry, ByContent, why);
        }
    }

    private static string? Named(Catalogue.Entry entry, Func<string, bool> fits) => entry.AlsoCalled.FirstOrDefault(fits);

    private static bool Same(string name, string said) => Plain(name) == said || Plain(name) == Singular(said) || Singular(Plain(name)) == said;

    /// <summary>Whether each word said is a word of the name.</summary>
    private static bool HasWords(string name, string said)
    {
        var words = Plain(name).Split(' ');
        return said.Split(' ').All(one => words.Any(word => word == one || word == Singular(one) || Singular(word) == one));
    }

    private static bool Starts(string name, string said) => said.Length >= 2 && Plain(name).Split(' ').Any(word => word.StartsWith(said, StringComparison.Ordinal));

    private static string Singular(string word) => word.Length > 3 && word.EndsWith('s') && !word.EndsWith("ss", StringComparison.Ordinal) ? word[..^1] : word;

    /// <summary>Lower case, hyphens as spaces, nothing doubled.</summary>
    private static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Split([' ', '-', '_', '\u00a0', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries));

    private static int Distance(string said, string near) => NearestNames.Of(said, [near]).Count == 0 ? 9 : Math.Abs(said.Length - near.Length) + said.Zip(near).Count(pair => pair.First != pair.Second);
}
