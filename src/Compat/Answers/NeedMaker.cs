namespace Compat.Answers;

/// <summary>Reads off the records what a part needs: clauses N1 to N8. The question passed validation.</summary>
internal static class NeedMaker
{
    private static readonly Dictionary<TouchedBy, PatientGroup> ByContact = new()
    {
        [TouchedBy.IntactSkin] = PatientGroup.Skin,
        [TouchedBy.BrokenSkin] = PatientGroup.Wound,
        [TouchedBy.MucousMembrane] = PatientGroup.MucousMembrane,
    };

    public static Need Of(CompiledBase kb, Question question, Level? ofOccasion = null)
    {
        var device = question.Device is { } id ? kb.Devices[id] : null;
        var part = device?.Parts.First(p => p.Id == question.DevicePart);
        var types = part?.OneOfTypes ?? (question.Part is { } type ? [type] : []);
        var traits = types.Select(t => kb.Part(kb.Parts[t.Value])).ToArray();
        var touched = question.TouchedBy ?? part?.TouchedBy ?? MostDemanding(traits.Select(t => t.TouchedBy));
        var asked = question.Soil;
        var soil = asked ?? part?.Soil ?? traits.SelectMany(t => t.Soil).Distinct().ToArray();
        var rules = touched is { } contact
            ? Reach.Needs(kb, contact, soil).OrderBy(rule => rule.Id).ToArray()
            : [];
        var dry = rules.Length > 0 && rules.All(rule => rule.Level is null);
        Level? level = rules.Where(rule => rule.Level is not null).Select(rule => rule.Level).Max();
        var origin = NeedOrigin.Contact;
        string? decidedBy = null;
        var decision = device is null ? null : kb.Sites.SelectMany(site => site.Levels).FirstOrDefault(d => d.Device == device.Id && d.Part == part!.Id)
            ?? kb.Sites.SelectMany(site => site.Levels).FirstOrDefault(d => d.Device == device.Id && d.Part is null);
        if (decision is not null
            && (!dry || decision.Part is not null)) (level, origin, decidedBy, dry) = (decision.Level, NeedOrigin.SiteDecision,
            decision.DecidedBy + ": " + decision.Because, false);
        if (ofOccasion is { } occasion && !dry && !(level >= occasion)) (level, origin) = (occasion, NeedOrigin.Occasion);
        if (question.Level is { } raised && !(level >= raised)) (level, origin, dry) = (raised, NeedOrigin.Asked, dry && soil.Count > 0);
        var groups = kb.Data.Levels.Where(meaning => meaning.Level == level).SelectMany(meaning => meaning.Includes).Distinct().ToArray();
        return new Need
        {
            TouchedBy = touched,
            KeptDry = dry,
            Level = dry ? Level.Cleaned : level,
            Origin = origin,
            DecidedBy = decidedBy,
            CleanFirst = rules.Any(rule => rule.CleanFirst && rule.Level == rules.Max(r => r.Level)) || (level >= Level.High),
            Groups = dry ? [] : groups,
            Against = question.Against.Distinct().ToArray(),
            Soil = soil,
            SoilIsUsual = asked is null,
            Geometry = part?.Geometry ?? (traits.Length == 0 ? Geometry.Open : traits.Max(t => t.Geometry)),
            Patients = Patients(kb, question, device, types, Contacts(question, part, traits.Select(t => t.TouchedBy))),
            Occupied = question.Occupied,
            Prions = question.Against
                .Any(target => target.Group == OrganismGroup.Prions || kb.Data.Organisms.Any(o => o.Id == target.Organism && o.Group == OrganismGroup.Prions)),
            DecidedByRules = rules.Select(rule => rule.Id).ToArray(),
        };
    }

    /// <summary>Of candidates the one that asks most; null where one of them is not on record.</summary>
    private static TouchedBy? MostDemanding(IEnumerable<TouchedBy?> contacts)
    {
        TouchedBy? most = null;
        foreach (var contact in contacts)
        {
            if (contact is null) return null;
            if (most is null || contact > most) most = contact;
        }

        return most;
    }

    /// <summary>What touches it, or may: every candidate counts for whom it reaches.</summary>
    private static IEnumerable<TouchedBy> Contacts(Question question, DevicePart? part, IEnumerable<TouchedBy?> ofTypes) =>
        (question.TouchedBy ?? part?.TouchedBy) is { } said ? [said] : ofTypes.OfType<TouchedBy>();

    /// <summary>Where a device says nothing, who the patient is comes from any of its parts, and what of the patient is met from the part itself.</summary>
    private static PatientGroup[] Patients(CompiledBase kb, Question question, Device? device, IReadOnlyList<PartId> types, IEnumerable<TouchedBy> contacts)
    {
        var own = types.SelectMany(t => PatientsOf(kb, t));
        var groups = question.Patients.Count > 0 ? question.Patients
            : device?.Patients ?? (device is null ? own
                : own.Concat(device.Parts.SelectMany(p => p.OneOfTypes).SelectMany(t => PatientsOf(kb, t)).Where(IsKindOfPatient)));
        return groups.Concat(contacts.Where(ByContact.ContainsKey).Select(contact => ByContact[contact])).Distinct().OrderBy(g => g).ToArray();
    }

    /// <summary>Whether a group says who the patient is; else it says what of a patient is met.</summary>
    private static bool IsKindOfPatient(PatientGroup group) =>
        group is PatientGroup.Newborn or PatientGroup.Pregnancy or PatientGroup.Sensitised or PatientGroup.LatexAllergy;

    private static IEnumerable<PatientGroup> PatientsOf(CompiledBase kb, PartId type) =>
        kb.Parts.Upward(kb.Parts[type.Value]).SelectMany(node => kb.Data.Parts[node].Patients);
}
