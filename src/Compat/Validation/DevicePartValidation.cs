namespace Compat.Validation;

/// <summary>Checks one part of a device.</summary>
internal static class DevicePartValidation
{
    /// <summary>How many variants one part of a device may have, over its types, their materials and the sets of editions.</summary>
    private const long MostVariants = 1_024;

    /// <summary>Checks the part.</summary>
    /// <param name="scope">The records.</param>
    /// <param name="device">Its device.</param>
    /// <param name="part">The part.</param>
    /// <param name="sets">How many sets of editions may speak.</param>
    /// <param name="place">The device.</param>
    /// <param name="field">Where in it the part stands.</param>
    public static void Check(Scope scope, Device device, DevicePart part, int sets, ProblemPlace place, string field)
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
        if (part.Materials is { } slots)
        {
            KnowledgeValidation.Slots(scope, place, field + ".materials", slots);
        }
        else if (part.MaterialsKnown is not null) scope.Add("known-without-materials", place with { Field = field + ".materials-known" }, "`materials-known` without `materials`");
        Variants(scope, part.OneOfTypes, part, null, sets, place with { Field = part.Materials is null ? field : field + ".materials" });
        Contact(scope, part, place, field);
        if (part.WhenDismantled is { } then) Dismantled(scope, device, part, then, place, field + ".when-dismantled");
    }

    /// <summary>What is named must leave few enough variants of each type it is laid on.</summary>
    public static void Variants(Scope scope, IReadOnlyList<PartId> types, DevicePart? part, Question? question, int sets, ProblemPlace place)
    {
        var all = 0L;
        foreach (var type in types)
        {
            var ofType = scope.Upward(type).Select(p => p.Materials).FirstOrDefault(m => m is not null) ?? [];
            var list = MaterialList.Of(ofType, false, part, question, (low, high) => scope.Upward(low).Any(m => m.Id == high));
            var variants = MaterialList.Variants(list.Slots);
            all += variants * sets;
            if (variants <= KnowledgeValidation.MostVariants) continue;
            scope.Add("too-many-variants", place, $"with the materials of `{type}` the choices make more than {KnowledgeValidation.MostVariants} variants", "name fewer candidates, or all its materials with `materials-known: fully`");
            return;
        }

        if (all > MostVariants)
            scope.Add("too-many-variants", place, $"its types, their materials and the {sets} sets of editions that may speak make {all} variants, more than {MostVariants}", "name fewer candidates, or the serial number");
    }

    /// <summary>What touches a part may ask less than what touches its type, but not without a reason.</summary>
    private static void Contact(Scope scope, DevicePart part, ProblemPlace place, string field)
    {
        if (part.Because is { } because && because.Trim().Length == 0) scope.Add("no-because", place with { Field = field + ".because" }, "why is not said");
        if (part.TouchedBy is not { } contact)
        {
            if (part.Because is not null) scope.Add("because-of-nothing", place with { Field = field + ".because" }, "`because` needs `touched-by` beside it");
            return;
        }

        if (part.Because is not null) return;
        foreach (var type in part.OneOfTypes)
        {
            if (scope.Upward(type).Select(p => p.TouchedBy).FirstOrDefault(t => t is not null) is not { } usual || Asks(scope, contact) >= Asks(scope, usual)) continue;
            scope.Add("asks-less", place with { Field = field + ".touched-by" }, $"`{Words.Of(contact)}` asks less than what touches `{type}` (`{Words.Of(usual)}`)", "say why in `because`");
            return;
        }
    }

    /// <summary>What a contact asks without soil, as a number that grows with it; -1 for nothing.</summary>
    private static int Asks(Scope scope, TouchedBy contact) =>
        scope.Data.Needs.FirstOrDefault(n => n.Soil.Count == 0 && n.TouchedBy.Contains(contact))?.Level is { } level ? (int)level : -1;

    private static void Dismantled(Scope scope, Device device, DevicePart part, DismantledPart then, ProblemPlace place, string field)
    {
        if (then.How.Trim().Length == 0) scope.Add("no-how", place with { Field = field + ".how" }, "how it comes apart is not said");
        if (then.From is { } from && device.Instructions.All(e => e.Id != from))
            scope.Add("unknown-edition", place with { Field = field + ".from" }, $"unknown edition `{from}`", NearestNames.Help(from.Value, device.Instructions.Select(e => e.Id.Value)));
        if (then.Wettest is not { } wettest) return;
        if (wettest == ApplicationMethod.Chamber) scope.Add("chamber-no-wetness", place with { Field = field + ".wettest" }, "`chamber` lies outside the ladder of wetness");
        foreach (var type in part.OneOfTypes.Where(t => scope.Parts.ContainsKey(t)))
        {
            var ofType = scope.Upward(type).Select(p => p.Wettest).FirstOrDefault(w => w is not null) ?? ApplicationMethod.DryWipe;
            if (wettest <= ofType || wettest == ApplicationMethod.Chamber || then.From is not null) continue;
            scope.Add("wetter-without-instructions", place with { Field = field + ".wettest" }, $"`{Words.Of(wettest)}` is wetter than `{type}` stands ({Words.Of(ofType)})", "only instructions can say so: name their edition in `from`");
            return;
        }
    }
}
