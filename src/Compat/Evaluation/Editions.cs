using Compat.Sites;

namespace Compat.Evaluation;

/// <summary>Which editions of a device's instructions speak.</summary>
internal static class Editions
{
    /// <summary>An edition speaks where some possible serial number is covered by it and by none that replaces it.</summary>
    public static IReadOnlyList<InstructionsEdition> Speaking(Device device, SerialNumber? serial) =>
        device.Instructions.Where(edition => Speaks(edition, device.Instructions, serial)).ToArray();

    private static bool Speaks(InstructionsEdition edition, IReadOnlyList<InstructionsEdition> all, SerialNumber? serial)
    {
        var replacing = all.Where(other => other.Replaces.Contains(edition.Id)).ToArray();
        if (serial is { } known) return Covers(edition, known) && !replacing.Any(other => Covers(other, known));
        if (replacing.Any(other => other.Serials.Count == 0)) return false;
        if (edition.Serials.Count == 0) return true;
        return edition.Serials.Any(range => Remains(range, replacing.SelectMany(other => other.Serials)));
    }

    private static bool Covers(InstructionsEdition edition, SerialNumber serial) =>
        edition.Serials.Count == 0 || edition.Serials.Any(range => range.Contains(serial));

    private static bool Remains(SerialRange range, IEnumerable<SerialRange> taken)
    {
        var next = range.First;
        foreach (var other in taken.Where(t => t.Prefix == range.Prefix).OrderBy(t => t.First))
        {
            if (other.First > next) break;
            if (other.Last >= range.Last) return false;
            next = Math.Max(next, other.Last + 1);
        }

        return next <= range.Last;
    }
}
