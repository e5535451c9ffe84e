namespace Compat.Cli.Wording;

/// <summary>Says what a part needs.</summary>
public static class NeedWording
{
    /// <summary>What the question says of the need.</summary>
    public static IEnumerable<string> Asked(Question question)
    {
        if (question.TouchedBy is { } contact) yield return "touched by " + Contact(contact);
        if (question.Soil is { } soil) yield return "soil: " + Soils(soil);
        if (question.Level is { } level) yield return "at least " + Words.Of(level) + "\u00a0level";
        if (question.Against.Count > 0) yield return "against " + string.Join(", ", question.Against.Select(target => target.Group is { } group ? Group(group) : Plain(target.ToString())));
        if (question.Patients.Count > 0) yield return "patients: " + Patients(question.Patients);
        if (question.Occupied) yield return "a patient in the device or in reach";
        if (question.Cloth is { } cloth) yield return "cloth of " + cloth;
    }

    /// <summary>The need in a few lines, without final stops.</summary>
    public static IEnumerable<string> Of(Need need, Names names)
    {
        yield return Level(need, names);
        if (need.Prions) yield break;
        yield return (need.Soil.Count == 0 ? "nothing on it" : "on it: " + Soils(need.Soil)) + (need.SoilIsUsual ? " (assumed: what is usual; state it with --soil)" : " (as stated)");
        if (need.Patients.Count > 0) yield return "judged for these patients or contacts: " + Patients(need.Patients) + (need.Occupied ? "; one is in the device or in reach" : "");
        else if (need.Occupied) yield return "a patient is in the device or in reach";
        if (need.TouchedBy >= TouchedBy.IntactSkin && !need.KeptDry) yield return "a single-use cover over it does not change the level";
        if (need.Geometry != Geometry.Open) yield return $"its shape is hard to reach: {Shape(need.Geometry)}";
    }

    /// <summary>What a gap means for a window; null where there is none.</summary>
    public static string? Gap(Window window) =>
        window.GapNotShown ? $"open surfaces are reached, the {Shape(window.Need.Geometry)} is not shown to be: open or dismantle it, brush-clean it twice, work the cloth in"
        : window.WorkIntoGap ? $"work the cloth into the {Shape(window.Need.Geometry)}, open and closed"
        : null;

    /// <summary>A level in words.</summary>
    public static string Of(Level level) => level switch
    {
        Model.Level.Cleaned => "cleaned",
        Model.Level.Sterile => "sterile",
        _ => Words.Of(level) + "-level disinfection",
    };

    /// <summary>A group of organisms in words.</summary>
    public static string Group(OrganismGroup group) => group == OrganismGroup.NonEnvelopedViruses ? "non-enveloped viruses" : Plain(Words.Of(group));

    /// <summary>What touches a part, in words.</summary>
    public static string Contact(TouchedBy contact) => contact switch
    {
        TouchedBy.Nobody => "nobody",
        TouchedBy.Internal => "nobody: it lies inside",
        TouchedBy.Floor => "the floor",
        TouchedBy.Hand => "hands",
        _ => Plain(Words.Of(contact)),
    };

    /// <summary>A shape in words.</summary>
    public static string Shape(Geometry geometry) => geometry switch
    {
        Geometry.Lumen => "bore",
        Geometry.Porous => "pores",
        _ => Words.Of(geometry),
    };

    /// <summary>Soils in words.</summary>
    public static string Soils(IReadOnlyList<SoilKind> soils) => soils.Count == 0 ? "none" : string.Join(", ", soils.Select(Words.Of));

    private static string Level(Need need, Names names)
    {
        if (need.Prions) return "prions are named: nothing is computed";
        var touched = need.TouchedBy is { } contact ? $"touched by {Contact(contact)}" : "what touches it is not on record";
        if (need.KeptDry) return $"nothing, it is kept dry: {touched}" + Also(need, names);
        if (need.Level is not { } level) return $"not known: {touched}" + Also(need, names);
        var why = need.Origin switch
        {
            NeedOrigin.Asked => $"as asked; {touched}",
            NeedOrigin.SiteDecision => $"decided by the site, {need.DecidedBy}; {touched}",
            NeedOrigin.Occasion => $"by the occasion; {touched}",
            _ => $"{touched}, published classification",
        };
        var groups = need.Groups.Count == 0 ? "" : ". It includes " + string.Join(", ", need.Groups.Select(Group));
        return $"{(need.CleanFirst ? "cleaned first in a step of its own, then " : "")}{Of(level)} ({why}){Also(need, names)}{groups}";
    }

    private static string Also(Need need, Names names) => need.Against.Count == 0 ? "" : "; and against " + string.Join(", ", need.Against.Select(names.Target));

    /// <summary>Kinds of patient in words.</summary>
    public static string Patients(IEnumerable<Model.PatientGroup> patients) => string.Join(", ", patients.Select(patient => Plain(Words.Of(patient))));

    private static string Plain(string word) => word.Replace('-', ' ');
}
