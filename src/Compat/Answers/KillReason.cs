namespace Compat.Answers;

/// <summary>Why it is not shown that what is needed is killed, or how it is.</summary>
public enum KillReasonCode
{
    /// <summary>Prions are outside: stop, quarantine, ask infection prevention. Arguments: none.</summary>
    Prions,

    /// <summary>What touches the part is not on record. Arguments: none.</summary>
    ContactNotKnown,

    /// <summary>Soil on a part that is kept dry: out of use, engineer. Arguments: none.</summary>
    SoiledWhereDry,

    /// <summary>Nothing need be killed. Arguments: none.</summary>
    NothingToKill,

    /// <summary>No claim on record meets this. Arguments: the level or target.</summary>
    NoClaim,

    /// <summary>The product's label claims do not meet this. Arguments: product, the level or target.</summary>
    LabelClaimsLess,

    /// <summary>A label claim says so, and its tests do not show it. Arguments: product, the level or target, claim, what they do not show, its tests that show
    /// nothing on a device.</summary>
    TestsShowLess,

    /// <summary>A standing rule keeps the bare agent at or below a level. Arguments: agent, level, standing rule.</summary>
    NeverAbove,

    /// <summary>The agent is on record as not killing this. Arguments: agent, target, claim.</summary>
    DoesNotKill,

    /// <summary>A claim of it was refuted. Arguments: agent, the level or target, claim.</summary>
    Refuted,

    /// <summary>High level takes instructions, a guideline that names the part, or a label's claim. Arguments: none.</summary>
    HighNeedsMore,

    /// <summary>Sterile takes instructions. Arguments: none.</summary>
    SterileNeedsInstructions,

    /// <summary>A bore or pores are not reached by wiping or spraying. Arguments: geometry.</summary>
    NotReached,

    /// <summary>Not at the strength, temperature, pH or method asked. Arguments: the level or target, the methods of the claims that meet it elsewhere, these
    /// claims.</summary>
    OutsideClaims,

    /// <summary>A product with label claims is judged by these alone. Arguments: product.</summary>
    LabelAlone,

    /// <summary>Published claims of an ingredient count only where the composition is full. Arguments: product, composition.</summary>
    CompositionNotFull,

    /// <summary>An ingredient that no class covers may bind it. Arguments: its name.</summary>
    UnknownIngredient,

    /// <summary>Another ingredient binds or destroys it. Arguments: ingredient, other ingredient.</summary>
    Inactivated,

    /// <summary>The cloth binds it. Arguments: cloth, product or agent.</summary>
    ClothBinds,

    /// <summary>The water is harder than the label lets it be diluted with. Arguments: product.</summary>
    WaterTooHard,

    /// <summary>A group is met, but not this organism of it. Arguments: organism, claim that says so.</summary>
    NotCovered,

    /// <summary>This is met by claims that rest on a registration alone: which tests it rests on is not known. Arguments: claim, authority, number.</summary>
    RegisteredOnly,

    /// <summary>This is met, by wiping, by claims of which no test was made on a surface. Arguments: claim.</summary>
    SuspensionOnly,

    /// <summary>Claims meet it. Arguments: claims.</summary>
    ClaimsMeet,

    /// <summary>Claims on record hold in a machine only; stands behind the reason that decides. Arguments: these claims.</summary>
    MachineOnly,

    /// <summary>It kills, and the part stands it, but not both at once: see the window. Arguments: none.</summary>
    WindowClosed,
}

/// <summary>A reason with its arguments, so that an embedding tool can word it in its own language.</summary>
/// <param name="Code">Which reason.</param>
/// <param name="Arguments">What the code's description lists.</param>
public sealed record KillReason(KillReasonCode Code, IReadOnlyList<string> Arguments);
