namespace Compat.Model;

/// <summary>How much of what is in a product is known.</summary>
public enum Composition
{
    /// <summary>Everything; the rest is water.</summary>
    Full,

    /// <summary>What a safety data sheet must declare.</summary>
    DeclaredHazardousOnly,

    /// <summary>Part of it.</summary>
    Partial,
}

/// <summary>What the stated strengths are a share of.</summary>
public enum StrengthOf
{
    /// <summary>The liquid, ready to use.</summary>
    Liquid,

    /// <summary>The whole wipe, cloth included.</summary>
    WholeWipe,

    /// <summary>A concentrate that is diluted before use.</summary>
    Concentrate,
}

/// <summary>One ingredient: an agent class, or a name that no class covers.</summary>
public sealed record Ingredient
{
    /// <summary>The agent class; null where none covers it.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The name of an ingredient that no class covers; null where <see cref="Agent"/> is stated.</summary>
    public string? Unknown { get; init; }

    /// <summary>Its strength; null where no figure is given (0..100 %).</summary>
    public Strength? Strength { get; init; }
}

/// <summary>The state of a product at which a pH was measured.</summary>
public enum PhState
{
    /// <summary>As it comes, undiluted.</summary>
    Concentrate,

    /// <summary>1 % v/v in water.</summary>
    OnePercent,

    /// <summary>At every dilution the label gives; of a ready-to-use product, as it is.</summary>
    InUse,

    /// <summary>After activation, undiluted.</summary>
    Activated,
}

/// <summary>A pH on record.</summary>
/// <param name="Value">The pH, a point or a range.</param>
/// <param name="Of">The state at which it was measured.</param>
public sealed record MeasuredPh([property: Measured("Ph")] Interval Value, PhState Of);

/// <summary>A mixture on the shelf of one site, in one formulation.</summary>
[Record(Validation.RecordKind.Product)]
public sealed record Product
{
    /// <summary>Its id.</summary>
    public required ProductId Id { get; init; }

    /// <summary>What the site calls it.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>How much of it is known.</summary>
    public required Composition Composition { get; init; }

    /// <summary>The date of the formulation on record.</summary>
    public CalendarDate? CompositionDated { get; init; }

    /// <summary>What the strengths are a share of.</summary>
    public required StrengthOf StrengthOf { get; init; }

    /// <summary>Of a whole wipe: the share of its mass that is liquid, above 0 to 1; null where it is not known.</summary>
    [Measured("Share")]
    public decimal? LiquidShare { get; init; }

    /// <summary>Its ingredients.</summary>
    public IReadOnlyList<Ingredient> Ingredients { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Its density in kg/L; null where it is not known.</summary>
    [Measured("Density")]
    public decimal? Density { get; init; }

    /// <summary>What is on record of its pH. Where nothing is, every pH from -1 to 15 is possible, which hardly any permission covers.</summary>
    public IReadOnlyList<MeasuredPh> Ph { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Of a concentrate: the dilutions its label gives, as shares of volume above 0 to 1; null where it gives none.</summary>
    [Measured("Dilution")]
    public Interval? Dilution { get; init; }

    /// <summary>The temperatures its label gives, in °C; null where it gives none.</summary>
    [Measured("Temperature")]
    public Interval? Temperature { get; init; }

    /// <summary>Whether it must be activated before use.</summary>
    public bool NeedsActivation { get; init; }

    /// <summary>The methods it can be used by (a wipe cannot be a bath); empty where all can.</summary>
    public MethodSet Methods { get; init; }

    /// <summary>What its label claims; empty where it claims nothing.</summary>
    [Unordered]
    public IReadOnlyList<LabelClaim> LabelClaims { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How long a surface stays wet with it, by method.</summary>
    public IReadOnlyList<AchievedContactTime> ContactTimes { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The soils it takes off, by its label: what names any is a cleaner.</summary>
    public IReadOnlyList<SoilKind> Removes { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether its label says that it cleans and disinfects in one step.</summary>
    public bool OneStep { get; init; }

    /// <summary>How long it is good once activated, diluted or opened.</summary>
    public ProductLife Life { get; init; } = new();

    /// <summary>How a bath of it is kept; null where it is no bath.</summary>
    public ProductBath? Bath { get; init; }

    /// <summary>The hardest water its label lets it be diluted with, in mg/L of calcium carbonate; null where not stated.</summary>
    [Measured("Hardness")]
    public decimal? MostHardness { get; init; }

    /// <summary>The cloths that bind it, by what they are made of.</summary>
    public IReadOnlyList<string> BoundByCloths { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }
}
