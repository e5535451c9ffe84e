using Compat.Evaluation;
using Compat.Sites;

namespace Compat.Curation.Reviewing;

/// <summary>For each device of two knowledge bases one serial number for each pair of sets of editions that speak: with it the device is asked in both.</summary>
internal sealed class TellingSerials
{
    private readonly Dictionary<DeviceId, SerialNumber?[]> _serials = [];

    public TellingSerials(CompiledBase before, CompiledBase after)
    {
        foreach (var id in before.Devices.Values.Concat(after.Devices.Values).Select(device => device.Id).Distinct())
        {
            var states = new[] { before, after }.Select(kb => kb.Devices.TryGetValue(id, out var device) ? device : null).ToArray();
            var telling = Editions.Telling(states.OfType<Device>().ToArray()).DistinctBy(serial => string.Join("|", states.Select(device => Speaking(device, serial)))).ToArray();
            _serials[id] = telling.Length == 1 ? [null] : telling.Select(serial => (SerialNumber?)serial).ToArray();
        }
    }

    /// <summary>The serial numbers with which a device is asked; null where its editions tell none apart.</summary>
    public IReadOnlyList<SerialNumber?> Of(DeviceId device) => _serials[device];

    private static string Speaking(Device? device, SerialNumber serial) =>
        device is null ? "" : string.Join(" ", Editions.Speaking(device, serial).Select(edition => edition.Value));
}
