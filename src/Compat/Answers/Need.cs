namespace Compat.Answers;

/// <summary>What a level comes from.</summary>
public enum NeedOrigin
{
    /// <summary>What touches the part, by a published classification.</summary>
    Contact,

    /// <summary>The question raised it.</summary>
    Asked,

    /// <summary>The site decided it for this part.</summary>
    SiteDecision,

    /// <summary>The occasion raised it.</summary>
    Occasion,
}

/// <summary>What a part needs before the next patient: a level, groups and organisms, and for whom.</summary>
public sealed record Need
{
    /// <summary>What touches the part; null where nothing on record says so.</summary>
    public TouchedBy? TouchedBy { get; init; }

    /// <summary>Whether it needs nothing and is kept dry.</summary>
    public bool KeptDry { get; init; }

    /// <summary>The level; null where what touches it is not on record and no level was asked: then no efficacy can be judged.</summary>
    public Level? Level { get; init; }

    /// <summary>What the level comes from.</summary>
    public NeedOrigin Origin { get; init; }

    /// <summary>Who decided, where <see cref="Origin"/> is a decision of the site, with the reason.</summary>
    public string? DecidedBy { get; init; }

    /// <summary>Whether the part is cleaned first, in a step of its own.</summary>
    public bool CleanFirst { get; init; }

    /// <summary>The groups that the level includes.</summary>
    public IReadOnlyList<OrganismGroup> Groups { get; init; } = [];

    /// <summary>What else must be killed: groups and organisms that were asked.</summary>
    public IReadOnlyList<OrganismTarget> Against { get; init; } = [];

    /// <summary>What is on the part.</summary>
    public IReadOnlyList<SoilKind> Soil { get; init; } = [];

    /// <summary>Whether <see cref="Soil"/> is what is usually on such a part, because the question did not say.</summary>
    public bool SoilIsUsual { get; init; }

    /// <summary>Its shape; of several candidates the one that is hardest to reach.</summary>
    public Geometry Geometry { get; init; }

    /// <summary>The kinds of patient that residue and vapour are judged for.</summary>
    public IReadOnlyList<PatientGroup> Patients { get; init; } = [];

    /// <summary>Whether a patient is in the device or in reach.</summary>
    public bool Occupied { get; init; }

    /// <summary>Whether prions are named: then nothing is computed. Stop, quarantine, ask infection prevention.</summary>
    public bool Prions { get; init; }

    /// <summary>The records that decided, by id.</summary>
    public IReadOnlyList<NeedRuleId> DecidedByRules { get; init; } = [];

    /// <summary>Whether there is soil on a part that is kept dry: it is taken out of use and the engineer is called.</summary>
    public bool SoiledWhereDry => KeptDry && Soil.Count > 0;

    /// <summary>Whether nothing need be killed on it.</summary>
    public bool NothingToKill => (Level is Model.Level.Cleaned || KeptDry) && Against.Count == 0;
}
