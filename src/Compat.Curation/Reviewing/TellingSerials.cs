namespace Compat.Curation.Reviewing;

/// <summary>For each device of two knowledge bases one serial number for each pair of sets of editions that speak: with it the device is asked in both.</summary>
internal sealed class TellingSerials(CompiledBase before, CompiledBase after)
{
    private readonly Dictionary<DeviceId, IReadOnlyList<SerialNumber?>> _serials = before.Devices.Values.Concat(after.Devices.Values).Select(device => device.Id).Distinct()
        .ToDictionary(id => id, id => Editions.OneOfEach(Find(before, id), Find(after, id)));

    /// <summary>The serial numbers with which a device is asked; null where its editions tell none apart.</summary>
    public IReadOnlyList<SerialNumber?> Of(DeviceId device) => _serials[device];

    private static Device? Find(CompiledBase kb, DeviceId id) => kb.Devices.TryGetValue(id, out var device) ? device : null;
}
