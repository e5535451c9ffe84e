namespace Compat.Curation.Schemas;

/// <summary>The kinds of data file.</summary>
public enum FileKind
{
    /// <summary>Materials.</summary>
    Materials,

    /// <summary>Part types.</summary>
    Parts,

    /// <summary>Agent classes.</summary>
    Agents,

    /// <summary>Sources.</summary>
    Sources,

    /// <summary>Rules.</summary>
    Rules,

    /// <summary>Conventions.</summary>
    Conventions,

    /// <summary>Standing rules.</summary>
    Standing,

    /// <summary>One site.</summary>
    Site,

    /// <summary>The version of the data.</summary>
    Version,

    /// <summary>Organisms.</summary>
    Organisms,

    /// <summary>What each level includes.</summary>
    Levels,

    /// <summary>Tests that claims of labels rest on.</summary>
    TestStandards,

    /// <summary>What each contact asks.</summary>
    Needs,

    /// <summary>Claims of efficacy.</summary>
    Efficacy,

    /// <summary>Hazards of mixing.</summary>
    Mixing,

    /// <summary>Person rules.</summary>
    Persons,

    /// <summary>Protection of staff.</summary>
    Protection,

    /// <summary>How words of instructions are read.</summary>
    InstructionWords,

    /// <summary>Occasions.</summary>
    Occasions,

    /// <summary>A record of what was done on a device.</summary>
    Done,

    /// <summary>Kinds of device as asset lists name them.</summary>
    Patterns,
}
