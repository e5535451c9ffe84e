namespace Compat.Model;

/// <summary>The groups of organisms that claims speak of. Their words are no ids of organisms.</summary>
public enum OrganismGroup
{
    /// <summary>Bacteria that grow, not their spores.</summary>
    VegetativeBacteria,

    /// <summary>Mycobacteria, tuberculosis first.</summary>
    Tuberculosis,

    /// <summary>Viruses with an envelope.</summary>
    EnvelopedViruses,

    /// <summary>Viruses without an envelope.</summary>
    NonEnvelopedViruses,

    /// <summary>Fungi and yeasts.</summary>
    Fungi,

    /// <summary>Spores of bacteria.</summary>
    Spores,

    /// <summary>Prions: outside all levels; a question that names them is not computed.</summary>
    Prions,
}
