namespace Compat.Answers;

/// <summary>How the contact time of a box is reached.</summary>
public enum ContactTimeReached
{
    /// <summary>No contact time is needed.</summary>
    NotNeeded,

    /// <summary>The method reaches it by itself.</summary>
    ByItself,

    /// <summary>It must be kept visibly wet: wipe again as often as it takes.</summary>
    WipeAgain,

    /// <summary>How long it stays wet is not on record: time it.</summary>
    TimeIt,
}

/// <summary>Exposures that kill what is needed and that the part and the people stand. Every axis written.</summary>
public sealed record WindowBox
{
    /// <summary>The method.</summary>
    public required ApplicationMethod Method { get; init; }

    /// <summary>Strength in percent of the agent's basis; null for a product and for an agent without basis.</summary>
    public Interval? Strength { get; init; }

    /// <summary>Dilution as a share of volume, limits rounded inward to six digits; null for an agent.</summary>
    public Interval? Dilution { get; init; }

    /// <summary>The contact time in seconds: from the shortest that kills.</summary>
    public required Interval ContactTime { get; init; }

    /// <summary>The exposure time in seconds that the part stands; never shorter than the contact time.</summary>
    public required Interval ExposureTime { get; init; }

    /// <summary>The temperatures in °C.</summary>
    public required Interval Temperature { get; init; }

    /// <summary>Whether the temperatures at hand reach beyond <see cref="Temperature"/>: measure it.</summary>
    public bool MeasureTemperature { get; init; }

    /// <summary>The pH.</summary>
    public required Interval Ph { get; init; }

    /// <summary>Whether the pH on record reaches beyond <see cref="Ph"/>: measure it.</summary>
    public bool MeasurePh { get; init; }

    /// <summary>Uses from 1 on.</summary>
    public required Interval Uses { get; init; }

    /// <summary>How the contact time is reached.</summary>
    public ContactTimeReached Reached { get; init; }

    /// <summary>What must accompany a use in it: of the agent, the part, the rules and the people.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>The claims that meet the need in it.</summary>
    public IReadOnlyList<KillClaim> Claims { get; init; } = [];

    /// <summary>The rules on parts and materials that decide in it.</summary>
    public IReadOnlyList<RuleId> DecidedBy { get; init; } = [];

    /// <summary>The person rules whose duties are in it.</summary>
    public IReadOnlyList<PersonRuleId> PersonRules { get; init; } = [];
}

/// <summary>What closes a window.</summary>
public enum ClosureCode
{
    /// <summary>What is needed is not shown to be killed: <see cref="WindowClosure.Kill"/> says why.</summary>
    DoesNotKill,

    /// <summary>The part does not stand it, or nobody knows: <see cref="WindowClosure.Forbidden"/>; of a product <see cref="WindowClosure.Ingredients"/> says
    /// because of what.</summary>
    PartDoesNotStandIt,

    /// <summary>A person rule forbids it. Arguments: person rule.</summary>
    HarmsPeople,

    /// <summary>Kills only after longer than the part stands. Figures: contact time, exposure time.</summary>
    KillsTooSlowly,

    /// <summary>The part stands it barely longer than it takes: too narrow to hit. Figures: contact time, exposure time.</summary>
    TooNarrow,

    /// <summary>It kills by methods that the part does not stand. Arguments: methods that kill, methods that the part stands.</summary>
    OtherMethods,

    /// <summary>It kills at strengths or dilutions that the part does not stand.</summary>
    OtherStrength,

    /// <summary>It kills at temperatures or a pH that the part does not stand.</summary>
    OtherConditions,

    /// <summary>At high level the part's own rule or instructions must spare it; only its materials are known to.</summary>
    SparedByMaterialsOnly,
}

/// <summary>What closes a window: the pair of rules or claims.</summary>
public sealed record WindowClosure
{
    /// <summary>What closes it.</summary>
    public required ClosureCode Code { get; init; }

    /// <summary>What the code's description lists.</summary>
    public IReadOnlyList<string> Arguments { get; init; } = [];

    /// <summary>Why it is not shown to kill, of a <see cref="ClosureCode.DoesNotKill"/>.</summary>
    public IReadOnlyList<KillReason> Kill { get; init; } = [];

    /// <summary>The shortest contact time that kills, in seconds.</summary>
    public decimal? ContactTime { get; init; }

    /// <summary>The longest exposure time that the part stands where it kills, in seconds.</summary>
    public decimal? ExposureTime { get; init; }

    /// <summary>The rules on the part's side.</summary>
    public IReadOnlyList<RuleId> Rules { get; init; } = [];

    /// <summary>Of a product that the part does not stand: the agent classes that are the reason, by id, or names of what no class covers; a class stands for
    /// the sum of its ingredients.</summary>
    public IReadOnlyList<string> Ingredients { get; init; } = [];

    /// <summary>Whether something on record says that the part does not stand it; else nobody knows that it does. Where no rule is named, it is how it is used
    /// or taken off.</summary>
    public bool Forbidden { get; init; }

    /// <summary>Whether it is how it is used or taken off that the part does not stand, whatever is in it.</summary>
    public bool ByItsUse => Code == ClosureCode.PartDoesNotStandIt && Forbidden && !NotListed && Ingredients.Count == 0 && Rules.Count == 0;

    /// <summary>Whether instructions that list all they allow do not list it.</summary>
    public bool NotListed { get; init; }

    /// <summary>The claims on the other side.</summary>
    public IReadOnlyList<KillClaim> Claims { get; init; } = [];
}

/// <summary>The exposures of a substance that reach what a part needs and that the part and the people stand.</summary>
public sealed record Window
{
    /// <summary>The need.</summary>
    public required Need Need { get; init; }

    /// <summary>The maximal boxes, by method, contact time, exposure time: the first 32. Empty where it is closed.</summary>
    public IReadOnlyList<WindowBox> Boxes { get; init; } = [];

    /// <summary>How many maximal boxes there are.</summary>
    public int BoxCount { get; init; }

    /// <summary>What closes it; null where it is open.</summary>
    public WindowClosure? Closure { get; init; }

    /// <summary>Whether the part has a gap that is not shown to be reached: its open surfaces are.</summary>
    public bool GapNotShown { get; init; }

    /// <summary>Whether the part has a gap into which the cloth must be worked, open and closed.</summary>
    public bool WorkIntoGap { get; init; }

    /// <summary>Whether it rests on published claims of an ingredient, for want of label claims.</summary>
    public bool NoLabelClaim { get; init; }

    /// <summary>Ingredients and patients of which no person rule speaks.</summary>
    public IReadOnlyList<SilentPatient> Silent { get; init; } = [];

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }

    /// <summary>Whether there is an exposure that does it all.</summary>
    public bool IsOpen => Boxes.Count > 0;

    /// <summary>The shortest contact time that works, in seconds; null where it is closed.</summary>
    public decimal? ShortestContactTime => IsOpen ? Boxes.Min(box => box.ContactTime.Lower ?? 0m) : null;

    /// <summary>The longest exposure time that the part stands where it works, in seconds; <see cref="Interval.WithoutEnd"/> where it may stay; null where it
    /// is closed.</summary>
    public decimal? LongestExposureTime => IsOpen ? Boxes.Max(box => box.ExposureTime.Upper ?? Interval.WithoutEnd) : null;
}

/// <summary>An ingredient and a kind of patient of which no person rule speaks: what nobody wrote is no permission.</summary>
/// <param name="Ingredient">The agent class, or the name of what no class covers.</param>
/// <param name="Patient">The kind of patient.</param>
public sealed record SilentPatient(string Ingredient, Model.PatientGroup Patient);
