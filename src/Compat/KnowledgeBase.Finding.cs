using System.Diagnostics.CodeAnalysis;
using Compat.Validation;

namespace Compat;

public sealed partial class KnowledgeBase
{
    /// <summary>Finds a part type by its id, its name or what it is also called, capitals aside.</summary>
    /// <param name="name">The id or name.</param>
    /// <param name="part">The part type, or null.</param>
    /// <param name="nearest">Where it was not found: those of that name where there are several, else up to three whose id or name is near.</param>
    /// <returns>Whether exactly one was found.</returns>
    public bool TryFindPart(string name, [NotNullWhen(true)] out PartType? part, out IReadOnlyList<PartId> nearest) =>
        TryFind(Data.Parts, name, p => p.Id, p => [p.Name, .. p.AlsoCalled], out part, out nearest);

    /// <summary>Finds an agent class by its id, its name or what it is also called, capitals aside.</summary>
    /// <param name="name">The id or name.</param>
    /// <param name="agent">The agent class, or null.</param>
    /// <param name="nearest">Where it was not found: those of that name where there are several, else up to three whose id or name is near.</param>
    /// <returns>Whether exactly one was found.</returns>
    public bool TryFindAgent(string name, [NotNullWhen(true)] out AgentClass? agent, out IReadOnlyList<AgentId> nearest) =>
        TryFind(Data.Agents, name, a => a.Id, a => [a.Name, .. a.AlsoCalled], out agent, out nearest);

    /// <summary>Finds a product of the sites by its id or what its site calls it, capitals aside.</summary>
    /// <param name="name">The id or name.</param>
    /// <param name="product">The product, or null.</param>
    /// <param name="nearest">Where it was not found: those of that name where there are several, else up to three whose id or name is near.</param>
    /// <returns>Whether exactly one was found.</returns>
    public bool TryFindProduct(string name, [NotNullWhen(true)] out Product? product, out IReadOnlyList<ProductId> nearest) =>
        TryFind(Sites.SelectMany(site => site.Products), name, p => p.Id, p => [p.Name], out product, out nearest);

    /// <summary>Finds a device of the sites by its id or what its site calls it, capitals aside.</summary>
    /// <param name="name">The id or name.</param>
    /// <param name="device">The device, or null.</param>
    /// <param name="nearest">Where it was not found: those of that name where there are several, else up to three whose id or name is near.</param>
    /// <returns>Whether exactly one was found.</returns>
    public bool TryFindDevice(string name, [NotNullWhen(true)] out Device? device, out IReadOnlyList<DeviceId> nearest) =>
        TryFind(Sites.SelectMany(site => site.Devices), name, d => d.Id, d => [d.Name], out device, out nearest);

    private static bool TryFind<TRecord,
        TId>(IEnumerable<TRecord> records, string name, Func<TRecord, TId> id, Func<TRecord, string[]> names, out TRecord? found,
        out IReadOnlyList<TId> nearest)
        where TRecord : class
        where TId : Id
    {
        found = null;
        nearest = [];
        if (name is null) return false;
        var wanted = name.Trim();
        var called = new List<TRecord>();
        var byName = new Dictionary<string, TId>(StringComparer.OrdinalIgnoreCase);
        foreach (var record in records)
        {
            if (id(record).Value == wanted)
            {
                found = record;
                return true;
            }

            if (Array.Exists(names(record), one => string.Equals(one, wanted, StringComparison.OrdinalIgnoreCase))) called.Add(record);
            foreach (var one in names(record))
                if (!byName.ContainsKey(one)) byName.Add(one, id(record));
            byName[id(record).Value] = id(record);
        }

        if (called.Count == 1) found = called[0];
        else if (called.Count > 1) nearest = called.Select(id).ToArray();
        else nearest = NearestNames.Of(wanted, byName.Keys).Select(near => byName[near]).Distinct().ToArray();
        return found is not null;
    }
}
