using Compat.Knowledge;
using Compat.Sites;

namespace Compat.Evaluation;

/// <summary>Turns what a question asks about into the variants of a part. The question passed validation.</summary>
internal static class PartResolver
{
    public static IReadOnlyList<PartVariant> Variants(CompiledBase kb, Question question)
    {
        if (question.Device is { } deviceId)
        {
            var device = kb.Devices[deviceId];
            var part = device.Parts.First(p => p.Id == question.DevicePart);
            var speaking = Editions.Speaking(device, question.Serial);
            return part.OneOfTypes.SelectMany(type => OfType(kb, kb.Parts[type.Value], Stated(question) ?? part.Materials, part, device, speaking, part.OneOfTypes.Count > 1)).ToArray();
        }

        if (question.Part is { } id) return OfType(kb, kb.Parts[id.Value], Stated(question), null, null, [], false).ToArray();
        return Choices(question.Materials).Select(choice => new PartVariant
        {
            Member = Member(choice, question.Materials, null),
            Part = -1,
            Materials = choice.Select(m => kb.Materials[m.Value]).Distinct().ToArray(),
            MaterialsKnown = true,
            Wettest = ApplicationMethod.Immerse,
            Never = [],
            Geometry = Geometry.Open,
            Duties = [],
        }).ToArray();
    }

    private static IReadOnlyList<MaterialSlot>? Stated(Question question) => question.Materials.Count == 0 ? null : question.Materials;

    private static IEnumerable<PartVariant> OfType(
        CompiledBase kb, int type, IReadOnlyList<MaterialSlot>? stated, DevicePart? part, Device? device, IReadOnlyList<InstructionsEdition> speaking, bool typeIsChoice)
    {
        var traits = kb.Part(type);
        var ofType = traits.Materials.SelectMany(slot => slot.OneOf).Select(m => kb.Materials[m.Value]).ToArray();
        var slots = stated ?? traits.Materials;
        foreach (var choice in Choices(slots))
        {
            var materials = choice.Select(m => kb.Materials[m.Value]).Distinct().ToArray();
            yield return new PartVariant
            {
                Member = Member(choice, slots, typeIsChoice ? traits.Part.Id.Value : null),
                Part = type,
                Materials = materials,
                MaterialsKnown = stated is null ? traits.MaterialsKnown : stated != part?.Materials || (part.MaterialsKnown ?? true),
                MaterialsStated = stated is not null,
                TypeAllowedReaches = stated is null || materials.All(m => ofType.Any(of => kb.Materials.IsAtOrBelow(m, of))),
                Wettest = part?.Wettest is { } wettest && (part.WettestFrom is null || speaking.Any(e => e.Id == part.WettestFrom)) ? wettest : traits.Wettest,
                Never = traits.Never,
                Geometry = part?.Geometry ?? traits.Geometry,
                Duties = traits.Duties,
                Device = device,
                DevicePart = part?.Id,
            };
        }
    }

    private static IEnumerable<IReadOnlyList<MaterialId>> Choices(IReadOnlyList<MaterialSlot> slots)
    {
        IEnumerable<IReadOnlyList<MaterialId>> choices = [[]];
        foreach (var slot in slots)
            choices = choices.SelectMany(choice => slot.OneOf.Select(m => (IReadOnlyList<MaterialId>)[.. choice, m]));
        return choices;
    }

    private static string? Member(IReadOnlyList<MaterialId> choice, IReadOnlyList<MaterialSlot> slots, string? type)
    {
        var members = slots.Select((slot, i) => slot.OneOf.Count > 1 ? choice[i].Value : null).Where(m => m is not null).ToList();
        if (type is not null) members.Insert(0, type);
        return members.Count == 0 ? null : string.Join(" + ", members);
    }
}
