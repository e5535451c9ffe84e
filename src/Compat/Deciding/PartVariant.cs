namespace Compat.Deciding;

/// <summary>One choice for every one-of of a part: the worst variant counts.</summary>
internal sealed record PartVariant
{
    /// <summary>The chosen members, for the reader; null where there was no choice.</summary>
    public string? Member { get; init; }

    /// <summary>The part type, or -1 where materials alone are asked.</summary>
    public required int Part { get; init; }

    public required int[] Materials { get; init; }

    public required bool MaterialsKnown { get; init; }

    /// <summary>Whether the materials are stated by a device part or the question in place of the type's.</summary>
    public bool MaterialsStated { get; init; }

    /// <summary>Whether an 'allowed' of the type reaches it: stated materials lie at or below those of the type.</summary>
    public bool TypeAllowedReaches { get; init; } = true;

    public required ApplicationMethod Wettest { get; init; }

    public required IReadOnlyList<Act> Never { get; init; }

    public required Geometry Geometry { get; init; }

    public required IReadOnlyList<Duty> Duties { get; init; }

    public Device? Device { get; init; }

    public DevicePartId? DevicePart { get; init; }

    /// <summary>The editions of the device's instructions that speak.</summary>
    public IReadOnlyList<InstructionsEdition> Editions { get; init; } = [];

    public bool MaterialsAlone => Part < 0;

    public bool Stands(ApplicationMethod method) =>
        MaterialsAlone || method == ApplicationMethod.Chamber || method <= Wettest;

    public bool Stands(DutyWay way) =>
        MaterialsAlone || ((way.Method is not { } method || Stands(method)) && (way.Act is not { } act || !NeverStands(act)));

    public bool NeverStands(Act act)
    {
        for (var i = 0; i < Never.Count; i++)
            if (Never[i] == act) return true;
        return false;
    }

    /// <summary>A duty without ways can always be met; else one way must be stood.</summary>
    public bool CanMeet(Duty duty)
    {
        for (var i = 0; i < duty.Ways.Count; i++)
            if (Stands(duty.Ways[i])) return true;
        return duty.Ways.Count == 0;
    }

    /// <summary>The first of some duties that can be met in no way; null where all can.</summary>
    public Duty? FirstUnmet(IReadOnlyList<Duty> duties)
    {
        for (var i = 0; i < duties.Count; i++)
            if (!CanMeet(duties[i])) return duties[i];
        return null;
    }

    /// <summary>The ways by which the part stands an end of the exposure time; in a gap only running liquid reaches.</summary>
    public IReadOnlyList<DutyWay> EndingWays(bool leavesNothing)
    {
        var ways = new List<DutyWay>();
        var open = Geometry == Geometry.Open || MaterialsAlone;
        if (leavesNothing && open)
        {
            ways.Add(DutyWay.Air);
            if (Stands(DutyWay.By(Act.SoftCloth))) ways.Add(DutyWay.By(Act.SoftCloth));
            return ways;
        }

        if (open) AddWet(ApplicationMethod.DampWipe);
        if (open) AddWet(ApplicationMethod.WetWipe);
        AddWet(ApplicationMethod.Rinse);
        AddWet(ApplicationMethod.Immerse);
        return ways;

        void AddWet(ApplicationMethod method)
        {
            if (Stands(method)) ways.Add(new DutyWay { Method = method, Water = WaterGrade.Running });
        }
    }
}

/// <summary>Turns what a question asks about into the variants of a part. The question passed validation.</summary>
internal static class PartResolver
{
    public static IReadOnlyList<PartVariant> Variants(CompiledBase kb, Question question)
    {
        if (question.Device is { } deviceId)
        {
            var device = kb.Devices[deviceId];
            var part = device.Parts.First(p => p.Id == question.DevicePart);
            var sets = Editions.Possible(device, question.Serial);
            return sets.SelectMany(set =>
                part.OneOfTypes.SelectMany(type => OfType(kb, kb.Parts[type.Value], question, new OnDevice(device, part, set, sets.Count > 1)))).ToArray();
        }

        if (question.Part is { } id) return OfType(kb, kb.Parts[id.Value], question, null).ToArray();
        return Choices(question.Materials).Select(choice => new PartVariant
        {
            Member = Member(choice, question.Materials, null, null),
            Part = -1,
            Materials = Nodes(kb, choice),
            MaterialsKnown = question.MaterialsKnown ?? true,
            Wettest = ApplicationMethod.Immerse,
            Never = [],
            Geometry = Geometry.Open,
            Duties = [],
        }).ToArray();
    }

    private static IEnumerable<PartVariant> OfType(CompiledBase kb, int type, Question question, OnDevice? on)
    {
        var part = on?.Part;
        var speaking = on?.Editions ?? [];
        var traits = kb.Part(type);
        var list = MaterialList.Of(traits.Materials, traits.MaterialsKnown, part,
            question, (low, high) => kb.Materials.IsAtOrBelow(kb.Materials[low.Value], kb.Materials[high.Value]));
        var stated = list.Slots.Count > list.OfType;
        foreach (var choice in Choices(list.Slots))
        {
            yield return new PartVariant
            {
                Member = Member(choice, list.Slots, on, traits.Part.Id.Value),
                Part = type,
                Materials = Nodes(kb, choice),
                MaterialsKnown = list.IsKnown,
                MaterialsStated = stated,
                TypeAllowedReaches = !stated || choice.Skip(list.OfType).All(m => IsBelowCertain(kb, traits, m)),
                Wettest = part?.Wettest is { } wettest && (part.WettestFrom is null || speaking.Any(e => e.Id == part.WettestFrom)) ? wettest : traits.Wettest,
                Never = traits.Never,
                Geometry = part?.Geometry ?? traits.Geometry,
                Duties = traits.Duties,
                Device = on?.Device,
                Editions = speaking,
                DevicePart = part?.Id,
            };
        }
    }

