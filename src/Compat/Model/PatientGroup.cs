namespace Compat.Model;

/// <summary>The kinds of patient, or of contact with one, that residues and vapours are judged for.</summary>
public enum PatientGroup
{
    /// <summary>A newborn.</summary>
    Newborn,

    /// <summary>The eye.</summary>
    Eye,

    /// <summary>Mucous membrane.</summary>
    MucousMembrane,

    /// <summary>The airway and what is breathed.</summary>
    Airway,

    /// <summary>A wound or broken skin.</summary>
    Wound,

    /// <summary>The bladder.</summary>
    Bladder,

    /// <summary>The gut.</summary>
    Gut,

    /// <summary>A joint.</summary>
    Joint,

    /// <summary>Intact skin.</summary>
    Skin,

    /// <summary>A pregnant patient.</summary>
    Pregnancy,

    /// <summary>A patient with an allergy to the agent.</summary>
    Sensitised,

    /// <summary>Blood outside the body, and dialysis fluid, which only a membrane keeps from it.</summary>
    Blood,

    /// <summary>A patient with an allergy to natural rubber latex.</summary>
    LatexAllergy,
}
