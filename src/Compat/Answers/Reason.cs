namespace Compat.Answers;

/// <summary>Why an answer is as it is, by the clause of the specification that decided.</summary>
public enum ReasonCode
{
    /// <summary>The method is wetter than the part stands. Arguments: method, wettest method.</summary>
    TooWet,

    /// <summary>An act it never stands. Arguments: act.</summary>
    NeverActs,

    /// <summary>A rule forbids it. Arguments: rule, agent asked, target.</summary>
    RuleForbids,

    /// <summary>Instructions with only-listed do not list it. Arguments: edition.</summary>
    NotListed,

    /// <summary>The agent's or part's own duty cannot be met. Arguments: duty.</summary>
    ResidueStays,

    /// <summary>A rule on the part or device allows it. Arguments: rule.</summary>
    PartAllows,

    /// <summary>Every material stands it. Arguments: none.</summary>
    MaterialsAllow,

    /// <summary>No rule speaks for the material. Arguments: material.</summary>
    NoEvidenceOnMaterial,

    /// <summary>Its materials are not fully known and no rule speaks for the part. Arguments: none.</summary>
    MaterialsNotKnown,

    /// <summary>A duty of the 'allowed' cannot be met on this part. Arguments: duty.</summary>
    DutyCannotBeMet,

    /// <summary>An ingredient that no class covers. Arguments: its name.</summary>
    UnknownIngredient,

    /// <summary>The composition is not fully declared and there is no evidence on the product itself. Arguments: composition.</summary>
    CompositionNotKnown,

    /// <summary>Not every edition that could cover the device allows or lists it. Arguments: edition.</summary>
    EditionSilent,

    /// <summary>Nothing ends the exposure time on this part. Arguments: none.</summary>
    ExposureTimeWithoutEnd,

    /// <summary>What was asked has no value on some axis. Arguments: none.</summary>
    NoValue,
}

/// <summary>A reason with its arguments, so that an embedding tool can word it in its own language.</summary>
/// <param name="Code">Which reason.</param>
/// <param name="Arguments">What the code's description lists.</param>
/// <param name="Component">The ingredient (or class of ingredients) it concerns; null for an agent asked alone.</param>
/// <param name="Member">The member of a one-of it concerns, where the part has several candidates.</param>
public sealed record Reason(ReasonCode Code, IReadOnlyList<string> Arguments, string? Component = null, string? Member = null);
