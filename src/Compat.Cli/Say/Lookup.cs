using System.Text.Json;

namespace Compat.Cli.Say;

/// <summary>What there is in a knowledge base, in the order of its trees.</summary>
internal static class Catalogue
{
    /// <summary>One record.</summary>
    /// <param name="Under">The id of its parent, or null.</param>
    /// <param name="Detail">What else a reader needs, or null.</param>
    public sealed record Entry(string Kind, string Id, string Name, string? Under, int Depth, IReadOnlyList<string> AlsoCalled, IReadOnlyList<string> Cas,
        IReadOnlyList<string> Ec, string? Detail)
    {
        /// <summary>Writes the record, and why it matched where it was looked for.</summary>
        public void Write(Utf8JsonWriter json, string? why)
        {
            json.WriteStartObject();
            json.WriteString("kind", Kind);
            json.WriteString("id", Id);
            json.WriteString("name", Name);
            if (Under is not null) json.WriteString("under", Under);
            json.WriteStringList("alsoCalled", AlsoCalled);
            json.WriteStringList("cas", Cas);
            json.WriteStringList("ec", Ec);
            if (Detail is not null) json.WriteString("detail", Detail);
            if (why is not null) json.WriteString("why", why);
            json.WriteEndObject();
        }
    }

    public static IReadOnlyList<string> Kinds { get; } = ["parts", "materials", "agents", "organisms", "tests", "products", "devices"];

    /// <summary>The records of one kind: parts, materials, agents, organisms, tests, products or devices.</summary>
    public static IReadOnlyList<Entry> Of(KnowledgeBase kb, string kind) => kind switch
    {
        "parts" => InTree(kb.Data.Parts.Select(part => new Entry(kind, part.Id.Value, part.Name, part.Under?.Value, 0, part.AlsoCalled, [], [], null))),
        "materials" => InTree(kb.Data.Materials.Select(material => new Entry(
            kind, material.Id.Value, material.Name, material.Under?.Value, 0, material.AlsoCalled, [], [],
            material.Delicate is { } delicate ? "delicate: " + Words.Of(delicate) : null))),
        "agents" => InTree(kb.Data.Agents.Select(agent => new Entry(
            kind, agent.Id.Value, agent.Name, agent.Under?.Value, 0, agent.AlsoCalled, agent.Cas, agent.Ec,
            agent.Basis is { } unit ? "strength in " + unit : null))),
        "organisms" => InTree(kb.Data.Organisms.Select(organism => new Entry(
            kind, organism.Id.Value, organism.Name, null, 0, organism.AlsoCalled, [], [], NeedWording.Group(organism.Group)))),
        "tests" => Tests(kb, new Names(kb)),
        "products" => InTree(kb.Sites.SelectMany(site => site.Products).Select(product => new Entry(
            kind, product.Id.Value, product.Name, null, 0, [], [], [],
            string.Join(
                ", ", product.Ingredients.Select(part => $"{part.Agent?.Value ?? part.Unknown}{(part.Strength is { } strength ? " " + strength : "")}"))))),
        _ => InTree(kb.Sites.SelectMany(site => site.Devices).Select(device => new Entry(
            kind, device.Id.Value, device.Name, null, 0, [], [], [], string.Join(", ", device.Parts.Select(part => part.Id))))),
    };

    private static List<Entry> Tests(KnowledgeBase kb, Names names) => InTree(kb.Data.TestStandards.Select(test => new Entry(
        "tests", test.Code.Value, test.Name, null, 0, [], [], [], TestWording.Shows(test, names))));

    private static List<Entry> InTree(IEnumerable<Entry> entries)
    {
        var byParent = entries.OrderBy(entry => entry.Id, StringComparer.Ordinal).ToLookup(entry => entry.Under);
        var list = new List<Entry>();
        Add(null, 0);
        return list;

        void Add(string? parent, int depth)
        {
            foreach (var entry in byParent[parent])
            {
                list.Add(entry with { Depth = depth });
                Add(entry.Id, depth + 1);
            }
        }
    }
}

/// <summary>One record that was found.</summary>
internal sealed record Found(Catalogue.Entry Entry, int Rank, string Why);

/// <summary>Finds records by what people say: number, id, name, everyday name, a word of one, a plural, a slip of the pen; and what holds what was
/// found.</summary>
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
            : said.Length >= 3 && Named(entry, name => Plain(name).Contains(said, StringComparison.Ordinal)) is { } piece
                ? new(entry, ByPiece, $"also called `{piece}`") : null;
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
                    .Where(agent => named.Any(one => one.Kind == "agents" && _names.IsAtOrBelow(agent, one.Id))).Select(agent => $"it holds {agent}")
                        .FirstOrDefault()
                : _names.FindDevice(entry.Id)!.Parts
                    .Where(part => part.OneOfTypes.Any(type => named.Any(one => one.Kind == "parts" && _names.IsAtOrBelow(type.Value, one.Id))))
                        .Select(part => $"its part {part.Id} is one").FirstOrDefault();
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

    private static bool Starts(string name, string said) => said.Length >= 2 && Plain(name).Split(' ')
        .Any(word => word.StartsWith(said, StringComparison.Ordinal));

    private static string Singular(string word) => word.Length > 3 && word.EndsWith('s') && !word.EndsWith("ss", StringComparison.Ordinal) ? word[..^1] : word;

    private static string Plain(string text) =>
        string.Join(' ', text.ToLowerInvariant().Split([' ', '-', '_', '\u00a0', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries));

    private static int Distance(string said, string near) => NearestNames.Of(said, [near]).Count == 0 ? 9
        : Math.Abs(said.Length - near.Length) + said.Zip(near).Count(pair => pair.First != pair.Second);
}

/// <summary>Numbers that a safety data sheet prints beside a substance: CAS (<c>67-63-0</c>) and EC (<c>200-661-7</c>).</summary>
internal static class RegistryNumbers
{
    /// <summary>Whether a text has the shape of a CAS number, whatever its check digit.</summary>
    public static bool LooksLikeCas(string text) =>
        text.Split('-') is [{ Length: >= 2 and <= 7 } first, { Length: 2 } middle, { Length: 1 } check] && AreDigits(first + middle + check);

    /// <summary>What is wrong with a number by its check digit; null where nothing is, or where it is no such number.</summary>
    public static string? Fault(string text) =>
        LooksLikeCas(text) && !CasNumber.IsValid(text) ? $"`{text}` is no CAS number: its check digit does not hold"
        : EcNumber.HasShape(text) && !EcNumber.IsValid(text) ? $"`{text}` is no EC number: its check digit does not hold"
        : null;

    private static bool AreDigits(string text) => text.All(char.IsAsciiDigit);
}
