namespace Compat.Deciding;

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
            return sets.SelectMany(set => part.OneOfTypes.SelectMany(type => OfType(kb, kb.Parts[type.Value], question, new OnDevice(device, part, set, sets.Count > 1)))).ToArray();
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
        var list = MaterialList.Of(traits.Materials, traits.MaterialsKnown, part, question, (low, high) => kb.Materials.IsAtOrBelow(kb.Materials[low.Value], kb.Materials[high.Value]));
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
        if (on is { IsOneOfSeveral: true }) members.Add(on.Editions.Count == 0 ? "no edition" : "edition " + string.Join(" and ", on.Editions.Select(e => e.Id.Value)));
        return members.Count == 0 ? null : string.Join(" + ", members);
    }

    /// <summary>A part of a device, with one set of editions that can speak for it.</summary>
    private sealed record OnDevice(Device Device, DevicePart Part, IReadOnlyList<InstructionsEdition> Editions, bool IsOneOfSeveral);
}
