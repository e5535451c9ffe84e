using System.Text.Json;
using Compat.Serialization;

namespace Compat.Cli.Wording;

/// <summary>What there is in a knowledge base, in the order of its trees.</summary>
public static class Catalogue
{
    /// <summary>One record.</summary>
    /// <param name="Kind">The kind of list it stands in.</param>
    /// <param name="Id">Its id.</param>
    /// <param name="Name">Its name.</param>
    /// <param name="Under">The id of its parent, or null.</param>
    /// <param name="Depth">How deep in its tree it lies.</param>
    /// <param name="AlsoCalled">Everyday names.</param>
    /// <param name="Cas">CAS numbers.</param>
    /// <param name="Ec">EC numbers.</param>
    /// <param name="Detail">What else a reader needs, or null.</param>
    public sealed record Entry(string Kind, string Id, string Name, string? Under, int Depth, IReadOnlyList<string> AlsoCalled, IReadOnlyList<string> Cas, IReadOnlyList<string> Ec, string? Detail)
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

    /// <summary>The kinds of list.</summary>
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
            string.Join(", ", product.Ingredients.Select(part => $"{part.Agent?.Value ?? part.Unknown}{(part.Strength is { } strength ? " " + strength : "")}"))))),
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
