namespace Compat.Model;

/// <summary>The figures of our own caution that the engine uses; each must be in the data.</summary>
public enum ConventionKey
{
    /// <summary>Exposure time of an 'allowed' whose source is silent, in seconds.</summary>
    UnstatedExposureTime,

    /// <summary>Temperature of an 'allowed' whose source is silent, in °C.</summary>
    UnstatedTemperature,

    /// <summary>pH of an 'allowed' whose source is silent and whose agent has no usual pH on record.</summary>
    UnstatedPh,

    /// <summary>Uses of an 'allowed' whose source is silent.</summary>
    UnstatedUses,

    /// <summary>Dilution of a product's 'allowed' whose source is silent, as a share of volume.</summary>
    UnstatedDilution,

    /// <summary>Methods of an 'allowed' whose source is silent.</summary>
    UnstatedMethods,

    /// <summary>Temperature assumed where neither the question nor the agent states one, in °C.</summary>
    AssumedTemperature,

    /// <summary>How long what leaves nothing stays where it cannot be wiped off: its upper end counts, in seconds.</summary>
    DryingTime,

    /// <summary>Density of a liquid of unknown density, in kg/L: between its ends.</summary>
    SolutionDensity,

    /// <summary>pH of the water a concentrate is diluted with.</summary>
    WaterPh,

    /// <summary>pH of purified water.</summary>
    PurifiedWaterPh,

    /// <summary>Temperature of a claim whose source is silent, in °C.</summary>
    ClaimTemperature,

    /// <summary>Methods of a claim whose source is silent.</summary>
    ClaimMethods,

    /// <summary>How much of the contact time a window must hold beyond it, as a share.</summary>
    WindowShare,

    /// <summary>How much a window must hold beyond the contact time at the least, in seconds.</summary>
    WindowLeast,

    /// <summary>How many products a plan uses at most, cleaners included, where nobody says otherwise.</summary>
    MostProducts,

    /// <summary>What the shares of the use limits of one mechanism may add up to.</summary>
    UsesShare,

    /// <summary>What damage to a part does, the mildest first: the damage class of a plan.</summary>
    DamageOrder,

    /// <summary>What an agent can do to people or surroundings, the mildest first: the people-hazard class of a plan.</summary>
    HazardOrder,

    /// <summary>Second numerals of the code of protection against water (0 to 9) that carry a wet wipe.</summary>
    IngressWetWipe,

    /// <summary>Second numerals that carry spraying.</summary>
    IngressSpray,

    /// <summary>Second numerals that carry rinsing.</summary>
    IngressRinse,

    /// <summary>Second numerals that carry lying in a liquid.</summary>
    IngressImmerse,
}

/// <summary>One figure of our own caution.</summary>
[Record(Validation.RecordKind.Convention)]
public sealed record Convention
{
    /// <summary>Which figure.</summary>
    [Key("id")]
    public required ConventionKey Key { get; init; }

    /// <summary>Its range, in the unit that <see cref="ConventionKey"/> states; whole for methods.</summary>
    public Interval Range { get; init; } = Interval.Whole;

    /// <summary>The methods, of <see cref="ConventionKey.UnstatedMethods"/> and <see cref="ConventionKey.ClaimMethods"/>.</summary>
    public MethodSet Methods { get; init; }

    /// <summary>Every consequence of damage once, the mildest first; of <see cref="ConventionKey.DamageOrder"/>.</summary>
    public IReadOnlyList<Consequence> Consequences { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Every hazard once, the mildest first; of <see cref="ConventionKey.HazardOrder"/>.</summary>
    public IReadOnlyList<Hazard> Hazards { get; init => field = Frozen.Of(value); } = [];

    /// <summary>
    /// Its order in words, for example <c>looks &lt; wear</c>; empty where it names none. A difference in it is a difference of the convention.
    /// </summary>
    public string Order => string.Join(" < ", (Consequences ?? []).Select(Words.Of).Concat((Hazards ?? []).Select(Words.Of)));

    /// <summary>Whether a convention names methods and no range.</summary>
    public static bool NamesMethods(ConventionKey key) => key is ConventionKey.UnstatedMethods or ConventionKey.ClaimMethods;

    /// <summary>Whether a convention names an order and no range.</summary>
    public static bool NamesOrder(ConventionKey key) => key is ConventionKey.DamageOrder or ConventionKey.HazardOrder;

    /// <summary>Why this figure.</summary>
    [Remark]
    public required string Reason { get; init; }
}
