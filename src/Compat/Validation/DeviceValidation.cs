namespace Compat.Validation;

/// <summary>Checks a device: its parts and its instructions.</summary>
internal static class DeviceValidation
{
    private const int MostSerialRanges = 1_024;
    private const int MostEditionSets = 128;

    /// <summary>How many variants one part of a device may have, over its types, their materials and the sets of editions.</summary>
    private const long MostVariants = 1_024;

    public static void Check(Scope scope, Device device)
    {
        var at = new Field(scope, RecordKind.Device, device.Id.Value);
        if (device.Parts.Count == 0) at["parts"].Wrong("no-parts", "a device has at least one part");
        var sets = EditionSets(device, at["instructions"]);
        var seen = new HashSet<DevicePartId>();
        for (var i = 0; i < device.Parts.Count; i++)
        {
            if (!seen.Add(device.Parts[i].Id)) at["parts"][i]["id"].Wrong("duplicate-id", $"the part `{device.Parts[i].Id}` is given twice");
            Part(scope, device, device.Parts[i], sets, at["parts"][i]);
        }

        if (device.Patients is { Count: 0 })
            at["patients"].Wrong("no-patient", "the list names no kind of patient", "leave it out: the part types say so then");
        var editions = new HashSet<EditionId>();
        for (var i = 0; i < device.Instructions.Count; i++)
        {
            var (edition, field) = (device.Instructions[i], at["instructions"][i]);
            if (!editions.Add(edition.Id)) field["id"].Wrong("duplicate-id", $"the edition `{edition.Id}` is given twice");
            if (edition.Source is { } source) field["source"].Knows(scope.Sources, source, "source");
            for (var r = 0; r < edition.Replaces.Count; r++) field["replaces"][r].Edition(device, edition.Replaces[r]);
            for (var r = 0; r < edition.Reaches.Count; r++) SiteClaimValidation.Reached(scope, device, edition.Reaches[r], field["reaches"][r]);
            if (ReplacesItself(device, edition)) field["replaces"].Wrong("edition-cycle", $"the edition `{edition.Id}` replaces itself");
        }
    }

    /// <summary>How many sets of editions may speak; each is one more variant of every part, so they are kept few.</summary>
    private static int EditionSets(Device device, Field at)
    {
        var ranges = device.Instructions.Sum(edition => edition.Serials.Count);
        if (ranges > MostSerialRanges)
            at.Wrong("too-many-editions", $"{ranges} ranges of serial numbers are more than {MostSerialRanges}", "leave out editions that no device here has");
        var sets = ranges > MostSerialRanges ? 1 : Editions.Possible(device, null).Count;
        if (sets > MostEditionSets)
            at.Wrong("too-many-editions", $"the ranges of serial numbers make {sets} sets of editions that may speak, more than {MostEditionSets}",
                "leave out editions that no device here has, or say which replaces which");
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

    private static void Part(Scope scope, Device device, DevicePart part, int sets, Field at)
    {
        var (types, materials) = (at["type"], at["materials"]);
        if (part.OneOfTypes.Count == 0) types.Wrong("empty-one-of", "the part names no type");
        for (var t = 0; t < part.OneOfTypes.Count; t++)
        {
            if ((part.OneOfTypes.Count > 1 ? types["one-of"][t] : types).Knows(scope.Parts, part.OneOfTypes[t], "part")
                && part is { Wettest: { } wettest, WettestFrom: null })
                Wetter(scope, part.OneOfTypes[t], wettest, "wettest-from", at["wettest"]);
        }

        if (part.WettestFrom is { } from) at["wettest-from"].Edition(device, from);
        if (part.Wettest == ApplicationMethod.Chamber) at["wettest"].Wrong("chamber-no-wetness", "`chamber` lies outside the ladder of wetness");
        if (part.Materials is { } slots) KnowledgeValidation.Slots(scope, materials, slots);
        else if (part.MaterialsKnown is not null) at["materials-known"].Wrong("known-without-materials", "`materials-known` without `materials`");
        Variants(scope, part.OneOfTypes, part, null, sets, part.Materials is null ? at : materials);
        Contact(scope, part, at);
        if (part.WhenDismantled is { } then) Dismantled(scope, device, part, then, at["when-dismantled"]);
    }

    /// <summary>Whether a method is wetter than a type of part stands; only instructions can say so.</summary>
    private static bool Wetter(Scope scope, PartId type, ApplicationMethod wettest, string from, Field at)
    {
        var ofType = scope.Stated(type, p => p.Wettest) ?? ApplicationMethod.DryWipe;
        if (wettest <= ofType) return false;
        at.Wrong(
            "wetter-without-instructions", $"`{Words.Of(wettest)}` is wetter than `{type}` stands ({Words.Of(ofType)})",
            $"only instructions can say so: name their edition in `{from}`");
        return true;
    }

    /// <summary>What is named must leave few enough variants of each type it is laid on.</summary>
    public static void Variants(Scope scope, IReadOnlyList<PartId> types, DevicePart? part, Question? question, int sets, Field at)
    {
        var all = 0L;
        foreach (var type in types)
        {
            var list = MaterialList.Of(scope.Stated(type, p => p.Materials) ?? [], false, part, question, scope.LiesIn);
            var variants = MaterialList.Variants(list.Slots);
            all += variants * sets;
            if (variants <= KnowledgeValidation.MostVariants) continue;
            at.Wrong("too-many-variants", $"with the materials of `{type}` the choices make more than {KnowledgeValidation.MostVariants} variants",
                "name fewer candidates, or all its materials with `materials-known: fully`");
            return;
        }

        if (all > MostVariants)
            at.Wrong("too-many-variants",
                $"its types, their materials and the {sets} sets of editions that may speak make {all} variants, more than {MostVariants}",
                "name fewer candidates, or the serial number");
    }

    /// <summary>What touches a part may ask less than what touches its type, but not without a reason.</summary>
    private static void Contact(Scope scope, DevicePart part, Field at)
    {
        if (part.Because is { } because)
        {
            at["because"].Said(because, "no-because", "why is not said");
            if (part.TouchedBy is null) at["because"].Wrong("because-of-nothing", "`because` needs `touched-by` beside it");
        }
        else if (part.TouchedBy is { } contact)
        {
            foreach (var type in part.OneOfTypes)
            {
                if (scope.Stated(type, p => p.TouchedBy) is not { } usual || Asks(scope, contact) >= Asks(scope, usual)) continue;
                at["touched-by"].Wrong(
                    "asks-less", $"`{Words.Of(contact)}` asks less than what touches `{type}` (`{Words.Of(usual)}`)", "say why in `because`");
                return;
            }
        }
    }

    /// <summary>What a contact asks without soil, as a number that grows with it; -1 for nothing.</summary>
    private static int Asks(Scope scope, TouchedBy contact) =>
        scope.Data.Needs.FirstOrDefault(n => n.Soil.Count == 0 && n.TouchedBy.Contains(contact))?.Level is { } level ? (int)level : -1;

    private static void Dismantled(Scope scope, Device device, DevicePart part, DismantledPart then, Field at)
    {
        at["how"].Said(then.How, "no-how", "how it comes apart is not said");
        if (then.From is { } from) at["from"].Edition(device, from);
        if (then.Wettest == ApplicationMethod.Chamber) at["wettest"].Wrong("chamber-no-wetness", "`chamber` lies outside the ladder of wetness");
        else if (then is { Wettest: { } wettest, From: null })
        {
            foreach (var type in part.OneOfTypes)
                if (scope.Parts.ContainsKey(type) && Wetter(scope, type, wettest, "from", at["wettest"])) return;
        }
    }
}
