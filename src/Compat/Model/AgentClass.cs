namespace Compat.Model;

/// <summary>What an agent leaves on a surface once its liquid is gone.</summary>
public enum Residue
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>A film.</summary>
    Film,

    /// <summary>Salts.</summary>
    Salts,
}

/// <summary>What kind of substance an agent is, as far as it decides what it does to surfaces and to other agents.</summary>
public enum Nature
{
    /// <summary>Gives oxygen or chlorine.</summary>
    Oxidiser,

    /// <summary>Dissolves or swells.</summary>
    Solvent,

    /// <summary>An acid.</summary>
    Acid,

    /// <summary>An alkali.</summary>
    Alkali,

    /// <summary>Carries a positive charge.</summary>
    Cationic,

    /// <summary>Carries a negative charge.</summary>
    Anionic,

    /// <summary>A surfactant without charge.</summary>
    Nonionic,

    /// <summary>An aldehyde.</summary>
    Aldehyde,

    /// <summary>A phenol.</summary>
    Phenol,

    /// <summary>An amine.</summary>
    Amine,

    /// <summary>An enzyme.</summary>
    Enzyme,

    /// <summary>A salt.</summary>
    Salt,

    /// <summary>Binds metal ions.</summary>
    Chelator,

    /// <summary>A gas or vapour.</summary>
    Gas,

    /// <summary>Heat.</summary>
    Heat,

    /// <summary>Radiation.</summary>
    Radiation,

    /// <summary>Water.</summary>
    Water,

    /// <summary>Oil or wax.</summary>
    Oil,
}

/// <summary>What an agent can do to people or surroundings.</summary>
public enum Hazard
{
    /// <summary>Burns, or its vapour does.</summary>
    Flammable,

    /// <summary>Feeds a fire.</summary>
    Oxidising,

    /// <summary>Destroys skin and eyes.</summary>
    Corrosive,

    /// <summary>Irritates skin or eyes.</summary>
    Irritant,

    /// <summary>Can cause an allergy of skin or airways.</summary>
    Sensitiser,

    /// <summary>Poisonous.</summary>
    Toxic,

    /// <summary>Its vapour harms.</summary>
    HarmfulVapour,

    /// <summary>Can cause cancer.</summary>
    Carcinogen,

    /// <summary>Harms water life.</summary>
    WaterHazard,

    /// <summary>Burns by heat or radiation.</summary>
    Burns,
}

/// <summary>The strength, pH and temperature at which an agent is usually used.</summary>
public sealed record UsualRange
{
    /// <summary>Strength in percent of the agent's basis; null where none is on record.</summary>
    [Measured("Strength", TakesBare = true)]
    public Interval? Strength { get; init; }

    /// <summary>pH; null where none is on record.</summary>
    [Measured("Ph")]
    public Interval? Ph { get; init; }

    /// <summary>Temperature in °C; null where none is on record.</summary>
    [Measured("Temperature")]
    public Interval? Temperature { get; init; }

    /// <summary>Where the figures come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];
}

/// <summary>A cleaning or disinfecting substance or a class of them, in one tree.</summary>
[Record(Validation.RecordKind.Agent)]
public sealed record AgentClass
{
    /// <summary>The root of the tree of agent classes.</summary>
    public static AgentId Root { get; } = new("any-agent");

    /// <summary>Its id.</summary>
    public required AgentId Id { get; init; }

    /// <summary>What the trade calls it.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>The class it belongs to; null for the root only.</summary>
    public AgentId? Under { get; init; }

    /// <summary>Everyday names.</summary>
    [Remark]
    public IReadOnlyList<string> AlsoCalled { get; init => field = Frozen.Of(value); } = [];

    /// <summary>CAS numbers, check digit valid.</summary>
    public IReadOnlyList<string> Cas { get; init => field = Frozen.Of(value); } = [];

    /// <summary>EC numbers of the European inventories, check digit valid.</summary>
    [Remark]
    public IReadOnlyList<string> Ec { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The unit its strength is written and shown in; null where the parent's holds. A rule on an agent without one may not use strength.</summary>
    public StrengthUnit? Basis { get; init; }

    /// <summary>Density of the pure substance at 20 °C in kg/L, where known: converts between mass and volume.</summary>
    [Measured("Density")]
    public decimal? Density { get; init; }

    /// <summary>Mass of available chlorine in one mass of the pure substance, by molar masses; null where it has none or it is not on record.</summary>
    public decimal? AvailableChlorine { get; init; }

    /// <summary>What kind of substance it is.</summary>
    [Remark]
    public IReadOnlyList<Nature> Nature { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Usual in-use figures; each one that is null is the parent's.</summary>
    public UsualRange Usual { get; init; } = new();

    /// <summary>What it leaves behind; null where the parent's holds. Nowhere stated: judged as a film.</summary>
    public Residue? Leaves { get; init; }

    /// <summary>Whether it acts in a chamber; holds for all below it.</summary>
    public bool Chamber { get; init; }

    /// <summary>Agents that bind or destroy it.</summary>
    public IReadOnlyList<AgentId> InactivatedBy { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What else binds or destroys it, in words (organic soil, cotton, hard water).</summary>
    public IReadOnlyList<string> BoundBy { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Hazards to people.</summary>
    public IReadOnlyList<Hazard> Hazards { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What accompanies every use of it on any part; those of its ancestors hold too.</summary>
    public IReadOnlyList<Duty> Duties { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
