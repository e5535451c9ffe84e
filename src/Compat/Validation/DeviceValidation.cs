namespace Compat.Validation;

/// <summary>Checks a device and its instructions.</summary>
internal static class DeviceValidation
{
    private const int MostSerialRanges = 1_024;
    private const int MostEditionSets = 128;

    public static void Check(Scope scope, Device device)
    {
        var place = new ProblemPlace(RecordKind.Device, device.Id.Value);
        if (device.Parts.Count == 0) scope.Add("no-parts", place with { Field = "parts" }, "a device has at least one part");
        var sets = EditionSets(scope, device, place);
        var seen = new HashSet<DevicePartId>();
        for (var i = 0; i < device.Parts.Count; i++)
        {
            if (!seen.Add(device.Parts[i].Id)) scope.Add("duplicate-id", place with { Field = $"parts.{i}.id" }, $"the part `{device.Parts[i].Id}` is given twice");
            DevicePartValidation.Check(scope, device, device.Parts[i], sets, place, $"parts.{i}");
        }

        if (device.Patients is { Count: 0 })
            scope.Add("no-patient", place with { Field = "patients" }, "the list names no kind of patient", "leave it out: the part types say so then");
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

            for (var r = 0; r < edition.Reaches.Count; r++) SiteClaimValidation.Reached(scope, device, edition.Reaches[r], place, $"instructions.{i}.reaches.{r}");
            if (ReplacesItself(device, edition)) scope.Add("edition-cycle", place with { Field = $"instructions.{i}.replaces" }, $"the edition `{edition.Id}` replaces itself");
        }
    }

    /// <summary>How many sets of editions may speak; each is one more variant of every part, so they are kept few.</summary>
    private static int EditionSets(Scope scope, Device device, ProblemPlace place)
    {
        var ranges = device.Instructions.Sum(edition => edition.Serials.Count);
        if (ranges > MostSerialRanges) scope.Add("too-many-editions", place with { Field = "instructions" }, $"{ranges} ranges of serial numbers are more than {MostSerialRanges}", "leave out editions that no device here has");
        var sets = ranges > MostSerialRanges ? 1 : Editions.Possible(device, null).Count;
        if (sets > MostEditionSets) scope.Add("too-many-editions", place with { Field = "instructions" }, $"the ranges of serial numbers make {sets} sets of editions that may speak, more than {MostEditionSets}", "leave out editions that no device here has, or say which replaces which");
        return Math.Min(sets, MostEditionSets);
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
}
