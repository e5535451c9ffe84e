namespace Compat.Curation.Checking;

/// <summary>One thing that can be asked about, with one choice for every one-of: a material alone, a part type, a part of a device.</summary>
/// <param name="Name">What a reader calls it.</param>
/// <param name="Variant">The variant.</param>
/// <param name="Ask">A question about it, without agent and exposure.</param>
/// <param name="Voice">The rules of the voice of the part and device.</param>
internal sealed record Subject(string Name, PartVariant Variant, Question Ask, CompiledRule[] Voice)
{
    private readonly bool _endsFilm = Variant.EndingWays(leavesNothing: false).Count > 0;
    private readonly bool _endsNothing = Variant.EndingWays(leavesNothing: true).Count > 0;

    /// <summary>Whether no finite exposure time ends on it.</summary>
    public bool EndsNowhere(bool leavesNothing) => leavesNothing ? !_endsNothing : !_endsFilm;

    /// <summary>Whether the exposure time asked is always the one judged.</summary>
    public bool EndsAlways => _endsFilm && _endsNothing;

    /// <summary>The methods by which something can be brought onto it.</summary>
    public MethodSet Stood { get; } = MethodSet.Of(MethodSet.All.Methods.Where(Variant.Stands).ToArray());

    /// <summary>Every material alone, by id.</summary>
    public static IEnumerable<Subject> Materials(CompiledBase kb) => kb.Data.Materials.OrderBy(material => material.Id)
        .SelectMany(material => Of(kb, material.Id.Value, new Question { Materials = [new MaterialSlot(material.Id)] }));

    /// <summary>Every variant of every part type, by id.</summary>
    public static IEnumerable<Subject> Parts(CompiledBase kb) => kb.Data.Parts.OrderBy(part => part.Id)
        .SelectMany(part => Of(kb, part.Id.Value, new Question { Part = part.Id }));

    /// <summary>Every variant of every part of every device, by id.</summary>
    public static IEnumerable<Subject> DeviceParts(CompiledBase kb) => kb.Devices.Values.OrderBy(device => device.Id)
        .SelectMany(device => DeviceParts(kb, device, serial: null));

    /// <summary>Every variant of every part of one device, for one serial number or, where that is null, for every set of editions that may speak.</summary>
    public static IEnumerable<Subject> DeviceParts(CompiledBase kb, Device device, SerialNumber? serial) =>
        device.Parts.SelectMany(part => Of(kb, $"{device.Id}/{part.Id}", new Question { Device = device.Id, DevicePart = part.Id, Serial = serial }));

    private static IEnumerable<Subject> Of(CompiledBase kb, string name, Question ask)
    {
        foreach (var variant in PartResolver.Variants(kb, ask))
            yield return new Subject(name, variant, ask, Reach.PartAndDevice(kb, variant).ToArray());
    }
}