    private static bool IsBelowCertain(CompiledBase kb, PartTraits traits, MaterialId material) =>
        traits.CertainMaterials.Any(of => kb.Materials.IsAtOrBelow(kb.Materials[material.Value], kb.Materials[of.Value]));

    /// <summary>The materials by number, each once.</summary>
    private static int[] Nodes(CompiledBase kb, IReadOnlyList<MaterialId> materials)
    {
        var nodes = new List<int>();
        foreach (var material in materials)
            if (kb.Materials[material.Value] is var node && !nodes.Contains(node)) nodes.Add(node);
        return nodes.ToArray();
    }

    private static IEnumerable<IReadOnlyList<MaterialId>> Choices(IReadOnlyList<MaterialSlot> slots)
    {
        IEnumerable<IReadOnlyList<MaterialId>> choices = [[]];
        foreach (var slot in slots)
            choices = choices.SelectMany(choice => slot.OneOf.Select(m => (IReadOnlyList<MaterialId>)[.. choice, m]));
        return choices;
    }

    private static string? Member(IReadOnlyList<MaterialId> choice, IReadOnlyList<MaterialSlot> slots, OnDevice? on, string? type)
    {
        var members = new List<string>();
        for (var i = 0; i < slots.Count; i++)
            if (slots[i].OneOf.Count > 1) members.Add(choice[i].Value);
        if (type is not null && on?.Part.OneOfTypes.Count > 1) members.Insert(0, type);
        if (on is { IsOneOfSeveral: true }) members.Add(on.Editions.Count == 0 ? "no edition"
            : "edition " + string.Join(" and ", on.Editions.Select(e => e.Id.Value)));
        return members.Count == 0 ? null : string.Join(" + ", members);
    }

    /// <summary>A part of a device, with one set of editions that can speak for it.</summary>
    private sealed record OnDevice(Device Device, DevicePart Part, IReadOnlyList<InstructionsEdition> Editions, bool IsOneOfSeveral);
}

/// <summary>The materials of a part: those of its type with what its device part and the question name laid on them.</summary>
/// <param name="Slots">The entries; those that are still the type's own come first.</param>
/// <param name="OfType">How many of them are the type's own.</param>
/// <param name="IsKnown">Whether these are all.</param>
internal sealed record MaterialList(IReadOnlyList<MaterialSlot> Slots, int OfType, bool IsKnown)
{
    /// <summary>The list of one type.</summary>
    /// <param name="ofType">What the type has.</param>
    /// <param name="known">Whether that is all.</param>
    /// <param name="part">The device part, if one is asked.</param>
    /// <param name="question">The question; null where none is asked.</param>
    /// <param name="isAtOrBelow">Whether the first material is the second or lies below it.</param>
    public static MaterialList Of(IReadOnlyList<MaterialSlot> ofType, bool known, DevicePart? part, Question? question, Func<MaterialId, MaterialId,
        bool> isAtOrBelow)
    {
        var list = new MaterialList(ofType, ofType.Count, known);
        if (part?.Materials is { } ofPart) list = list.With(ofPart, part.MaterialsKnown, isAtOrBelow);
        return question is null ? list : list.With(question.Materials, question.MaterialsKnown, isAtOrBelow);
    }

    /// <summary>How many ways there are to take one of each entry.</summary>
    public static long Variants(IEnumerable<MaterialSlot> slots) => slots.Aggregate(1L, (n, slot) => Math.Min(1_000_000, n * Math.Max(1, slot.OneOf.Count)));

    private MaterialList With(IReadOnlyList<MaterialSlot> named, bool? isAll, Func<MaterialId, MaterialId, bool> isAtOrBelow)
    {
        if (named.Count == 0) return this;
        if (isAll == true) return new MaterialList(named, 0, true);
        var decided = new HashSet<int>();
        var laid = new List<MaterialSlot>();
        foreach (var slot in named)
        {
            if (slot.OneOf.All(name => Slots.Any(entry => entry.OneOf.All(one => isAtOrBelow(one, name))))) continue;
            var at = Decided(slot, isAtOrBelow);
            if (at >= 0) decided.Add(at);
            laid.Add(at < 0 ? slot : new MaterialSlot([.. slot.OneOf.Union(Slots[at].OneOf.Where(one => slot.OneOf.Any(name => isAtOrBelow(one, name))))]));
        }

        MaterialSlot[] left = [.. Slots.Where((_, at) => !decided.Contains(at)), .. laid];
        return new MaterialList(left, OfType - decided.Count(at => at < OfType), isAll ?? IsKnown);
    }

    /// <summary>The one entry with several candidates that a name is about, or -1.</summary>
    private int Decided(MaterialSlot named, Func<MaterialId, MaterialId, bool> isAtOrBelow)
    {
        var found = -1;
        for (var at = 0; at < Slots.Count; at++)
        {
            if (Slots[at].OneOf.Count < 2 || !named.OneOf.Any(name => IsAbout(Slots[at], name))) continue;
            if (found >= 0) return -1;
            found = at;
        }

        return found >= 0 && named.OneOf.All(name => IsAbout(Slots[found], name)) ? found : -1;

        bool IsAbout(MaterialSlot entry, MaterialId name) => entry.OneOf.Any(one => isAtOrBelow(one, name) || isAtOrBelow(name, one));
    }
}

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

    /// <summary>Serial numbers of which one stands for each that any edition of some states of a device tells apart: the ends of ranges, and one that lies in
    /// none.</summary>
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
