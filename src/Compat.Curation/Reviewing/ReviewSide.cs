using Compat.Curation.Checking;

namespace Compat.Curation.Reviewing;

/// <summary>What kind of thing is asked about.</summary>
public enum SubjectKind
{
    /// <summary>A part type.</summary>
    PartType,

    /// <summary>A part of a device of a site.</summary>
    DevicePart,

    /// <summary>A material asked alone.</summary>
    Material,
}

/// <summary>A subject with all its variants, of which the worst counts.</summary>
/// <param name="Kind">What kind of thing it is.</param>
/// <param name="Name">Its id; of a device's part <c>device/part</c>.</param>
/// <param name="Serial">The serial number with which a device's part is asked; null where the editions of its instructions tell none apart.</param>
/// <param name="Variants">Its variants; at least one.</param>
internal sealed record ReviewSubject(SubjectKind Kind, string Name, SerialNumber? Serial, IReadOnlyList<Subject> Variants)
{
    /// <summary>The variants as the engine takes them.</summary>
    public IReadOnlyList<PartVariant> Parts { get; } = Variants.Select(one => one.Variant).ToArray();

    /// <summary>The variant that stands the least: what it stands serves for all.</summary>
    public Subject Driest => Variants.MinBy(one => one.Variant.Wettest)!;
}

/// <summary>One of the two knowledge bases: its rules with the boundaries of both, its subjects by kind and name.</summary>
internal sealed class ReviewSide
{
    public ReviewSide(CompiledBase kb, TellingSerials serials, bool isBefore)
    {
        Ground = new Ground(kb);
        IsBefore = isBefore;
        Serials = serials;
        var ofDevices = kb.Devices.Values.OrderBy(device => device.Id)
            .SelectMany(device => serials.Of(device.Id).SelectMany(serial => Subject.DeviceParts(kb, device, serial)));
        Subjects = Grouped(SubjectKind.PartType, Ground.Parts).Concat(Grouped(SubjectKind.DevicePart, ofDevices))
            .Concat(Grouped(SubjectKind.Material, Ground.Materials))
            .ToDictionary(subject => (subject.Kind, subject.Name, subject.Serial));
    }

    public Ground Ground { get; }

    public CompiledBase Kb => Ground.Kb;

    public bool IsBefore { get; }

    /// <summary>The serial numbers with which devices are asked, the same on both sides.</summary>
    public TellingSerials Serials { get; }

    public IReadOnlyDictionary<(SubjectKind Kind, string Name, SerialNumber? Serial), ReviewSubject> Subjects { get; }

    /// <summary>The agent of an id; -1 where there is none.</summary>
    public int AgentOf(string id) => Kb.Agents.TryFind(id, out var agent) ? agent : -1;

    /// <summary>The ids of an agent and all above it.</summary>
    public IEnumerable<string> LineOf(int agent) => Kb.Agents.Upward(agent).Select(node => Kb.Data.Agents[node].Id.Value);

    private static IEnumerable<ReviewSubject> Grouped(SubjectKind kind, IEnumerable<Subject> subjects) =>
        subjects.GroupBy(subject => (subject.Name, subject.Ask.Serial))
            .Select(group => new ReviewSubject(kind, group.Key.Name, group.Key.Serial, group.ToArray()));
}

/// <summary>
/// For each device of two knowledge bases one serial number for each pair of sets of editions that speak: with it the device is asked in both.
/// </summary>
internal sealed class TellingSerials(CompiledBase before, CompiledBase after)
{
    private readonly Dictionary<DeviceId, IReadOnlyList<SerialNumber?>> _serials = before.Devices.Values.Concat(after.Devices.Values)
        .Select(device => device.Id).Distinct()
        .ToDictionary(id => id, id => Editions.OneOfEach(Find(before, id), Find(after, id)));

    /// <summary>The serial numbers with which a device is asked; null where its editions tell none apart.</summary>
    public IReadOnlyList<SerialNumber?> Of(DeviceId device) => _serials[device];

    private static Device? Find(CompiledBase kb, DeviceId id) => kb.Devices.TryGetValue(id, out var device) ? device : null;
}
