namespace Compat.Deciding;

/// <summary>Which editions of a device's instructions speak.</summary>
internal static class Editions
{
    /// <summary>
    /// The editions that speak for the serial number; without one, every distinct set that a possible serial number gives.
    /// An edition speaks where it covers the number and none that replaces it does.
    /// </summary>
    public static IReadOnlyList<IReadOnlyList<InstructionsEdition>> Possible(Device device, SerialNumber? serial)
    {
        var sets = new List<IReadOnlyList<InstructionsEdition>>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var number in serial is { } known ? [known] : Telling([device]).Distinct())
        {
            var covering = device.Instructions.Where(edition => Covers(edition, number)).ToArray();
            var replaced = new HashSet<EditionId>(covering.SelectMany(edition => edition.Replaces));
            var speaking = covering.Where(edition => !replaced.Contains(edition.Id)).ToArray();
            if (seen.Add(string.Join(" ", speaking.Select(edition => edition.Id.Value)))) sets.Add(speaking);
        }

        return sets;
    }

    /// <summary>The editions of any of these sets, by id.</summary>
    public static IReadOnlyList<EditionId> Speaking(Device device, SerialNumber? serial) =>
        Possible(device, serial).SelectMany(set => set).Select(edition => edition.Id).Distinct().OrderBy(id => id).ToArray();

    /// <summary>A serial number for each combination of editions that may speak in several states of one device; null alone where there is but one.</summary>
    /// <param name="states">The states; null where there is no such device.</param>
    public static IReadOnlyList<SerialNumber?> OneOfEach(params Device?[] states)
    {
        var telling = new Dictionary<string, SerialNumber?>(StringComparer.Ordinal);
        foreach (var serial in Telling(states.OfType<Device>().ToArray()))
        {
            var speaking = string.Join("|", states.Select(device => device is null ? "" : string.Join(" ", Speaking(device, serial))));
            if (!telling.ContainsKey(speaking)) telling[speaking] = serial;
        }

        return telling.Count == 1 ? [null] : [.. telling.Values];
    }

    /// <summary>Serial numbers of which one stands for each that any edition of some states of a device tells apart: the ends of ranges, and one that lies in none.</summary>
    private static IEnumerable<SerialNumber> Telling(IReadOnlyList<Device> states)
    {
        var ranges = states.SelectMany(device => device.Instructions).SelectMany(edition => edition.Serials).ToArray();
        foreach (var range in ranges)
        {
            yield return new SerialNumber(range.Prefix, range.First);
            if (range.First > 0) yield return new SerialNumber(range.Prefix, range.First - 1);
            if (range.Last < long.MaxValue) yield return new SerialNumber(range.Prefix, range.Last + 1);
        }

        var other = "other-";
        while (ranges.Any(range => range.Prefix == other)) other += "-";
        yield return new SerialNumber(other, 0);
    }

    private static bool Covers(InstructionsEdition edition, SerialNumber serial) =>
        edition.Serials.Count == 0 || edition.Serials.Any(range => range.Contains(serial));
}
