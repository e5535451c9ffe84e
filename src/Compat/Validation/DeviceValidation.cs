using Compat.Sites;

namespace Compat.Validation;

/// <summary>Checks a device and its instructions.</summary>
internal static class DeviceValidation
{
    public static void Check(Scope scope, Device device)
    {
        var place = new ProblemPlace(RecordKind.Device, device.Id.Value);
        if (device.Parts.Count == 0) scope.Add("no-parts", place with { Field = "parts" }, "a device has at least one part");
        var seen = new HashSet<DevicePartId>();
        for (var i = 0; i < device.Parts.Count; i++)
        {
            if (!seen.Add(device.Parts[i].Id)) scope.Add("duplicate-id", place with { Field = $"parts.{i}.id" }, $"the part `{device.Parts[i].Id}` is given twice");
            Part(scope, device, device.Parts[i], place, $"parts.{i}");
        }

        var editions = new HashSet<EditionId>();
        for (var i = 0; i < device.Instructions.Count; i++)
        {
            var edition = device.Instructions[i];
            if (!editions.Add(edition.Id)) scope.Add("duplicate-id", place with { Field = $"instructions.{i}.id" }, $"the edition `{edition.Id}` is given twice");
            if (edition.Source is { } source) scope.Knows(scope.Sources, source, place, $"instructions.{i}.source", "source");
            for (var r = 0; r < edition.Replaces.Count; r++)
            {
                if (device.Instructions.All(e => e.Id != edition.Replaces[r]))
                    scope.Add("unknown-edition", place with { Field = $"instructions.{i}.replaces.{r}" }, $"unknown edition `{edition.Replaces[r]}`", NearestNames.Help(edition.Replaces[r].Value, device.Instructions.Select(e => e.Id.Value)));
            }

            if (ReplacesItself(device, edition)) scope.Add("edition-cycle", place with { Field = $"instructions.{i}.replaces" }, $"the edition `{edition.Id}` replaces itself");
        }
    }

    private static bool ReplacesItself(Device device, InstructionsEdition edition)
    {
        var seen = new HashSet<EditionId>();
        var open = new Stack<EditionId>(edition.Replaces);
        while (open.Count > 0)
        {
            var id = open.Pop();
            if (id == edition.Id) return true;
            if (!seen.Add(id)) continue;
            foreach (var next in device.Instructions.Where(e => e.Id == id).SelectMany(e => e.Replaces)) open.Push(next);
        }

        return false;
    }

    private static void Part(Scope scope, Device device, DevicePart part, ProblemPlace place, string field)
    {
        if (part.OneOfTypes.Count == 0) scope.Add("empty-one-of", place with { Field = field + ".type" }, "the part names no type");
        for (var t = 0; t < part.OneOfTypes.Count; t++)
        {
            var type = part.OneOfTypes[t];
            var typeField = part.OneOfTypes.Count > 1 ? $"{field}.type.one-of.{t}" : field + ".type";
            if (!scope.Knows(scope.Parts, type, place, typeField, "part") || part.Wettest is not { } wettest) continue;
            var ofType = scope.Upward(type).Select(p => p.Wettest).FirstOrDefault(w => w is not null) ?? ApplicationMethod.DryWipe;
            if (wettest > ofType && part.WettestFrom is null)
                scope.Add("wetter-without-instructions", place with { Field = field + ".wettest" }, $"`{Words.Of(wettest)}` is wetter than `{type}` stands ({Words.Of(ofType)})", "only instructions can say so: name their edition in `wettest-from`");
        }

        if (part.WettestFrom is { } from && device.Instructions.All(e => e.Id != from))
            scope.Add("unknown-edition", place with { Field = field + ".wettest-from" }, $"unknown edition `{from}`", NearestNames.Help(from.Value, device.Instructions.Select(e => e.Id.Value)));
        if (part.Wettest == ApplicationMethod.Chamber) scope.Add("chamber-no-wetness", place with { Field = field + ".wettest" }, "`chamber` lies outside the ladder of wetness");
        if (part.Materials is { } slots) KnowledgeValidation.Slots(scope, place, field + ".materials", slots);
        else if (part.MaterialsKnown is not null) scope.Add("known-without-materials", place with { Field = field + ".materials-known" }, "`materials-known` without `materials`");
    }
}
